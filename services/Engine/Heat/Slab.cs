using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>What fills a layer: something of fixed resistance, or an air space.</summary>
public abstract record Slab
{
    private Slab() { }

    /// <summary>A resistance that does not depend on direction or temperature.</summary>
    public sealed record Solid(ThermalResistance R) : Slab
    {
        /// <summary>Thickness [mm] where it was made from one.</summary>
        public double? ThicknessMm { get; init; }

        /// <summary>Conductivity [W/(m·K)] where it was made from one.</summary>
        public double? ConductivityWPerMK { get; init; }

        /// <summary>What it was at its own thickness, where it is a batt squeezed.</summary>
        public SqueezedFrom? From { get; init; }

        /// <summary>
        /// A layer of no resistance: metal, a thin facing, space open to the room.
        /// </summary>
        public static Solid None { get; } = new(ThermalResistance.FromSi(0));

        /// <summary>Thickness [mm] over conductivity [W/(m·K)].</summary>
        public static Solid Of(double thicknessMm, double conductivityWPerMK) =>
            new(ThermalResistance.FromSi(thicknessMm / 1000 / conductivityWPerMK))
            {
                ThicknessMm = thicknessMm,
                ConductivityWPerMK = conductivityWPerMK,
            };
    }

    /// <summary>A batt before it was squeezed.</summary>
    /// <param name="R">At its own thickness.</param>
    /// <param name="ThicknessMm">That thickness [mm].</param>
    /// <param name="LeftMm">What the cavity leaves it [mm].</param>
    public sealed record SqueezedFrom(ThermalResistance R, double ThicknessMm, double LeftMm);

    /// <summary>An air space, solved with the assembly it lies in.</summary>
    public sealed record Air(AirSpace Space) : Slab;
}
