using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>
/// "Cuts radiant heat by 95 %", turned into the cut of all heat through this assembly in this
/// season: the same assembly once with its bright faces and once with painted ones.
/// </summary>
/// <param name="Season">The season.</param>
/// <param name="RadiantPercent">
/// The cut of radiant exchange at the brightest face [%], from the effective emittances; null where
/// no bright face looks at air.
/// </param>
/// <param name="TotalPercent">The cut of all heat through the assembly [%].</param>
/// <param name="Painted">R with painted faces.</param>
/// <param name="Bright">R as it is.</param>
public sealed record RadiantCut(
    Season Season,
    double? RadiantPercent,
    double TotalPercent,
    ThermalResistance Painted,
    ThermalResistance Bright)
{
    private const double PaintedEmittance = 0.9;

    /// <summary>Compares an assembly with its painted twin.</summary>
    public static RadiantCut Of(Assembly assembly, Conditions conditions)
    {
        ArgumentNullException.ThrowIfNull(assembly);
        var twin = assembly.WithFacesOfAtLeast(PaintedEmittance);
        var (bright, painted) =
            (AssemblySolver.Solve(assembly, conditions), AssemblySolver.Solve(twin, conditions));
        var effective = bright.AirSpaces.Select(space =>
                space.Space.EffectiveEmittance / AirSpace.Effective(0.9, 0.9))
            .Append(assembly.RoomEmittance / PaintedEmittance)
            .Min();
        return new RadiantCut(
            conditions.Season,
            effective < 0.99 ? 100 * (1 - effective) : null,
            100 * (1 - painted.R.TotalSi / bright.R.TotalSi),
            painted.R,
            bright.R);
    }
}
