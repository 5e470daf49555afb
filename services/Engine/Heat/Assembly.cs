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

    /// <summary>The emittance of the brightest face that looks at air.</summary>
    public double LeastEmittance => Layers
        .SelectMany(layer => layer.Clear is Slab.Air air
            ? (double[])[air.Space.InnerEmittance, air.Space.OuterEmittance]
            : [])
        .Append(RoomEmittance)
        .Min();

    /// <summary>The same with no face brighter than this emittance.</summary>
    public Assembly WithFacesOfAtLeast(double emittance) => this with
    {
        RoomEmittance = Math.Max(RoomEmittance, emittance),
        Layers = [.. Layers.Select(layer => layer.Clear is Slab.Air air
            ? layer with
            {
                Clear = new Slab.Air(air.Space with
                {
                    InnerEmittance = Math.Max(air.Space.InnerEmittance, emittance),
                    OuterEmittance = Math.Max(air.Space.OuterEmittance, emittance),
                }),
            }
            : layer)],
    };
}
