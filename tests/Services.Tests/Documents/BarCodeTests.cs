using PostFrame.Documents.BarCodes;
using PostFrame.Documents.Drawing;
using Xunit;
using ZXing;

namespace PostFrame.ServicesTests.Documents;

/// <summary>
/// Source of the worked values: hand calculation by the check-character rule of Code 128 (ISO/IEC
/// 15417 as described in public tutorials); the second symbol is GS1's public demonstration prefix
/// 952. What is drawn is read back by ZXing.Net, a decoder of another make.
/// </summary>
public sealed class BarCodeTests
{
    [Theory]
    [InlineData("104 50 17 18 13 16 20 16 23", 69)]
    [InlineData("104 50 17 18 13 99 4 7", 38)]
    [InlineData("105 102 0 9 52 12 34 0 0 4 21 74", 15)]
    [InlineData("105 102 1 99 52 12 34 0 1 77 24 21 4 32 100 17 102 17 16 44 18 22 33 102 18 17 50 "
        + "99 12 7", 97)]
    public void Check_values_are_those_worked_by_hand(string values, int check)
    {
        int[] data = [.. values.Split(' ').Select(int.Parse)];
        Assert.Equal([.. data, check, 106], Code128.Closed(data));
    }

    [Fact]
    public void Four_digits_at_the_end_are_packed_in_pairs() =>
        Assert.Equal([104, 50, 17, 18, 13, 99, 4, 7, 38, 106], Code128.Values("R12-0407"));

    /// <summary>156 modules and two quiet zones of 10: 176, or 88 mm at 0.5 mm, by hand.</summary>
    [Fact]
    public void Width_of_the_worked_symbol_is_176_modules_with_quiet_zones() =>
        Assert.Equal(176, Code128.Modules(
            Code128.Closed([105, 102, 0, 9, 52, 12, 34, 0, 0, 4, 21, 74])));

    [Fact]
    public void Every_pattern_has_11_modules_and_an_even_sum_of_bars()
    {
        Assert.Equal(107, Code128.Widths.Distinct().Count());
        Assert.All(Code128.Widths.SkipLast(1), widths =>
        {
            Assert.Equal(11, widths.Sum(c => c - '0'));
            Assert.Equal(0, widths.Where((_, i) => i % 2 == 0).Sum(c => c - '0') % 2);
        });
        Assert.Equal(13, Code128.Widths[106].Sum(c => c - '0'));
    }

    [Fact]
    public void Bars_of_any_printable_text_read_back_as_written()
    {
        var random = new Random(128);
        string[] texts = [.. Enumerable.Range(0, 200).Select(
            _ => Text(random, random.Next(1, 21), '!', '~'))];
        Assert.Equal(texts, Read(BarcodeFormat.CODE_128, texts.Select(Bars)));
    }

    [Fact]
    public void Bars_of_digits_and_piece_ids_read_back_as_written()
    {
        var random = new Random(15417);
        string[] texts = [.. Enumerable.Range(0, 200).Select(_ =>
            Text(random, random.Next(0, 4), 'A', 'Z') + Text(random, random.Next(2, 9), '0', '9')
            + Text(random, random.Next(0, 4), 'A', 'Z'))];
        Assert.Equal(texts, Read(BarcodeFormat.CODE_128, texts.Select(Bars)));
    }

    [Theory]
    [InlineData("")]
    [InlineData("4K-23Ä")]
    [InlineData("4K\t23A")]
    public void Text_that_bars_cannot_carry_is_refused(string text) =>
        Assert.Throws<ArgumentException>(() => Code128.Values(text));

    [Theory]
    [InlineData("4K-23A", false)]
    [InlineData("9ZZZZZ-ZZZZ9", false)]
    [InlineData("PF-1001/1 3/8", true)]
    [InlineData("lower.case_order-number/12 34/56", true)]
    public void Squares_read_back_as_written(string text, bool forShopFloor)
    {
        var qr = new QrSymbol(text, forShopFloor);
        var sketch = new Sketch(qr.Modules * 3, qr.Modules * 3);
        qr.Draw(sketch, new Spot(0, 0), 3);
        Assert.Equal([text], Read(BarcodeFormat.QR_CODE, [sketch]));
    }

    /// <summary>
    /// Side 17 + 4 × version and a quiet zone of 4 (ISO/IEC 18004 as described in public encoder
    /// documentation): an upper-case id of up to 20 characters fits version 1-M.
    /// </summary>
    [Fact]
    public void A_piece_id_fits_the_smallest_symbol() =>
        Assert.Equal(17 + 4 + 8, new QrSymbol("9ZZZZZ-ZZZZ9").Modules);

    private static Sketch Bars(string text)
    {
        var values = Code128.Values(text);
        var sketch = new Sketch(Code128.Modules(values) * 2, 60);
        Code128.Draw(sketch, new Frame(0, 5, sketch.WidthPt, 50), values, 2);
        return sketch;
    }

    private static IEnumerable<string?> Read(BarcodeFormat format, IEnumerable<Sketch> pages) =>
        RenderedPage.All(Paper.Pdf("codes", pages), 72).Select(page => page.Decode(format));

    private static string Text(Random random, int length, char from, char to) =>
        new([.. Enumerable.Range(0, length).Select(_ => (char)random.Next(from, to + 1))]);
}
