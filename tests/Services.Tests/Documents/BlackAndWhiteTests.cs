using PostFrame.Documents;
using PostFrame.Documents.Drawing;
using PostFrame.Documents.Maps;
using Xunit;

namespace PostFrame.ServicesTests.Documents;

/// <summary>
/// Planes are told apart without colour: on a grey copier, and on a printer that turns whatever is
/// darker than half into black and the rest into white.
/// </summary>
public sealed class BlackAndWhiteTests
{
    private const double HeightPt = 20;
    private const double WidthPt = 270;

    [Fact]
    public void The_roof_band_is_one_solid_bar()
    {
        var band = Band(PlaneKind.Roof);
        Assert.Equal(0, Changes(band, 0.5));
        Assert.True(IsInk(band, 0.5, 0.5));
    }

    [Fact]
    public void A_sidewall_band_is_diagonal_bars()
    {
        var band = Band(PlaneKind.Sidewall);
        Assert.InRange(Changes(band, 0.5), 10, 60);
        var rise = band.Height / 4;
        var above = Starts(band, 0.25).ToHashSet();
        Assert.All(
            Starts(band, 0.5).Where(x => x < band.Width - 60),
            x => Assert.Contains(Enumerable.Range(x + rise - 2, 5), above.Contains));
    }

    [Fact]
    public void An_endwall_band_is_dots_with_white_between_the_rows()
    {
        var band = Band(PlaneKind.Endwall);
        Assert.InRange(Changes(band, 0.27), 10, 100);
        Assert.InRange(Changes(band, 0.73), 10, 100);
        Assert.Equal(0, Changes(band, 0.5));
        Assert.False(IsInk(band, 0.5, 0.5));
    }

    /// <summary>
    /// Contrast of black on each colour, to one decimal, as tabulated for the Okabe–Ito palette by
    /// the relative-luminance formula of WCAG 2 (formula from memory). 3 is that standard's least
    /// for graphics (from memory).
    /// </summary>
    [Theory]
    [InlineData(PlaneKind.Roof, 9.3)]
    [InlineData(PlaneKind.Sidewall, 6.1)]
    [InlineData(PlaneKind.Endwall, 6.9)]
    public void Black_stands_out_on_each_planes_colour(PlaneKind kind, double contrast)
    {
        var colour = kind switch
        {
            PlaneKind.Roof => Ink.Orange,
            PlaneKind.Sidewall => Ink.BluishGreen,
            _ => Ink.ReddishPurple,
        };
        Assert.Contains(colour, Sketched(kind).Marks.OfType<Shape>().Select(shape => shape.Fill));
        Assert.Equal(contrast, Math.Round((Luminance(colour) + 0.05) / 0.05, 1));
    }

    private static Sketch Sketched(PlaneKind kind)
    {
        var sketch = new Sketch(WidthPt, HeightPt);
        PlaneLook.Band(sketch, new Frame(0, 0, WidthPt, HeightPt), kind);
        return sketch;
    }

    private static RenderedPage Band(PlaneKind kind) =>
        RenderedPage.All(Paper.Pdf("band", [Sketched(kind)]))[0];

    private static bool IsInk(RenderedPage band, double across, double down) =>
        band[(int)(band.Width * across), (int)(band.Height * down)] < 128;

    /// <summary>
    /// Changes between ink and white along a row, away from the outline at both ends.
    /// </summary>
    private static int Changes(RenderedPage band, double down)
    {
        var row = (int)(band.Height * down);
        return Enumerable.Range(20, band.Width - 40)
            .Count(x => band[x, row] < 128 != band[x + 1, row] < 128);
    }

    /// <summary>Where white turns to ink along a row, away from the outline at both ends.</summary>
    private static IEnumerable<int> Starts(RenderedPage band, double down)
    {
        var row = (int)(band.Height * down);
        return Enumerable.Range(20, band.Width - 40)
            .Where(x => band[x - 1, row] >= 128 && band[x, row] < 128);
    }

    private static double Luminance(string colour)
    {
        double Linear(int at)
        {
            var part = Convert.ToInt32(colour.Substring(at, 2), 16) / 255.0;
            return part <= 0.03928 ? part / 12.92 : Math.Pow((part + 0.055) / 1.055, 2.4);
        }

        return 0.2126 * Linear(1) + 0.7152 * Linear(3) + 0.0722 * Linear(5);
    }
}
