namespace PostFrame.Engine.Quantities;

/// <summary>
/// A temperature on the Celsius scale [°C]. A difference of temperatures is not a temperature: it
/// is a plain number of kelvins, because the 32 °F offset must never reach it.
/// Range: absolute zero (−273.15 °C) and above; the default value is 0 °C.
/// </summary>
public readonly record struct Temperature : IComparable<Temperature>
{
    private Temperature(double celsius) => TotalCelsius = celsius;

    /// <summary>The temperature [°C].</summary>
    public double TotalCelsius { get; }

    /// <summary>The temperature [°F].</summary>
    public double TotalFahrenheit => TotalCelsius * 1.8 + 32;

    /// <summary>The absolute temperature [K].</summary>
    public double TotalKelvin => TotalCelsius + 273.15;

    /// <summary>From degrees Celsius.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite, or below absolute
    /// zero.</exception>
    public static Temperature FromCelsius(double celsius)
    {
        if (!double.IsFinite(celsius) || celsius < -273.15)
            throw new ArgumentOutOfRangeException(
                nameof(celsius), celsius,
                "A temperature is a finite number of at least −273.15 °C.");
        return new Temperature(celsius);
    }

    /// <summary>From degrees Fahrenheit.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite, or below absolute
    /// zero.</exception>
    public static Temperature FromFahrenheit(double fahrenheit) =>
        FromCelsius((fahrenheit - 32) / 1.8);

    /// <summary>This minus another [K]; positive when this one is warmer.</summary>
    public double KelvinsAbove(Temperature other) => TotalCelsius - other.TotalCelsius;

    /// <summary>This temperature moved by a difference [K].</summary>
    public Temperature PlusKelvins(double kelvins) => FromCelsius(TotalCelsius + kelvins);

    /// <inheritdoc/>
    public int CompareTo(Temperature other) => TotalCelsius.CompareTo(other.TotalCelsius);

    /// <inheritdoc/>
    public override string ToString() =>
        FormattableString.Invariant($"{TotalCelsius:0.0} °C ({TotalFahrenheit:0.0} °F)");
}
