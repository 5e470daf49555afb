using System.Globalization;
using PostFrame.Engine.TakeOff;

namespace PostFrame.Engine;

/// <summary>Gives pieces their marks and puts them in canonical order: plane, strip, upwards.
/// </summary>
internal sealed class PieceList(Practice practice, PieceRule rule)
{
    public IEnumerable<Piece> Of(IEnumerable<UnitTakeOff> units)
    {
        var why = new PieceWhy(practice, rule);
        foreach (var unit in units)
            foreach (var plane in unit.Pieces.GroupBy(p => p.Draft.Plane.Id))
                foreach (var strip in plane.GroupBy(p => (p.Strip.Number, p.Draft.Role)))
                {
                    var nth = 0;
                    foreach (var piece in strip.OrderBy(p => p.Draft.Bottom))
                        yield return Make(unit, piece, ++nth, why);
                }
    }

    private static Piece Make(UnitTakeOff unit, StripPiece piece, int nth, PieceWhy why)
    {
        var (strip, draft) = (piece.Strip, piece.Draft);
        return new()
        {
            Mark = Mark(draft, strip.Number, nth),
            Plane = draft.Plane.Id,
            Strip = strip.Number,
            Role = draft.Role,
            Lay = draft.Lay,
            Product = unit.Unit.Product.Code,
            Width = strip.Width,
            Exact = draft.Exact,
            Cut = draft.Cut,
            From = draft.Covers.From,
            To = draft.Covers.To,
            Bottom = draft.Bottom,
            Top = draft.Top.Up,
            Weight = Weights.Of(unit.Unit.Product, strip.Width, draft.Cut),
            Why = why.Of(draft),
        };
    }

    private static string Mark(Draft draft, int strip, int nth)
    {
        var role = draft.Role switch
        {
            PieceRole.Header => "H",
            PieceRole.Sill => "S",
            _ => "",
        };
        var count = nth > 1 ? nth.ToString(CultureInfo.InvariantCulture) : "";
        return string.Create(
            CultureInfo.InvariantCulture, $"{draft.Plane.Code}-{strip:00}{role}{count}");
    }
}
