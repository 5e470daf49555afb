using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;

namespace PostFrame.EngineTests.Heat;

/// <summary>Assemblies the tests share.</summary>
internal static class Constructions
{
    public static Layer Continuous(double r) => new()
    {
        Name = "layer",
        Clear = new Slab.Solid(ThermalResistance.FromSi(r)),
    };

    public static Layer Bridged(double clear, double framed) => Continuous(clear) with
    {
        AtFraming = new Slab.Solid(ThermalResistance.FromSi(framed)),
    };

    public static Layer Space(double mm, double inner, double outer, double openings = 0) => new()
    {
        Name = "air space",
        Clear = new Slab.Air(new AirSpace
        {
            ThicknessMm = mm,
            InnerEmittance = inner,
            OuterEmittance = outer,
            OpeningsMm2 = openings,
        }),
    };

    public static Assembly Of(double slope, double[] framings, params Layer[] layers) => new()
    {
        SlopeDegrees = slope,
        FramingFractions = framings,
        Layers = layers,
    };

    public static Conditions Cold(CalculationBasis basis) => At(basis, 20, -5, Season.Winter);

    public static Conditions Hot(CalculationBasis basis) => At(basis, 24, 60, Season.Summer);

    public static Conditions At(
        CalculationBasis basis, double room, double outside, Season season) => new()
        {
            Room = Temperature.FromCelsius(room),
            Outside = Temperature.FromCelsius(outside),
            Season = season,
            Basis = basis,
        };

    public static AssemblyHeat Iso(double slope, double[] framings, params Layer[] layers) =>
        AssemblySolver.Solve(Of(slope, framings, layers), Cold(CalculationBasis.Iso6946));

    /// <summary>Post-frame roof P1: R-13 between 38 × 89 mm purlins at 610 mm.</summary>
    public static AssemblyHeat P1(CalculationBasis basis) => AssemblySolver.Solve(
        Of(0, [38.0 / 610], Bridged(13 / ThermalResistance.RValuesPerSi, 0.089 / 0.12)),
        Cold(basis));
}
