namespace PostFrame.SizingApi.Comparisons;

/// <summary>Options and rival lines rebuilt on one basis. Every number names its unit.</summary>
internal sealed record ComparisonBody
{
    public required BasisLine Basis { get; init; }

    public required PlaneLine Plane { get; init; }

    public required ConditionsLine Conditions { get; init; }

    public PlaceLine? Place { get; init; }

    /// <summary>The room's air, the same for every line; absent where not known.</summary>
    public RoomAirBody? RoomAir { get; init; }

    /// <summary>The shop's list, where prices were taken from it.</summary>
    public PricesLine? Prices { get; init; }

    public required IReadOnlyList<LineBody> Lines { get; init; }

    /// <summary>What follows from the lines, ours and theirs alike.</summary>
    public required IReadOnlyList<ConclusionLine> Conclusions { get; init; }

    /// <summary>What was not said and would tell more.</summary>
    public required IReadOnlyList<QuestionLine> Questions { get; init; }

    public required IReadOnlyList<AssumptionLine> Assumptions { get; init; }

    public required RulesLine LabelRule { get; init; }

    public required IReadOnlyList<CautionLine> Cautions { get; init; }

    public PicturesLine? Pictures { get; init; }

    /// <summary>Opens the figures all lines share.</summary>
    public IReadOnlyList<WorkingLine>? Working { get; init; }
}

internal sealed record BasisLine(string Id, string Title);

internal sealed record PlaneLine(
    string Kind, double SlopeDegrees, double? AreaFt2, double? FramingFraction,
    string WinterDirection, string SummerDirection);

internal sealed record ConditionsLine(
    double WinterRoomF, double WinterOutdoorsF, double SummerRoomF, double SummerOutdoorsF,
    double SummerSolAirF, double? HeatingDegreeDaysF);

internal sealed record PlaceLine(
    string? Zone, string? ZoneEdition, bool Ambiguous, string? Station,
    double? StationDistanceKm, IReadOnlyList<string>? Notes);

internal sealed record PricesLine(string Id, string Version, string Currency, string? Note);

/// <param name="ColdExcessPa">Above outdoors when it freezes there, from the use.</param>
/// <param name="BurnerExcessPa">The same from a heater without a flue.</param>
internal sealed record RoomAirBody(
    double ColdExcessPa, double? BurnerWaterKgPerHour, double? BurnerExcessPa,
    AirStateLine AtDesign, IReadOnlyList<AirMonthLine>? Months, string Text);

/// <param name="DewPointF">Or the frost point, where <c>isFrost</c>.</param>
internal sealed record AirStateLine(
    double VapourPa, double RhPercent, double DewPointF, bool IsFrost);

/// <param name="DewPointF">Or the frost point, where <c>isFrost</c>.</param>
internal sealed record AirMonthLine(
    int Month, double OutdoorsF, double RoomF, double VapourPa, double RhPercent,
    double DewPointF, bool IsFrost);

/// <summary>One line, ours or a rival's, in the same members.</summary>
internal sealed record LineBody
{
    public required string Id { get; init; }

    public required bool Ours { get; init; }

    public required string Name { get; init; }

    public required string Kind { get; init; }

    public MaterialLine? Material { get; init; }

    public SeasonBody? Winter { get; init; }

    public SeasonBody? Summer { get; init; }

    /// <summary>A tested value for steel framing, in place of both seasons.</summary>
    public TestedLine? Tested { get; init; }

    public IReadOnlyList<RadiantLine>? Radiant { get; init; }

    /// <summary>What is left when dew or dust lies on the bright faces.</summary>
    public IReadOnlyList<DulledLine>? Dulled { get; init; }

    /// <summary>Whether the room face drips; known also where the permeance is not.</summary>
    public DripLine? Drip { get; init; }

    public MoistureBody? Moisture { get; init; }

    public CodeBody? Code { get; init; }

    public PriceLine? Price { get; init; }

    public EnergyLine? Energy { get; init; }

    public ClaimBody? Claim { get; init; }

    /// <summary>What has to be known of this line; blanks stay blank.</summary>
    public required IReadOnlyList<QuestionLine> Questions { get; init; }

    public required IReadOnlyList<string> Remarks { get; init; }

    public IReadOnlyList<WorkingLine>? Working { get; init; }
}

internal sealed record MaterialLine(double R, double Si, string Source, string Mark);

internal sealed record SeasonBody(
    double AssemblyR, double AssemblySi, double AssemblyU, double AssemblyUSi,
    string Direction, string Method, double HeatFlowBtuPerHFt2, double HeatFlowWPerM2,
    double RoomFaceF, double RoomFaceRadiantSharePercent, double? RadiantSharePercent,
    IReadOnlyList<SpaceLine>? AirSpaces);

internal sealed record SpaceLine(
    double R, double ThicknessIn, double MeanF, double DifferenceF, double EffectiveEmittance,
    double RadiantSharePercent,
    bool OutsideTable);

internal sealed record TestedLine(
    double AssemblyU, double AssemblyR, double WinterHeatFlowBtuPerHFt2,
    double SummerHeatFlowBtuPerHFt2, string System, string RatedInsulation, string Table,
    string Mark, string Text);

/// <param name="RadiantPercent">Of the radiant part, at the brightest face.</param>
/// <param name="TotalPercent">Of all heat through the assembly.</param>
internal sealed record RadiantLine(
    string Season, double? RadiantPercent, double TotalPercent, string Text);

/// <param name="State">dampFoil or wetFoil; dust is taken as wet.</param>
internal sealed record DulledLine(
    string State, double Emittance, double WinterR, double SummerR, string Text);

internal sealed record MoistureBody(
    string Verdict, string Text, double PeakGPerM2, double CarriedOverGPerM2, string? Place,
    string? RetarderClass, double? WetsInsideAboveRhPercent, string? WetsInsideAt,
    UnderSkyLine? UnderSky, ColdestLine Coldest, IReadOnlyList<MoistureMonthLine> Months,
    IReadOnlyList<CureLine> Cures);

/// <summary>The roof 4 K colder than the air all year: the wet bound.</summary>
internal sealed record UnderSkyLine(double PeakGPerM2, double CarriedOverGPerM2);

/// <summary>Through the assembly in the coldest month.</summary>
/// <param name="CondensesGPerM2Day">In a steady state, before anything dries.</param>
internal sealed record ColdestLine(
    int Month, double CondensesGPerM2Day, IReadOnlyList<InterfaceLine> Interfaces);

/// <param name="DewPointF">
/// Or the frost point, where <c>isFrost</c>; at or above the temperature it condenses.
/// </param>
internal sealed record InterfaceLine(
    string Place, double TemperatureF, double SaturationPa, double VapourPa, double DewPointF,
    bool IsFrost);

/// <param name="DripsAboveRhPercent">Room humidity at which it starts at winter design.</param>
/// <param name="DripsAtDesign">Whether the room as reckoned drips then.</param>
internal sealed record DripLine(
    bool? DripsAtDesign,
    double DripsAboveRhPercent, double? ClearNightDripsAboveRhPercent, int? WorstMonth,
    double? WorstFaceRhPercent, string Text);

internal sealed record MoistureMonthLine(
    int Month, double OutdoorsF, double RoomF, double RoomRhPercent, double RoomFaceRhPercent,
    double ChangeGPerM2, double HeldGPerM2);

internal sealed record CureLine(
    string Id, string Text, bool Cures, double? PeakGPerM2, double? CarriedOverGPerM2,
    double? Perm, double? RoomRhPercent);

internal sealed record CodeBody(
    string Verdict, string Text, double? LimitU, double? MarginU, string? RowMark,
    string? Table, IReadOnlyList<string> Notes);

/// <param name="From">typed or list.</param>
internal sealed record PriceLine(double PerFt2, string From, string Text);

internal sealed record EnergyLine(
    double? HeatKWh, double? FuelUnits, string? FuelUnit, double? Cost,
    double? BuildingLossBtuPerHF, double? BuildingDesignLoadBtuPerH, double? BuildingFuelUnits,
    double? BuildingCost,
    IReadOnlyList<PaybackLine> Paybacks);

internal sealed record PaybackLine(
    string Against, double ExtraCost, double YearlySaving, double? Years, string Text);

internal sealed record ClaimBody(
    double? ClaimedR, string? Outcome, string Text, double? MaterialMostR, double? SystemWinterR,
    double? SystemSummerR, IReadOnlyList<string> NotSaid);

/// <param name="Figures">JSON Pointers of the figures it speaks of.</param>
internal sealed record ConclusionLine(
    string Id, string Text, string? Option, string? Rival, IReadOnlyList<string> Figures);

internal sealed record QuestionLine(string Pointer, string Question);

internal sealed record AssumptionLine(
    string Id, string Text, double Value, string Unit, string Source, string Mark);

internal sealed record RulesLine(string Scope, IReadOnlyList<RuleLine> Sections);

internal sealed record RuleLine(string Section, string Text, string Mark);

internal sealed record CautionLine(string Id, string Text, string Basis);

/// <summary>SVG, each as one text.</summary>
internal sealed record PicturesLine(
    string SideBySide, IReadOnlyList<PictureLine> Profiles, IReadOnlyList<PictureLine> Months);

internal sealed record PictureLine(string Line, string Svg);

/// <param name="Mark">
/// R read, M from memory, M✓ memory borne out, C computed or common practice, P published, D
/// derived, A assumption, G given by the caller or the shop's price list.
/// </param>
/// <param name="Opens">The figures of this answer that the step opens.</param>
internal sealed record WorkingLine(
    string Part, string Quantity, string Formula, IReadOnlyList<WorkingInputLine> Inputs,
    double Value, string Unit, string Source, string Mark, IReadOnlyList<OpensLine>? Opens);

/// <summary>The figure is the step's value × times + plus, rounded.</summary>
/// <param name="Pointer">JSON Pointer into this answer.</param>
/// <param name="Times">1 when left out.</param>
/// <param name="Plus">0 when left out.</param>
internal sealed record OpensLine(string Pointer, double? Times, double? Plus);

internal sealed record WorkingInputLine(string Symbol, double Value, string Unit);
