using System.Globalization;
using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Buildings;

/// <summary>Checks a cross-section given point by point.</summary>
/// <remarks>Source: takeoff.md 2.3.</remarks>
internal sealed class DrawnRoof(
    IReadOnlyList<ProfilePointInput>? vertices, Length width, Length eaveHeight,
    HeightDatum datum, Findings findings)
{
    private const string At = "/building/roof";

    /// <summary>The shape; null when there were violations.</summary>
    public RoofShape? Read()
    {
        if (datum.AtBearing)
            findings.Add("/building/eaveHeightDatum", "not-with-profile",
                "A drawn cross-section gives the purlin tops themselves: measure its heights and "
                + "the eave from the floor, not from the bearing.", "bearing", "floor");
        if (vertices is null || vertices.Count < 2 || vertices.Count > Bounds.MostPoints)
        {
            findings.Add($"{At}/points", "points-count",
                $"A profile has 2 to {Bounds.MostPoints} points.",
                $"{vertices?.Count ?? 0}", vertices?.Count > 2 ? $"{Bounds.MostPoints}" : "2");
            return null;
        }
        var points = new List<PlanePoint>();
        for (var i = 0; i < vertices.Count; i++)
        {
            var at = $"{At}/points/{i}";
            var across = findings.Required(
                $"{at}/across", "across", vertices[i].Across, Length.Zero, Bounds.MostWidth);
            var up = findings.Required(
                $"{at}/up", "up", vertices[i].Up, Bounds.OneInch, Bounds.MostPeak);
            if (across is null || up is null) continue;
            if (points.Count > 0 && across - points[^1].Across < Bounds.OneInch)
                findings.Broken($"{at}/across", "not-rightwards",
                    $"Point {i + 1} is not at least 1 in to the right of the one before.",
                    across.Value, points[^1].Across + Bounds.OneInch);
            points.Add(new(across.Value, datum.FromStripBase(up.Value)));
        }
        return points.Count == vertices.Count && EndsMeet(points) ? Unfolded(points) : null;
    }

    private bool EndsMeet(List<PlanePoint> points)
    {
        var ok = true;
        foreach (var (index, member, actual, wanted, what) in new[]
        {
            (0, "across", points[0].Across, Length.Zero, "sidewall A"),
            (points.Count - 1, "across", points[^1].Across, width, "the width"),
            (0, "up", points[0].Up, datum.FromStripBase(eaveHeight), "the eave height"),
        })
        {
            if (Math.Abs((actual - wanted).Nanometres) <= Bounds.Closing.Nanometres) continue;
            findings.Broken($"{At}/points/{index}/{member}", "does-not-close",
                $"The point is at {findings.Say(actual)}, but {what} is at "
                + $"{findings.Say(wanted)}.", actual, wanted);
            ok = false;
        }
        return ok;
    }

    private RoofShape? Unfolded(List<PlanePoint> points)
    {
        for (var i = 1; i < points.Count; i++)
            if (points[i].Across <= points[i - 1].Across) return null;
        points[^1] = new(width, points[^1].Up);
        points[0] = new(Length.Zero, points[0].Up);
        var found = findings.All.Count;
        var top = 0;
        for (var i = 1; i < points.Count; i++)
            if (points[i].Up > points[top].Up) top = i;
        for (var i = 1; i < points.Count; i++)
        {
            var (before, here) = (points[i - 1].Up, points[i].Up);
            if (i <= top ? here >= before : here <= before)
            {
                CheckSlope(points, i);
                continue;
            }
            findings.Broken($"{At}/points/{i}/up", "roof-falls-inward",
                $"The roof falls inward between points {i} and {i + 1}; take it off as two "
                + "buildings.", points[i].Up, points[i - 1].Up);
            return null;
        }
        if (findings.All.Count > found) return null;
        return new(new(points), top > 0 && top < points.Count - 1 ? top : null);
    }

    /// <summary>A drawn segment drains and is no wall, as every slope given as such.</summary>
    private void CheckSlope(List<PlanePoint> points, int i)
    {
        var run = points[i].Across - points[i - 1].Across;
        var rise = points[i].Up - points[i - 1].Up;
        var x = Math.Abs(rise / run) * 12;
        var flat = x < Bounds.LeastSlope - 1e-9;
        if (!flat && x <= Bounds.MostSlope + 1e-9) return;
        var bound = flat ? Bounds.LeastSlope : Bounds.MostSlope;
        findings.Add($"{At}/points/{i}/up", flat ? "too-small" : "too-large",
            string.Create(CultureInfo.InvariantCulture,
                $"Between points {i} and {i + 1} the roof slopes {x:0.###}:12; it must be "
                + $"{Bounds.LeastSlope}:12 to {Bounds.MostSlope}:12."),
            x.ToString("0.###", CultureInfo.InvariantCulture),
            bound.ToString(CultureInfo.InvariantCulture), "in 12 in");
    }
}
