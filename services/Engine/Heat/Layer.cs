namespace PostFrame.Engine.Heat;

/// <summary>One layer of an assembly, continuous or crossed by framing.</summary>
public sealed record Layer
{
    /// <summary>What the layer is, for print.</summary>
    public required string Name { get; init; }

    /// <summary>The layer away from framing.</summary>
    public required Slab Clear { get; init; }

    /// <summary>The layer at framing; null where framing does not cross it.</summary>
    public Slab.Solid? AtFraming { get; init; }

    /// <summary>Which of the assembly's framings crosses it, from 0.</summary>
    public int FramingIndex { get; init; }

    /// <summary>
    /// Vapour diffusion-equivalent air layer thickness sd [m]; 0 lets vapour pass freely, infinity
    /// stops it. Source: ISO 13788:2012; sd = δ₀/W with δ₀ = 2·10⁻¹⁰ kg/(m·s·Pa).
    /// </summary>
    public double VapourSdM { get; init; }
}
