using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.TakeOff;

/// <summary>
/// Joins short header pieces over one opening into one piece along it: fewer pieces, no seams. It
/// fits when every header of the opening is short and none is higher than the roll is wide.
/// </summary>
/// <remarks>Source: takeoff.md W6. The joined piece is as long as the opening is wide.</remarks>
internal sealed class HeaderMerge(PieceRule rule)
{
    /// <summary>Short headers by opening, with whether one piece could replace them.</summary>
    public static IEnumerable<(Opening Opening, IReadOnlyList<StripPiece> Headers, bool Fits)>
        ShortOnes(IReadOnlyList<StripPiece> pieces, Practice practice) =>
        from piece in pieces
        where piece.Draft is { Role: PieceRole.Header, Opening: not null, Lay: PieceLay.Upright }
        group piece by piece.Draft.Opening into above
        let headers = above.ToArray()
        where headers.Any(h => h.Draft.Exact < practice.ShortHeader)
        let narrowest = headers.Min(h => h.Strip.Width)
        let fits = headers.Length > 1
            && headers.All(h => h.Draft.Exact < practice.ShortHeader
                && h.Draft.Exact <= narrowest && h.Strip.Width == narrowest)
        select (above.Key!, (IReadOnlyList<StripPiece>)headers, fits);

    public IReadOnlyList<StripPiece> Merged(IReadOnlyList<StripPiece> pieces, Practice practice)
    {
        var result = pieces.ToList();
        foreach (var (opening, headers, fits) in ShortOnes(pieces, practice).ToArray())
        {
            if (!fits) continue;
            var at = result.IndexOf(headers[0]);
            result.RemoveAll(headers.Contains);
            result.Insert(at, new(headers[0].Strip, rule.Along(
                headers[0].Draft.Plane, PieceRole.Header, opening.Along!.Value, Length.Zero,
                new(opening.Top, headers.Max(h => h.Draft.Top.Up)), opening)));
        }
        return result;
    }
}
