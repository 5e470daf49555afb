using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>
/// A profile made ready for vapour. Points are all places on it; stations are the distinct
/// distances in sd, each with the lowest saturation pressure of the points there.
/// </summary>
internal sealed class VapourPath
{
    /// <summary>Largest resistance of one part [m²·K/W]. Source: ISO 13788:2012 clause 6.</summary>
    private const double LargestPart = 0.25;

    /// <summary>Stands for a layer nothing passes: 3.5 millionths of a perm.</summary>
    private const double TightSdM = 1e6;

    private VapourPath(List<(string Name, double Sd, Temperature At)> points)
    {
        Points = points;
        StationOf = new int[points.Count];
        var sd = new List<double>();
        var saturation = new List<double>();
        var coldest = new List<int>();
        for (var i = 0; i < points.Count; i++)
        {
            var own = Vapour.Saturation(points[i].At);
            if (i == 0 || points[i].Sd - sd[^1] > 1e-9)
            {
                sd.Add(points[i].Sd);
                saturation.Add(own);
                coldest.Add(i);
            }
            else if (own < saturation[^1])
            {
                saturation[^1] = own;
                coldest[^1] = i;
            }
            StationOf[i] = sd.Count - 1;
        }
        Sd = [.. sd];
        Saturation = [.. saturation];
        ColdestPoint = [.. coldest];
    }

    public IReadOnlyList<(string Name, double Sd, Temperature At)> Points { get; }

    /// <summary>The station each point belongs to.</summary>
    public int[] StationOf { get; }

    public double[] Sd { get; }

    public double[] Saturation { get; }

    /// <summary>The point that gives each station its saturation pressure.</summary>
    public int[] ColdestPoint { get; }

    /// <summary>Into how many parts each node's run is cut.</summary>
    public static int[] PartsOf(IReadOnlyList<ProfileNode> profile) =>
    [
        .. profile.Select(node =>
            Math.Max(1, (int)Math.Ceiling(node.ToNext.TotalSi / LargestPart - 1e-9))),
    ];

    public static VapourPath Through(IReadOnlyList<ProfileNode> profile, int[] parts)
    {
        var points = new List<(string Name, double Sd, Temperature At)>();
        var at = 0.0;
        for (var i = 0; i < profile.Count; i++)
        {
            var node = profile[i];
            var own = Math.Min(node.SdToNextM, TightSdM);
            var rise = i == profile.Count - 1
                ? 0
                : profile[i + 1].Temperature.KelvinsAbove(node.Temperature);
            for (var part = 0; part < parts[i]; part++)
            {
                var share = (double)part / parts[i];
                points.Add((
                    part == 0 ? PlaceOf(profile, i) : $"inside {node.Name}",
                    at + own * share,
                    node.Temperature.PlusKelvins(rise * share)));
            }
            at += own;
        }
        return new VapourPath(points);
    }

    private static string PlaceOf(IReadOnlyList<ProfileNode> profile, int i) => i switch
    {
        0 => "room air",
        1 => "room face",
        _ when i == profile.Count - 1 => "outdoor air",
        _ when i == profile.Count - 2 => "outside face",
        _ => $"between {profile[i - 1].Name} and {profile[i].Name}",
    };
}
