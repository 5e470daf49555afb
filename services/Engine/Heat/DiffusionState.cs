namespace PostFrame.Engine.Heat;

/// <summary>Vapour pressures and flows of one state.</summary>
public sealed record DiffusionState
{
    /// <summary>Every point from room air to outdoor air.</summary>
    public required IReadOnlyList<VapourPoint> Points { get; init; }

    /// <summary>True where room air condenses on the face it reaches.</summary>
    public required bool RoomFaceDrips { get; init; }

    /// <summary>The way from the room; null where nothing holds vapour back.</summary>
    public required VapourLeg? FromRoom { get; init; }

    /// <summary>The way to outdoors; null where nothing holds vapour back.</summary>
    public required VapourLeg? ToOutdoors { get; init; }

    /// <summary>Vapour leaving the room [kg/(m²·s)].</summary>
    public double FlowFromRoom => FromRoom?.Flow ?? 0;

    /// <summary>Vapour reaching outdoors [kg/(m²·s)].</summary>
    public double FlowToOutdoors => ToOutdoors?.Flow ?? 0;

    /// <summary>Grams a day of a flow of one kilogram a second.</summary>
    public const double GramsPerDay = 86_400_000;

    /// <summary>Water condensing inside, less what evaporates [kg/(m²·s)].</summary>
    public double NetCondensation => Points.Sum(point => point.CondensationKgPerM2S);
}
