using PostFrame.Documents.Drawing;

namespace PostFrame.Documents.Maps;

/// <summary>
/// How a kind of plane is told apart: by its word, by its pattern in black, and last by colour.
/// </summary>
internal static class PlaneLook
{
    public static string Colour(PlaneKind kind) => kind switch
    {
        PlaneKind.Roof => Ink.Orange,
        PlaneKind.Sidewall => Ink.BluishGreen,
        _ => Ink.ReddishPurple,
    };

    public static string Word(PlaneKind kind) => kind switch
    {
        PlaneKind.Roof => "ROOF",
        PlaneKind.Sidewall => "SIDEWALL",
        _ => "ENDWALL",
    };

    /// <summary>
    /// Fills a shape with the kind's pattern: solid for the roof, diagonal bars for a sidewall, dots
    /// for an endwall. <paramref name="step"/> is the pattern's spacing [pt].
    /// </summary>
    public static void Fill(
        Sketch sketch, IReadOnlyList<Spot> shape, PlaneKind kind, double step)
    {
        sketch.Fill(shape, Colour(kind));
        switch (kind)
        {
            case PlaneKind.Sidewall:
                foreach (var (from, to) in Polygons.DiagonalBars(shape, step))
                {
                    sketch.Line(from, to, step * 0.3);
                }

                break;
            case PlaneKind.Endwall:
                foreach (var centre in Polygons.Dots(shape, step, step * 0.22))
                {
                    sketch.Dot(centre, step * 0.22, Ink.Black);
                }

                break;
        }
    }
}
