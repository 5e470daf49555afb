using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>
/// The outdoor temperature that carries sun and sky: t = to + α·I/ho − ε·ΔR/ho.
/// Source: ASHRAE HoF 2021 ch. 18 (from memory).
/// </summary>
public static class SolAir
{
    /// <summary>ε·ΔR/ho of a flat surface under the usual sky [K]; zero for a wall.</summary>
    public const double FlatSkyKelvins = 4;

    /// <summary>What a flat roof can lose to a very clear night sky [K].</summary>
    public const double ClearNightKelvins = 10;

    /// <summary>Sol-air temperature of a roof or wall in the sun.</summary>
    /// <param name="air">Outdoor air.</param>
    /// <param name="irradianceWPerM2">Sun on the surface [W/m²], 0 to 1400.</param>
    /// <param name="colour">How dark the surface is.</param>
    /// <param name="skyKelvins">Loss to the sky [K], 0 to 12; 4 flat, 0 wall.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static Temperature Of(
        Temperature air, double irradianceWPerM2, SurfaceColour colour, double skyKelvins)
    {
        Limits.Check(irradianceWPerM2, 0, 1400, "W/m²", nameof(irradianceWPerM2));
        Limits.Check(skyKelvins, 0, 12, "K", nameof(skyKelvins));
        return air.PlusKelvins(AbsorptanceOverHo(colour) * irradianceWPerM2 - skyKelvins);
    }

    /// <summary>α/ho [m²·K/W]: light 0.026, dark 0.052; medium is half way (own).</summary>
    public static double AbsorptanceOverHo(SurfaceColour colour) => colour switch
    {
        SurfaceColour.Light => 0.026,
        SurfaceColour.Medium => 0.039,
        SurfaceColour.Dark => 0.052,
        _ => throw new ArgumentOutOfRangeException(nameof(colour), colour, "Unknown colour."),
    };
}
