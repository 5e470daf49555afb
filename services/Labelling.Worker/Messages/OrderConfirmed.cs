using MassTransit;

namespace PostFrame.LabellingWorker.Messages;

/// <summary>What labels and checklist need of <c>order-confirmed.v1</c>; lengths in nm.</summary>
[MessageUrn("order-confirmed.v1")]
[EntityName("order-confirmed.v1")]
public sealed record OrderConfirmed
{
    public required Guid Id { get; init; }

    public required OrderConfirmedData Data { get; init; }
}

public sealed record OrderConfirmedData
{
    public required string OrderNumber { get; init; }

    public required int Revision { get; init; }

    public required string NeededBy { get; init; }

    public required ShipTo ShipTo { get; init; }

    public required ConfirmedBuilding Building { get; init; }

    public required IReadOnlyList<ConfirmedPlane> Planes { get; init; }

    public required IReadOnlyList<ConfirmedPiece> Pieces { get; init; }

    public required IReadOnlyList<ConfirmedCaution> Cautions { get; init; }

    public IReadOnlyList<ConfirmedAccessory>? Accessories { get; init; }

    /// <summary>What the crew must know of this building beside the cautions.</summary>
    public IReadOnlyList<string>? Notes { get; init; }
}

public sealed record ShipTo
{
    public required string Name { get; init; }
}

public sealed record ConfirmedBuilding
{
    public required string Name { get; init; }

    public required string Summary { get; init; }
}

public sealed record ConfirmedPlane
{
    public required string Plane { get; init; }

    public required string Title { get; init; }

    /// <summary>roof, sidewall or endwall.</summary>
    public required string Kind { get; init; }

    public required string ProductTitle { get; init; }

    public required int StripCount { get; init; }

    /// <summary>Where the run begins along the building, from endwall 1; null: at it.</summary>
    public long? StartNm { get; init; }

    public required IReadOnlyList<OutlinePoint> Outline { get; init; }

    public required IReadOnlyList<ConfirmedOpening> Openings { get; init; }

    public IReadOnlyList<ConfirmedLine>? Lines { get; init; }

    /// <summary>Of the product, before installation [h·ft²·°F/Btu].</summary>
    public double? NominalR { get; init; }

    public string? Facing { get; init; }
}

public sealed record OutlinePoint
{
    public required long AcrossNm { get; init; }

    public required long UpNm { get; init; }
}

public sealed record ConfirmedOpening
{
    public required string Kind { get; init; }

    public required long FromNm { get; init; }

    public required long ToNm { get; init; }

    public required long BottomNm { get; init; }

    public required long TopNm { get; init; }
}

public sealed record ConfirmedLine
{
    /// <summary>ridge, ridgeVent or break.</summary>
    public required string Kind { get; init; }

    public required long FromNm { get; init; }

    public required long ToNm { get; init; }

    public required long UpNm { get; init; }
}

public sealed record ConfirmedPiece
{
    public required string PieceId { get; init; }

    public required string Mark { get; init; }

    public required string Plane { get; init; }

    public required int Strip { get; init; }

    /// <summary>full, header or sill.</summary>
    public required string Role { get; init; }

    public required long WidthNm { get; init; }

    public required long CutNm { get; init; }

    public required string CutText { get; init; }

    public required string WidthText { get; init; }

    public required long FromNm { get; init; }

    public required long ToNm { get; init; }

    public required long BottomNm { get; init; }

    public required long TopNm { get; init; }

    public required double WeightLb { get; init; }
}

public sealed record ConfirmedCaution
{
    public required string Id { get; init; }

    public required string Topic { get; init; }

    public required string Text { get; init; }

    public required string Basis { get; init; }
}

public sealed record ConfirmedAccessory
{
    public required string Name { get; init; }

    public required string Quantity { get; init; }
}
