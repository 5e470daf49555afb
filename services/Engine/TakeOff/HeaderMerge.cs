using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.TakeOff;

/// <summary>The headers of one opening of which at least one is short.</summary>
/// <param name="Opening">The opening they lie above.</param>
/// <param name="Upright">One piece for each strip.</param>
/// <param name="Joined">One piece along the opening in their place; null when none fits.</param>
/// <param name="WhyNot">Why none fits, in words that end a sentence; else empty.</param>
internal sealed record ShortHeaders(
    Opening Opening, IReadOnlyList<StripPiece> Upright, StripPiece? Joined, string WhyNot)
{
    public Area UprightArea => Upright.Aggregate(Area.Zero, (sum, p) => sum + Bought(p));

    public Area JoinedArea => Joined is null ? Area.Zero : Bought(Joined);

    /// <summary>
    /// True when one piece buys no more: as for roll widths the bought area counts first, then the
    /// pieces, and one is fewer.
    /// </summary>
    public bool IsBetter => Joined is not null && Joined.BoughtNm2 <= Upright.Aggregate(
        (Int128)0, (sum, p) => sum + p.BoughtNm2);

    private static Area Bought(StripPiece piece) => Area.Of(piece.Strip.Width, piece.Draft.Cut);
}

/// <summary>
/// Joins short header pieces over one opening into one piece along it where that is better. It
/// fits when every header of the opening is short, a roll on offer is as wide as the highest, and
/// a roll yields the length of the opening.
/// </summary>
/// <remarks>Source: takeoff.md W6. The joined piece is as long as the opening is wide.</remarks>
internal sealed class HeaderMerge(CoverUnit unit, PieceRule rule, Practice practice)
{
    public IEnumerable<ShortHeaders> ShortOnes(IReadOnlyList<StripPiece> pieces) =>
        from piece in pieces
        where piece.Draft is { Role: PieceRole.Header, Opening: not null, Lay: PieceLay.Upright }
        group piece by piece.Draft.Opening into above
        let headers = above.ToArray()
        where headers.Any(h => h.Draft.Exact < practice.ShortHeader)
        select Group(above.Key!, headers);

    public IReadOnlyList<StripPiece> Merged(IReadOnlyList<StripPiece> pieces)
    {
        var result = pieces.ToList();
        foreach (var group in ShortOnes(pieces).Where(g => g.IsBetter).ToArray())
        {
            var joined = group.Joined!;
            var at = result.IndexOf(group.Upright[0]);
            result.RemoveAll(group.Upright.Contains);
            result.Insert(at, joined with
            {
                Draft = joined.Draft with { InsteadOf = Instead(group) },
            });
        }
        return result;
    }

    private ShortHeaders Group(Opening opening, StripPiece[] headers)
    {
        if (headers.Length == 1) return new(opening, headers, null, "");
        var highest = headers.Max(h => h.Draft.Exact);
        if (highest >= practice.ShortHeader)
            return new(opening, headers, null,
                $"the highest, {Say(highest)}, is not short (under {Say(practice.ShortHeader)})");
        if (unit.Widths.Where(w => w >= highest).Order().ToArray() is not [var width, ..])
            return new(opening, headers, null,
                $"the highest, {Say(highest)}, is wider than a roll of {Say(unit.Widths.Max())}");
        var draft = rule.Along(
            headers[0].Draft.Plane, PieceRole.Header, opening.Along!.Value, Length.Zero,
            new(opening.Top, headers.Max(h => h.Draft.Top.Up)), opening);
        var yields = unit.Product.Rolls.First(r => r.Width == width).RollLength - practice.EndTrim;
        return draft.Cut > yields
            ? new(opening, headers, null,
                $"{Say(draft.Cut)} is more than a roll yields, {Say(yields)}")
            : new(opening, headers, new(headers[0].Strip with
            {
                Width = width,
                Reach = new(headers[0].Strip.Reach.From, headers[^1].Strip.Reach.To),
            }, draft), "");
    }

    private string Instead(ShortHeaders group) =>
        $"takes the place of {group.Upright.Count} header pieces of "
        + $"{group.UprightArea.Say(practice.Metric)}: one of {Say(group.Joined!.Strip.Width)} × "
        + $"{Say(group.Joined.Draft.Cut)} buys {group.JoinedArea.Say(practice.Metric)}";

    private string Say(Length length) => length.Say(practice.Metric);
}
