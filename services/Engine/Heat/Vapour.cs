using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>Water vapour: saturation, dew and frost point, permeance.</summary>
public static class Vapour
{
    /// <summary>
    /// Vapour permeability of still air δ₀ [kg/(m·s·Pa)]. Source: ISO 13788:2012 clause 6.
    /// </summary>
    public const double StillAirPermeability = 2e-10;

    /// <summary>
    /// One US perm (0 °C) [ng/(Pa·s·m²)]. Source: ASTM E96 conversion, from memory; 57.2 read.
    /// </summary>
    public const double NanogramsPerPerm = 57.2135;

    private const double TriplePressurePa = 610.5;

    /// <summary>
    /// Saturation pressure [Pa], over ice below 0 °C. Range −65 to 100 °C.
    /// Source: ISO 13788:2012 equations E.7 and E.8.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside −65 to 100 °C.</exception>
    public static double Saturation(Temperature temperature)
    {
        var t = temperature.TotalCelsius;
        Limits.Check(t, -65, 100, "°C", nameof(temperature));
        return t >= 0
            ? TriplePressurePa * Math.Exp(17.269 * t / (237.3 + t))
            : TriplePressurePa * Math.Exp(21.875 * t / (265.5 + t));
    }

    /// <summary>
    /// The temperature at which this vapour pressure [Pa, 1 to 100 000] saturates: the dew point,
    /// or the frost point below 0 °C. Source: ISO 13788:2012 equations E.9 and E.10.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 1 to 100 000 Pa.</exception>
    public static Temperature DewPoint(double pressurePa)
    {
        Limits.Check(pressurePa, 1, 100_000, "Pa", nameof(pressurePa));
        var l = Math.Log(pressurePa / TriplePressurePa);
        return Temperature.FromCelsius(pressurePa >= TriplePressurePa
            ? 237.3 * l / (17.269 - l)
            : 265.5 * l / (21.875 - l));
    }

    /// <summary>sd [m] of a permeance [US perm, 0 and above]; 0 perm is infinite.</summary>
    /// <remarks>sd = δ₀/W; one perm is 3.496 m.</remarks>
    public static double SdOfPerm(double perm)
    {
        Limits.Check(perm, 0, 1e6, "perm", nameof(perm));
        return perm <= 0
            ? double.PositiveInfinity
            : StillAirPermeability * 1e12 / (perm * NanogramsPerPerm);
    }

    /// <summary>Permeance [US perm] of an sd [m].</summary>
    public static double PermOfSd(double sdM) =>
        StillAirPermeability * 1e12 / (sdM * NanogramsPerPerm);

    /// <summary>
    /// Vapour retarder class of a permeance [US perm] by ASTM E96 procedure A (dry cup).
    /// Source: IRC/IBC definitions (read): I ≤ 0.1, II ≤ 1.0, III ≤ 10 perm.
    /// </summary>
    public static RetarderClass ClassOf(double perm) => perm switch
    {
        <= 0.1 => RetarderClass.I,
        <= 1.0 => RetarderClass.II,
        <= 10 => RetarderClass.III,
        _ => RetarderClass.None,
    };
}
