using PostFrame.Documents.Drawing;

namespace PostFrame.Documents.Maps;

/// <summary>
/// Which strips of a placed plane can carry their mark and length themselves, and how; the others
/// are told of outside the plane.
/// </summary>
internal sealed class PlaneLettering
{
    /// <summary>
    /// Strips with less room than this beside the usual one are lettered smaller.
    /// </summary>
    private const double LeastOfUsual = 0.9;

    private readonly Dictionary<MapStrip, MapText.Setting> inside =
        new(ReferenceEqualityComparer.Instance);

    public PlaneLettering(PlacedPlane placed, MapDetail asked)
    {
        Detail = asked with { MostTextPt = EvenTextPt(placed, asked) };
        foreach (var strip in placed.Plane.Strips)
        {
            var setting = placed.Plane.IsCarriedOn(strip)
                ? null
                : Fitted(placed, strip, Detail) ?? Fitted(placed, strip, asked);
            if (setting is not null)
            {
                inside[strip] = setting;
            }
            else if (!placed.Plane.IsCarriedOn(strip))
            {
                Outside.Add(strip);
            }
        }
    }

    /// <summary>Strips too small for their own words, from strip 1.</summary>
    public List<MapStrip> Outside { get; } = [];

    /// <summary>The detail with the letter size most strips of the plane can take.</summary>
    public MapDetail Detail { get; }

    public MapText.Setting? Of(MapStrip strip) => inside.GetValueOrDefault(strip);

    public static string Words(MapStrip strip) =>
        $"{Lettering.Clean(strip.Mark)}  {Lettering.Clean(strip.LengthText)}".Trim();

    private static MapText.Setting? Fitted(PlacedPlane placed, MapStrip strip, MapDetail detail)
    {
        var best = MapText.Best(
            StripRooms.Free(placed, strip, detail.MostTextPt),
            Lettering.Clean(strip.Mark),
            Lettering.Clean(strip.LengthText),
            detail);
        return best is not null && best.Size >= detail.LeastTextPt ? best : null;
    }

    private static double EvenTextPt(PlacedPlane placed, MapDetail asked)
    {
        var sizes = placed.Plane.Strips
            .Select(strip => Fitted(placed, strip, asked)?.Size ?? 0)
            .Where(size => size > 0)
            .Order().ToList();
        var usual = sizes.Count == 0 ? asked.MostTextPt : sizes[sizes.Count / 2];
        return sizes.Where(size => size >= usual * LeastOfUsual).DefaultIfEmpty(usual).Min();
    }
}
