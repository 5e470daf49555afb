using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;
using PostFrame.SizingApi.Climate;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>A comparison as it was asked for. Null is what nobody said.</summary>
internal sealed record ComparisonInput
{
    public required CalculationBasis Basis { get; init; }

    public required bool IsWall { get; init; }

    public required double SlopeDegrees { get; init; }

    public required Area? Area { get; init; }

    public required Framing? Framing { get; init; }

    /// <summary>Set for steel framing: which kind of tested assembly.</summary>
    public required string? SteelSystem { get; init; }

    public required SurfaceColour? Colour { get; init; }

    public required ClimateAsked Climate { get; init; }

    public required RoomAsked Room { get; init; }

    public required FuelAsked? Fuel { get; init; }

    public required CodeAsked? Code { get; init; }

    public required BuildingAsked? Building { get; init; }

    public required IReadOnlyList<ComparedLine> Lines { get; init; }

    public required bool Working { get; init; }

    public required bool Pictures { get; init; }

    /// <summary>Words and pictures in metric units.</summary>
    public required bool IsMetric { get; init; }

    /// <summary>The shop's list, for options without a price of their own.</summary>
    public required PriceList? Prices { get; init; }
}

/// <summary>Where the building stands, and the caller's own design values, which win.</summary>
internal sealed record ClimateAsked(
    ClimateAnswer? Found, string? Zone, Temperature? Winter, Temperature? Summer,
    double? SunWPerM2, double? DegreeDaysK);

/// <summary>Members of wood, or the tested system of steel; null where told wrongly.</summary>
/// <param name="IsMetric">Told in metric units.</param>
internal sealed record FramingAsked(Framing? Wood, string? SteelSystem, bool IsMetric);

/// <summary>How the room is used and kept.</summary>
internal sealed record RoomAsked(
    IndoorUse? Use, bool? Heated, Temperature? HeatedTo, Temperature? CooledTo,
    double? ExcessPa, BurnerAsked? Burner);

/// <summary>A heater without a flue.</summary>
internal sealed record BurnerAsked(
    BurnerFuel Fuel, double InputW, double VolumeM3, double AirChangesPerHour);

/// <summary>What heat is bought as.</summary>
internal sealed record FuelAsked(
    HeatingFuel Kind, double Efficiency, double? PricePerUnit, Temperature? Balance);

/// <summary>The code row to hold the plane against.</summary>
internal sealed record CodeAsked(
    string Standard, string Edition, string Conditioning, string Construction);

/// <summary>The rest of the building, the same for every line.</summary>
internal sealed record BuildingAsked(
    IReadOnlyList<LossElement> Others, double? AirM3PerHour, double SlabEdgeM);

/// <summary>One line of the comparison.</summary>
internal sealed record ComparedLine
{
    public required string Id { get; init; }

    public required bool Ours { get; init; }

    public required Candidate Candidate { get; init; }

    /// <summary>The product, of an option.</summary>
    public Product? Product { get; init; }

    public LinePrice? Price { get; init; }

    public double? PricePerFt2 => Price?.PerFt2;

    /// <summary>What of the air spaces was left open, in questions.</summary>
    public IReadOnlyList<MissingFact> OpenSpaces { get; init; } = [];

    /// <summary>What was set aside, and why.</summary>
    public IReadOnlyList<string> Remarks { get; init; } = [];
}
