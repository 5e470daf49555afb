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
    /// Rayleigh number of a layer: g·β·ΔT·d³/(ν·α), ideal gas, viscosity by Sutherland's law
    /// (1.458·10⁻⁶·T^1.5/(T + 110.4), US Standard Atmosphere 1976, from memory).
    /// </summary>
    public static double Rayleigh(double thicknessMm, double meanCelsius, double differenceKelvins)
    {
        var t = meanCelsius + 273.15;
        var density = StandardPressurePa / (GasConstantJPerKgK * t);
        var kinematicViscosity = 1.458e-6 * Math.Pow(t, 1.5) / (t + 110.4) / density;
        var diffusivity = Conductivity(meanCelsius) / (density * HeatCapacityJPerKgK);
        return GravityMPerS2 / t * differenceKelvins * Math.Pow(thicknessMm / 1000, 3)
            / (kinematicViscosity * diffusivity);
    }
}
