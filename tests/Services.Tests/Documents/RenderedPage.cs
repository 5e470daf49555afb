using System.Diagnostics;
using System.Globalization;
using Xunit;
using ZXing;
using ZXing.Common;

namespace PostFrame.ServicesTests.Documents;

/// <summary>
/// A PDF page as dots, made by poppler's pdftoppm: a renderer that shares nothing with the one that
/// wrote the page. Skips the test where pdftoppm is not installed.
/// </summary>
internal sealed class RenderedPage
{
    private readonly byte[] grey;

    private RenderedPage(byte[] grey, int width, int height) =>
        (this.grey, Width, Height) = (grey, width, height);

    public int Width { get; }

    public int Height { get; }

    /// <summary>0 is black, 255 white.</summary>
    public byte this[int x, int y] => grey[y * Width + x];

    /// <summary>The resolution of an 8 dots per mm label printer [dots per inch].</summary>
    public const double PrinterDpi = 203.2;

    public static IReadOnlyList<RenderedPage> All(byte[] pdf, double dotsPerInch = PrinterDpi)
    {
        var folder = Directory.CreateTempSubdirectory("postframe-pages");
        try
        {
            var file = Path.Combine(folder.FullName, "in.pdf");
            File.WriteAllBytes(file, pdf);
            Run(
                "-gray", "-r", dotsPerInch.ToString(CultureInfo.InvariantCulture), file,
                Path.Combine(folder.FullName, "page"));
            return [.. folder.GetFiles("*.pgm")
                .OrderBy(page => page.Name, StringComparer.Ordinal)
                .Select(page => Parse(File.ReadAllBytes(page.FullName)))];
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>What an independent reader finds of one symbology; null when nothing.</summary>
    public string? Decode(BarcodeFormat format)
    {
        var reader = new BarcodeReaderGeneric
        {
            Options = new DecodingOptions { PossibleFormats = [format], TryHarder = true },
        };
        return reader.Decode(new RGBLuminanceSource(
            grey, Width, Height, RGBLuminanceSource.BitmapFormat.Gray8))?.Text;
    }

    /// <summary>The part a scanner is pointed at [dots].</summary>
    public RenderedPage Part(int left, int top, int width, int height) => new(
        [.. Enumerable.Range(top, height).SelectMany(
            y => grey.Skip(y * Width + left).Take(width))],
        width,
        height);

    private static void Run(params string[] arguments)
    {
        Process? process = null;
        try
        {
            process = Process.Start(new ProcessStartInfo("pdftoppm", arguments)
            {
                RedirectStandardError = true,
            });
        }
        catch (System.ComponentModel.Win32Exception)
        {
            Assert.Skip("pdftoppm (poppler-utils) is not installed.");
        }

        using (process)
        {
            var errors = process!.StandardError.ReadToEnd();
            process.WaitForExit();
            Assert.True(process.ExitCode == 0, errors);
            Assert.Equal("", errors);
        }
    }

    /// <summary>Portable grey map, binary: "P5 width height 255" and a byte per dot.</summary>
    private static RenderedPage Parse(byte[] file)
    {
        var at = 0;
        string Next()
        {
            while (char.IsWhiteSpace((char)file[at]))
            {
                at++;
            }

            var start = at;
            while (!char.IsWhiteSpace((char)file[at]))
            {
                at++;
            }

            return System.Text.Encoding.ASCII.GetString(file, start, at - start);
        }

        Assert.Equal("P5", Next());
        var width = int.Parse(Next(), CultureInfo.InvariantCulture);
        var height = int.Parse(Next(), CultureInfo.InvariantCulture);
        Assert.Equal("255", Next());
        return new RenderedPage(file[(at + 1)..], width, height);
    }
}
