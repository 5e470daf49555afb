using PostFrame.Documents.Drawing;

namespace PostFrame.Documents.Maps;

/// <summary>Strips in few words: those of one length together, neighbours as a range.</summary>
internal static class PieceRanges
{
    public const string Between = " · ";

    /// <summary>Such as "E1-01, E1-08 12 ft 0 in · E1-02 to E1-07 14 ft 6 in".</summary>
    public static string Words(MapPlane plane, IReadOnlyList<MapStrip> strips) => string.Join(
        Between,
        strips.GroupBy(strip => Lettering.Clean(strip.LengthText)).Select(group =>
            $"{Marks(plane, [.. group])} {group.Key}{(group.Count() > 2 ? " each" : "")}"));

    private static string Marks(MapPlane plane, IReadOnlyList<MapStrip> strips)
    {
        var places = plane.Strips.Select((strip, index) => (strip.Mark, index))
            .GroupBy(entry => entry.Mark)
            .ToDictionary(same => same.Key, same => same.First().index);
        var said = new List<string>();
        for (var first = 0; first < strips.Count;)
        {
            var last = first;
            while (last + 1 < strips.Count
                && places[strips[last + 1].Mark] == places[strips[last].Mark] + 1)
            {
                last++;
            }

            var from = Lettering.Clean(strips[first].Mark);
            var to = Lettering.Clean(strips[last].Mark);
            if (last - first >= 2)
            {
                said.Add($"{from} to {to}");
            }
            else
            {
                said.Add(from);
                if (last > first)
                {
                    said.Add(to);
                }
            }

            first = last + 1;
        }

        return string.Join(", ", said);
    }
}
