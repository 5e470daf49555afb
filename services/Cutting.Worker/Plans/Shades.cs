using PostFrame.Engine.TakeOff;

namespace PostFrame.CuttingWorker.Plans;

/// <summary>
/// Where the shade of a lot is seen: common practice, no source. Film differs a little from lot to
/// lot, and the strips of a plane hang side by side; bright foil does not show it.
/// </summary>
internal static class Shades
{
    /// <summary>Pieces of one group come from one lot; null where any will do.</summary>
    public static string? GroupOf(OpenPiece piece) =>
        AreSeen(piece.Product) ? $"{piece.OrderNumber} {piece.Plane}" : null;

    public static bool AreSeen(string product) =>
        ProductCatalogue.Find(product) is { Facing: not null } found
        && found.RoomFaceEmittance.Value > BrightFoil;

    /// <summary>
    /// Planes that come from more than one lot all the same: what was cut from a lot that ran out
    /// cannot be undone.
    /// </summary>
    public static IEnumerable<string> Warnings(IEnumerable<CutRow> cuts) =>
        from cut in cuts
        where AreSeen(cut.Product)
        group cut.Lot ?? "new rolls" by cut.Plane into plane
        let lots = plane.Distinct().Order(StringComparer.Ordinal).ToList()
        where lots.Count > 1
        select $"Plane {plane.Key} comes from lots {string.Join(" and ", lots)}: their film may "
            + "differ a little in shade. Lay each together.";

    /// <summary>No bright metal sends out more than this part of a black body's heat.</summary>
    private const double BrightFoil = 0.5;
}
