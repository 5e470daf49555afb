namespace PostFrame.SizingApi.Sizings;

/// <summary>
/// The take-off of one building, as it goes over the wire. Numbers name their unit.
/// </summary>
public sealed record TakeOffBody
{
    /// <summary>The building as it was understood.</summary>
    public required BuildingLine Building { get; init; }

    public required IReadOnlyList<PieceLine> Pieces { get; init; }

    /// <summary>Equal pieces of a plane, counted.</summary>
    public required IReadOnlyList<ScheduleLine> Schedule { get; init; }

    public required IReadOnlyList<PlaneLine> Planes { get; init; }

    public required TotalsLine Totals { get; init; }

    public required IReadOnlyList<AssumptionLine> Assumptions { get; init; }

    public required IReadOnlyList<WarningLine> Warnings { get; init; }

    public required IReadOnlyList<CautionLine> Cautions { get; init; }

    /// <summary>The rolls the pieces are cut from.</summary>
    public required IReadOnlyList<StockLine> Stock { get; init; }

    /// <summary>Planes of the building that no insulation line names.</summary>
    public required IReadOnlyList<UncoveredLine> Uncovered { get; init; }

    /// <summary>Spray foam, batts and board: bought by area, not cut to pieces.</summary>
    public required IReadOnlyList<AreaGoodsLine> AreaGoods { get; init; }

    /// <summary>Tape, staples and the like.</summary>
    public required IReadOnlyList<AccessoryLine> Accessories { get; init; }

    public PackingLine? Packing { get; init; }

    /// <summary>What openings whose place is not fixed yet might save; not taken off.</summary>
    public required IReadOnlyList<SavingLine> PossibleSavings { get; init; }

    /// <summary>Ways to deal with last strips that cover very little.</summary>
    public required IReadOnlyList<ChoiceLine> Choices { get; init; }

    /// <summary>By the shop's own price list; absent when there is none.</summary>
    public PriceBlock? Price { get; init; }
}

/// <summary>The building in one system of units, whatever it was typed in.</summary>
public sealed record BuildingLine
{
    public required string Name { get; init; }

    /// <summary>One line for a label or a list: <c>30 ft × 40 ft × 10 ft gable 4:12</c>.</summary>
    public required string Summary { get; init; }

    public required string Form { get; init; }

    /// <summary>Out to out of the sidewall girts.</summary>
    public required decimal WidthIn { get; init; }

    /// <summary>Out to out of the endwall girts.</summary>
    public required decimal LengthIn { get; init; }

    /// <summary>From the strip base to the eave line at sidewall A.</summary>
    public required decimal EaveHeightIn { get; init; }

    public required decimal PeakHeightIn { get; init; }

    /// <summary><c>imperial</c> or <c>metric</c>, as the width was written.</summary>
    public required string Units { get; init; }

    /// <summary><c>closed</c> or <c>vented</c>.</summary>
    public required string Ridge { get; init; }

    /// <summary>Cross-section, corner by corner from sidewall A: across, up.</summary>
    public required IReadOnlyList<PointLine> Profile { get; init; }
}

public sealed record PointLine(decimal AcrossIn, decimal UpIn);

/// <summary>One piece to cut.</summary>
public sealed record PieceLine
{
    /// <summary>What the crew reads: <c>SA-04</c>, <c>E1-03H</c>.</summary>
    public required string Mark { get; init; }

    public required string Plane { get; init; }

    public required int Strip { get; init; }

    /// <summary><c>full</c>, <c>header</c> above an opening, <c>sill</c> below one.</summary>
    public required string Role { get; init; }

    /// <summary><c>upright</c>, or <c>across</c> when its length runs along the plane.</summary>
    public required string Lay { get; init; }

    public required string Product { get; init; }

    public required decimal WidthIn { get; init; }

    /// <summary>Before rounding.</summary>
    public required decimal ExactIn { get; init; }

    public required decimal CutIn { get; init; }

    public required decimal WidthMm { get; init; }

    public required decimal ExactMm { get; init; }

    public required decimal CutMm { get; init; }

    public required string CutText { get; init; }

    /// <summary>Where the strip starts along its plane's run.</summary>
    public required decimal FromIn { get; init; }

    public required decimal ToIn { get; init; }

    /// <summary>Where the piece lies up its plane.</summary>
    public required decimal BottomIn { get; init; }

    public required decimal TopIn { get; init; }

    public required double WeightLb { get; init; }

    /// <summary>How the length came about, term by term.</summary>
    public required IReadOnlyList<ReasonLine> Why { get; init; }
}

/// <summary>One term of a length.</summary>
public sealed record ReasonLine
{
    public required string Term { get; init; }

    public required string Text { get; init; }

    /// <summary>
    /// What the term adds; of <c>exact</c> and <c>roundUp</c>, the length reached.
    /// </summary>
    public required decimal In { get; init; }

    public required decimal Mm { get; init; }

    /// <summary>P published, C common practice, M from memory, D derived, or asked.</summary>
    public required string Mark { get; init; }
}

public sealed record ScheduleLine
{
    public required string Plane { get; init; }

    public required string Product { get; init; }

    public required string Role { get; init; }

    public required decimal WidthIn { get; init; }

    public required decimal CutIn { get; init; }

    public required decimal WidthMm { get; init; }

    public required decimal CutMm { get; init; }

    public required string CutText { get; init; }

    public required int Count { get; init; }

    /// <summary>The strips, shortened: <c>1–10</c> or <c>1, 8</c>.</summary>
    public required string Strips { get; init; }
}

public sealed record PlaneLine
{
    public required string Plane { get; init; }

    public required string Title { get; init; }

    /// <summary>Short code used in marks.</summary>
    public required string Code { get; init; }

    /// <summary><c>roof</c>, <c>sidewall</c> or <c>endwall</c>.</summary>
    public required string Kind { get; init; }

    public required string Product { get; init; }

    /// <summary>The product in words.</summary>
    public required string ProductTitle { get; init; }

    /// <summary>In words; absent for what has none.</summary>
    public string? Facing { get; init; }

    public required double NetFt2 { get; init; }

    public required double GrossFt2 { get; init; }

    public required int Strips { get; init; }

    public required decimal RunIn { get; init; }

    /// <summary>Where the run begins along the building, from endwall 1; negative where a covered
    /// rake overhang reaches out before it. Absent: at endwall 1.</summary>
    public decimal? StartIn { get; init; }

    public required decimal CoverageIn { get; init; }

    public required decimal SurplusIn { get; init; }

    /// <summary>How the strips were counted, for a person.</summary>
    public required string How { get; init; }

    /// <summary>Corners: x along the run from strip 1, y up the wall or the slope.</summary>
    public required IReadOnlyList<decimal[]> OutlineIn { get; init; }

    public required IReadOnlyList<PlaneOpeningLine> Openings { get; init; }

    /// <summary>Ridge, breaks and ridge vent across a roof plane.</summary>
    public required IReadOnlyList<PlaneRoofLine> Lines { get; init; }

    /// <summary>Absent when the plane's construction cannot be summed up.</summary>
    public ThermalLine? Thermal { get; init; }
}

/// <summary>A line across a roof plane, where it lies in it.</summary>
public sealed record PlaneRoofLine
{
    /// <summary>
    /// <c>ridge</c>, <c>break</c> or <c>ridgeVent</c>; no blanket crosses a vent.
    /// </summary>
    public required string Kind { get; init; }

    public required decimal FromIn { get; init; }

    public required decimal ToIn { get; init; }

    public required decimal UpIn { get; init; }
}

/// <summary>An opening where it lies in its plane.</summary>
public sealed record PlaneOpeningLine
{
    public required string Kind { get; init; }

    public required decimal FromIn { get; init; }

    public required decimal ToIn { get; init; }

    public required decimal BottomIn { get; init; }

    public required decimal TopIn { get; init; }

    /// <summary>True when strips wholly inside it are made as header and sill pieces.</summary>
    public required bool Deducted { get; init; }
}

/// <summary>The product alone, and what the plane does with it, by season.</summary>
public sealed record ThermalLine
{
    /// <summary>The product alone, before installation, h·ft²·°F/Btu.</summary>
    public required double NominalR { get; init; }

    /// <summary>The handbook or standard both seasons are computed by.</summary>
    public required string Basis { get; init; }

    public required SeasonLine Winter { get; init; }

    public required SeasonLine Summer { get; init; }
}

public sealed record SeasonLine
{
    /// <summary>Room air to outdoor air, h·ft²·°F/Btu.</summary>
    public required double AssemblyR { get; init; }

    /// <summary>Btu/(h·ft²·°F).</summary>
    public required double AssemblyU { get; init; }

    public required string Direction { get; init; }

    public required string Method { get; init; }
}

public sealed record TotalsLine
{
    public required int Pieces { get; init; }

    public required double LengthFt { get; init; }

    public required double GrossFt2 { get; init; }

    public required double NetFt2 { get; init; }

    public required double GrossToNet { get; init; }

    public required double WeightLb { get; init; }
}
