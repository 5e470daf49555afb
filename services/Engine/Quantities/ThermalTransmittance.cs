namespace PostFrame.Engine.Quantities;

/// <summary>
/// Thermal transmittance, the U-factor of an assembly with its films [W/(m²·K)].
/// Range: above zero, finite.
/// </summary>
public readonly record struct ThermalTransmittance : IComparable<ThermalTransmittance>
{
    private ThermalTransmittance(double si) => TotalSi = si;

    /// <summary>The transmittance [W/(m²·K)].</summary>
    public double TotalSi { get; }

    /// <summary>The transmittance [Btu/(h·ft²·°F)].</summary>
    public double TotalUFactor => TotalSi / ThermalResistance.RValuesPerSi;

    /// <summary>From W/(m²·K).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public static ThermalTransmittance FromSi(double si)
    {
        if (!double.IsFinite(si) || si <= 0)
            throw new ArgumentOutOfRangeException(
                nameof(si), si, "A transmittance is a finite number above 0 W/(m²·K).");
        return new ThermalTransmittance(si);
    }

    /// <summary>From Btu/(h·ft²·°F).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public static ThermalTransmittance FromUFactor(double uFactor) =>
        FromSi(uFactor * ThermalResistance.RValuesPerSi);

    /// <summary>The resistance of the same assembly.</summary>
    public ThermalResistance ToResistance() => ThermalResistance.FromSi(1 / TotalSi);

    /// <inheritdoc/>
    public int CompareTo(ThermalTransmittance other) => TotalSi.CompareTo(other.TotalSi);

    /// <inheritdoc/>
    public override string ToString() =>
        FormattableString.Invariant(
            $"U {TotalUFactor:0.000} Btu/(h·ft²·°F) ({TotalSi:0.000} W/(m²·K))");
}
