namespace PostFrame.Engine.Heat;

/// <summary>Properties of dry air at 101 325 Pa.</summary>
internal static class Air
{
    private const double StandardPressurePa = 101_325;
    private const double GasConstantJPerKgK = 287.05;
    private const double HeatCapacityJPerKgK = 1006;
    private const double GravityMPerS2 = 9.81;

    /// <summary>
    /// Thermal conductivity [W/(m·K)], −60 to 100 °C within 1 %.
    /// Source: power law k = 0.02624·(T/300)^0.8646, textbook correlation, from memory.
    /// </summary>
    public static double Conductivity(double celsius) =>
        0.02624 * Math.Pow((celsius + 273.15) / 300, 0.8646);

    /// <summary>
    /// Kinematic viscosity [m²/s]: Sutherland's law over the density of an ideal gas
    /// (1.458·10⁻⁶·T^1.5/(T + 110.4), US Standard Atmosphere 1976, from memory).
    /// </summary>
    public static double Viscosity(double celsius)
    {
        var t = celsius + 273.15;
        return 1.458e-6 * Math.Pow(t, 1.5) / (t + 110.4) / Density(celsius);
    }

    /// <summary>Thermal diffusivity [m²/s].</summary>
    public static double Diffusivity(double celsius) =>
        Conductivity(celsius) / (Density(celsius) * HeatCapacityJPerKgK);

    /// <summary>Rayleigh number of a layer: g·β·ΔT·d³/(ν·a), β = 1/T of an ideal gas.</summary>
    public static double Rayleigh(
        double thicknessMm, double meanCelsius, double differenceKelvins) =>
        GravityMPerS2 / (meanCelsius + 273.15) * differenceKelvins
        * Math.Pow(thicknessMm / 1000, 3)
        / (Viscosity(meanCelsius) * Diffusivity(meanCelsius));

    private static double Density(double celsius) =>
        StandardPressurePa / (GasConstantJPerKgK * (celsius + 273.15));
}
