using PostFrame.Engine.Buildings;
using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;

namespace PostFrame.Engine;

/// <summary>The take-off, or every mistake in what was asked; never both.</summary>
/// <param name="Result">Null when anything was wrong.</param>
/// <param name="Violations">Empty when a result is there.</param>
public sealed record SizingOutcome(
    SizingResult? Result, IReadOnlyList<Violation> Violations);

/// <summary>
/// What a building needs, in canonical order: the same input gives the same result.
/// </summary>
public sealed record SizingResult
{
    /// <summary>What was understood.</summary>
    public required BuildingSummary Building { get; init; }

    /// <summary>Every piece, by plane and strip.</summary>
    public required IReadOnlyList<Piece> Pieces { get; init; }

    /// <summary>The same pieces, counted.</summary>
    public required IReadOnlyList<ScheduleLine> Schedule { get; init; }

    /// <summary>The covered planes.</summary>
    public required IReadOnlyList<PlaneResult> Planes { get; init; }

    /// <summary>
    /// Planes of the building that no insulation line names; for the map and the crew.
    /// </summary>
    public required IReadOnlyList<UncoveredPlane> Uncovered { get; init; }

    /// <summary>Sums over pieces from rolls.</summary>
    public required SizingTotals Totals { get; init; }

    /// <summary>All values used and who set them.</summary>
    public required IReadOnlyList<Assumption> Assumptions { get; init; }

    /// <summary>What to look at before ordering.</summary>
    public required IReadOnlyList<Warning> Warnings { get; init; }

    /// <summary>What can hurt someone.</summary>
    public required IReadOnlyList<Caution> Cautions { get; init; }

    /// <summary>Stock rolls for each product and width used.</summary>
    public required IReadOnlyList<StockLine> Stock { get; init; }

    /// <summary>Foam, batts and board.</summary>
    public IReadOnlyList<AreaGoods> AreaGoods { get; init; } = [];

    /// <summary>Tape, staples and nails.</summary>
    public IReadOnlyList<Accessory> Accessories { get; init; } = [];

    /// <summary>Null when no pieces are cut.</summary>
    public Packing? Packing { get; init; }

    /// <summary>What openings whose place is not fixed yet might save; not taken off.</summary>
    public IReadOnlyList<PossibleSaving> PossibleSavings { get; init; } = [];

    /// <summary>Ways to deal with last strips that cover very little.</summary>
    public IReadOnlyList<LastStripChoice> Choices { get; init; } = [];

    /// <summary>Null when no price list was given.</summary>
    public Price? Price { get; init; }
}

/// <summary>The building as it was understood, every datum resolved.</summary>
public sealed record BuildingSummary
{
    /// <summary>As given.</summary>
    public required string? Name { get; init; }

    /// <summary>As given.</summary>
    public required RoofForm Form { get; init; }

    /// <summary>One line for print: "30 ft × 40 ft gable, eave 10 ft, 4:12".</summary>
    public required string Summary { get; init; }

    /// <summary>Out to out of girts.</summary>
    public required Length Width { get; init; }

    /// <summary>Out to out of the endwall girts.</summary>
    public required Length Length { get; init; }

    /// <summary>From the strip base to the eave line of sidewall A.</summary>
    public required Length EaveHeight { get; init; }

    /// <summary>From the strip base to the highest point of the profile.</summary>
    public required Length RidgeHeight { get; init; }

    /// <summary>Vented when any part of it is.</summary>
    public required RidgeKind Ridge { get; init; }

    /// <summary>Cross-section from outer girt to outer girt, heights from the strip base.</summary>
    public required IReadOnlyList<PlanePoint> Profile { get; init; }

    /// <summary>True when its sizes came in metric units.</summary>
    public required bool Metric { get; init; }
}

/// <summary>What one piece is there for.</summary>
public enum PieceRole
{
    Full,
    Header,
    Sill,
}

/// <summary>Which way a piece lies in its plane.</summary>
public enum PieceLay
{
    /// <summary>Its length runs up the wall or slope.</summary>
    Upright,

    /// <summary>Its length runs along the plane.</summary>
    Across,
}

/// <summary>One pre-cut piece.</summary>
public sealed record Piece
{
    /// <summary>What the crew reads: RA-01, E1-03H, SA-04S.</summary>
    public required string Mark { get; init; }

    /// <summary>Plane id, such as endwall1.</summary>
    public required string Plane { get; init; }

    /// <summary>From 1, counted from endwall 1 or sidewall A.</summary>
    public required int Strip { get; init; }

    /// <summary>Full height, above an opening or below one.</summary>
    public required PieceRole Role { get; init; }

    /// <summary>Upright unless it lies along the plane.</summary>
    public required PieceLay Lay { get; init; }

    /// <summary>Product code.</summary>
    public required string Product { get; init; }

    /// <summary>Nominal roll width.</summary>
    public required Length Width { get; init; }

    /// <summary>Before rounding.</summary>
    public required Length Exact { get; init; }

    /// <summary>What to cut: exact length rounded up once.</summary>
    public required Length Cut { get; init; }

    /// <summary>Place in the plane, clipped to it.</summary>
    public required Length From { get; init; }

    /// <summary>Far edge of what it covers.</summary>
    public required Length To { get; init; }

    /// <summary>Lower end of what it covers, folds not counted.</summary>
    public required Length Bottom { get; init; }

    /// <summary>Far edge of what it covers.</summary>
    public required Length Top { get; init; }

    /// <summary>Facing width × cut length × mass per area.</summary>
    public required Mass Weight { get; init; }

    /// <summary>How the length came about; the values up to "exact" add up to it.</summary>
    public required IReadOnlyList<WhyLine> Why { get; init; }
}

/// <summary>One step of a derivation.</summary>
/// <param name="Term">Stable id: slopeLength, eaveTuck, exact, roundUp, …</param>
/// <param name="Text">The step for a person with a pencil.</param>
/// <param name="Value">What it adds; of exact and roundUp, the length reached.</param>
/// <param name="Mark">P, C, M, D, or "asked" when the request set it.</param>
public sealed record WhyLine(string Term, string Text, Length Value, string Mark);

/// <summary>Pieces alike, counted.</summary>
public sealed record ScheduleLine(
    string Plane, string Product, PieceRole Role, Length Width, Length Cut, int Count);

/// <summary>A covered plane.</summary>
public sealed record PlaneResult
{
    /// <summary>Plane id, such as endwall1.</summary>
    public required string Plane { get; init; }

    /// <summary>Short code used in marks.</summary>
    public required string Code { get; init; }

    /// <summary>The plane in words.</summary>
    public required string Title { get; init; }

    /// <summary>Roof, sidewall or endwall.</summary>
    public required PlaneKind Kind { get; init; }

    /// <summary>Product code.</summary>
    public required string Product { get; init; }

    /// <summary>Geometric area, wide openings with a fixed place deducted.</summary>
    public required Area Net { get; init; }

    /// <summary>Nominal width × cut length of its pieces; of area goods the net area.</summary>
    public required Area Gross { get; init; }

    /// <summary>Strip positions; 0 for area goods.</summary>
    public required int Strips { get; init; }

    /// <summary>What there is to cover along the plane, wraps not counted.</summary>
    public required Length Run { get; init; }

    /// <summary>What one strip covers; with mixed widths the widest.</summary>
    public required Length Coverage { get; init; }

    /// <summary>What the strips cover beyond the run.</summary>
    public required Length Surplus { get; init; }

    /// <summary>How the strips were counted, for a person.</summary>
    public required string How { get; init; }

    /// <summary>Edges of the strips along the run, first and last included.</summary>
    public required IReadOnlyList<Length> Joints { get; init; }

    /// <summary>Closed polygon without its last point repeated; x along, y up.</summary>
    public required IReadOnlyList<PlanePoint> Outline { get; init; }

    /// <summary>Openings with a fixed place.</summary>
    public required IReadOnlyList<PlacedOpening> Openings { get; init; }

    /// <summary>Translucent panels the strips run over, for the map.</summary>
    public IReadOnlyList<PlacedPanel> Panels { get; init; } = [];

    /// <summary>
    /// Where the run of a roof or sidewall begins along the building, from endwall 1: at a lean-to
    /// of part of the length beyond it, at a covered rake overhang before it.
    /// </summary>
    public Length Start { get; init; }

    /// <summary>Ridge, vented ridge and break lines within the plane, for the map.</summary>
    public IReadOnlyList<PlaneLine> Lines { get; init; } = [];

    /// <summary>Null when heat cannot be summed up for it.</summary>
    public PlaneHeatSummary? Thermal { get; init; }
}

/// <summary>A level line within a plane.</summary>
/// <param name="Kind">ridge, ridgeVent or break.</param>
public sealed record PlaneLine(string Kind, Length From, Length To, Length Up);

/// <summary>A plane left without insulation.</summary>
public sealed record UncoveredPlane(
    string Plane, string Code, string Title, PlaneKind Kind, IReadOnlyList<PlanePoint> Outline);

/// <summary>An opening in its plane, clipped to it.</summary>
public sealed record PlacedOpening(
    OpeningKind Kind, Length From, Length To, Length Bottom, Length Top, bool Deducted);

/// <summary>A translucent panel in its roof plane, clipped to it.</summary>
public sealed record PlacedPanel(Length From, Length To, Length Bottom, Length Top);

/// <summary>Sums over the job.</summary>
public sealed record SizingTotals(
    int Pieces, Length Length, Area Gross, Area Net, double GrossToNet, Mass Weight);

/// <summary>A value the take-off used.</summary>
/// <param name="Id">Member of /practice or of the building, in the request's spelling.</param>
/// <param name="Text">What it is for.</param>
/// <param name="Value">As text, in the job's units.</param>
/// <param name="Unit">Null when it has none.</param>
/// <param name="Mark">P, C, M, D, or "asked".</param>
public sealed record Assumption(string Id, string Text, string Value, string? Unit, string Mark);

/// <summary>Something to look at before ordering.</summary>
public sealed record Warning(string Id, string Text, string? Plane);

/// <summary>A safety or code caution; it defers to local rules and licensed practice.</summary>
public sealed record Caution(string Id, string Topic, string Text, string Basis, string Source);

/// <summary>A stock roll the pieces are cut from.</summary>
public sealed record StockLine(
    string Product, Length Width, Length RollLength, Length EndTrim, Length MinUsefulOffcut);

/// <summary>Goods bought by area: spray foam, batts, board.</summary>
/// <param name="Quantity">In <paramref name="Unit"/>, rounded up to what can be bought.</param>
/// <param name="Unit">board feet, m³ where the job is metric, bags, sheets.</param>
public sealed record AreaGoods(
    string Product, string Title, IReadOnlyList<string> Planes, Area Net, Length Thickness,
    double Quantity, string Unit, string How, string Mark);

/// <summary>Tape, staples and the like.</summary>
/// <param name="Needed">Before rounding to what can be bought.</param>
/// <param name="NeededUnit">ft, m or pieces.</param>
/// <param name="Quantity">Whole units to buy.</param>
/// <param name="Unit">rolls, boxes, pieces.</param>
public sealed record Accessory(
    string Id, string Title, double Needed, string NeededUnit, int Quantity, string Unit,
    string How, string Mark);

/// <summary>How the pieces travel.</summary>
public sealed record Packing(
    IReadOnlyList<Bag> Bags, IReadOnlyList<Pallet> Pallets, double FreightFt3,
    double TrailerFeet, Mass Weight, string How, string Mark);

/// <summary>One bag: a coil of one piece or of a few wall pieces.</summary>
public sealed record Bag(
    int Number, IReadOnlyList<string> Marks, Length CoilDiameter, Length Width, Mass Weight,
    string Handling);

/// <summary>Bags that travel together, in the order of their pieces.</summary>
public sealed record Pallet(int Number, IReadOnlyList<int> Bags, Mass Weight);

/// <summary>What an opening might save once its place is fixed.</summary>
public sealed record PossibleSaving(
    string Opening, string Plane, int Strips, Length Length, Area Gross, string Text);

/// <summary>A choice for a last strip that covers little.</summary>
/// <param name="What">The choice alone, in a sentence.</param>
/// <param name="Text">Where it is offered, and the choice.</param>
public sealed record LastStripChoice(
    string Plane, LastStrip Choice, bool Taken, Length CutLength, Area Gross, string What,
    string Text);

/// <summary>Price by the shop's own list.</summary>
public sealed record Price(
    string ListId, string ListVersion, string Currency, string? Note,
    IReadOnlyList<PriceLine> Lines, decimal Total, IReadOnlyList<string> NotPriced);

/// <summary>One priced line.</summary>
public sealed record PriceLine(
    string Item, decimal Quantity, string Unit, decimal UnitPrice, decimal Amount);
