namespace PostFrame.Engine.Heat;

/// <summary>Layers from the room outwards, with the framing that crosses them.</summary>
public sealed record Assembly
{
    /// <summary>Slope from the horizontal [°]: 0 flat, 90 a wall.</summary>
    public required double SlopeDegrees { get; init; }

    /// <summary>Layers, the one at the room first.</summary>
    public required IReadOnlyList<Layer> Layers { get; init; }

    /// <summary>
    /// Share of the area taken by each independent framing, 0 to 0.5. Layers that share an index
    /// are crossed by the same members. Wood only: metal framing feeds heat sideways, so its cases
    /// come from tested values.
    /// </summary>
    public IReadOnlyList<double> FramingFractions { get; init; } = [];

    /// <summary>Emittance of the face the room sees, 0.01 to 1.</summary>
    public double RoomEmittance { get; init; } = 0.9;

    /// <summary>Emittance at the first framing, where members stand in the room.</summary>
    public double? RoomEmittanceAtFraming { get; init; }

    /// <summary>
    /// The method; null takes the basis's own (ASHRAE parallel path, ISO combined).
    /// </summary>
    public BridgeMethod? Method { get; init; }
}
