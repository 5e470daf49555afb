namespace PostFrame.Engine.Quantities;

/// <summary>
/// Thermal resistance of an area [m²·K/W]; "R-1" of the trade is 1 h·ft²·°F/Btu.
/// Range: zero and above, finite; the default value is zero.
/// Source: 1 h·ft²·°F/Btu = 0.176110 m²·K/W, from 1 Btu(IT) = 1055.05585262 J, 1 ft = 0.3048 m.
/// </summary>
public readonly record struct ThermalResistance : IComparable<ThermalResistance>
{
    /// <summary>1 m²·K/W in h·ft²·°F/Btu; also 1 Btu/(h·ft²·°F) in W/(m²·K).</summary>
    public const double RValuesPerSi = 1055.05585262 / (3600 * 0.3048 * 0.3048) * 1.8;

    private ThermalResistance(double si) => TotalSi = si;

    /// <summary>The resistance [m²·K/W].</summary>
    public double TotalSi { get; }

    /// <summary>The resistance as the trade says it [h·ft²·°F/Btu].</summary>
    public double TotalRValue => TotalSi * RValuesPerSi;

    /// <summary>From m²·K/W.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static ThermalResistance FromSi(double si)
    {
        if (!double.IsFinite(si) || si < 0)
            throw new ArgumentOutOfRangeException(
                nameof(si), si, "A resistance is a finite number of at least 0 m²·K/W.");
        return new ThermalResistance(si);
    }

    /// <summary>From h·ft²·°F/Btu ("R-…").</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static ThermalResistance FromRValue(double rValue) => FromSi(rValue / RValuesPerSi);

    /// <summary>
    /// The transmittance of an assembly that has this resistance, films included.
    /// </summary>
    /// <exception cref="InvalidOperationException">The resistance is zero.</exception>
    public ThermalTransmittance ToTransmittance() => TotalSi > 0
        ? ThermalTransmittance.FromSi(1 / TotalSi)
        : throw new InvalidOperationException("A resistance of zero has no transmittance.");

    /// <summary>Resistances in series add.</summary>
    public static ThermalResistance operator +(ThermalResistance a, ThermalResistance b) =>
        FromSi(a.TotalSi + b.TotalSi);

    /// <inheritdoc/>
    public int CompareTo(ThermalResistance other) => TotalSi.CompareTo(other.TotalSi);

    /// <inheritdoc/>
    public override string ToString() =>
        FormattableString.Invariant($"R-{TotalRValue:0.0} ({TotalSi:0.00} m²·K/W)");
}
