namespace PostFrame.Documents;

/// <summary>What an order's packing list and site checklist say, plane by plane.</summary>
public sealed record PackingList
{
    public required string OrderNumber { get; init; }

    public required int Revision { get; init; }

    public required string ShipTo { get; init; }

    /// <summary>The day it is needed, as printed.</summary>
    public required string NeededBy { get; init; }

    /// <summary>Whether weights stand in kilograms, as a metric job's do, or in pounds.</summary>
    public bool IsMetric { get; init; }

    public required BuildingMap Map { get; init; }

    /// <summary>In the order the crew lays them; every id is a plane of the map.</summary>
    public required IReadOnlyList<PackedPlane> Planes { get; init; }

    public IReadOnlyList<PackedAccessory> Accessories { get; init; } = [];

    public IReadOnlyList<PrintedCaution> Cautions { get; init; } = [];

    /// <summary>Who decides when this sheet and a code or a professional disagree.</summary>
    public required string StandingLine { get; init; }
}

/// <summary>The pieces of one plane.</summary>
public sealed record PackedPlane
{
    public required string PlaneId { get; init; }

    public required string ProductText { get; init; }

    /// <summary>Cut lengths added up, such as "330 ft 0 in".</summary>
    public required string TotalLengthText { get; init; }

    public required IReadOnlyList<PackedPiece> Pieces { get; init; }
}

/// <summary>One piece's row.</summary>
public sealed record PackedPiece
{
    public required string Mark { get; init; }

    public required string PieceId { get; init; }

    public required string CutText { get; init; }

    public required string WidthText { get; init; }

    /// <summary>Mass [lb].</summary>
    public required double WeightLb { get; init; }

    /// <summary>Its label's number among all labels of the order, from 1.</summary>
    public required int LabelNumber { get; init; }
}

/// <summary>Something besides blanket that belongs to the delivery.</summary>
public sealed record PackedAccessory(string Name, string Quantity);

/// <summary>One caution in our own words, with what it rests on.</summary>
public sealed record PrintedCaution(string Topic, string Text, string Basis);
