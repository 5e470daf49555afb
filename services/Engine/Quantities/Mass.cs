namespace PostFrame.Engine.Quantities;

/// <summary>A mass held in kilograms. Default: zero.</summary>
public readonly record struct Mass : IComparable<Mass>
{
    private const double KilogramsPerPound = 0.45359237;

    private Mass(double kilograms) => TotalKilograms = kilograms;

    /// <summary>The mass [kg].</summary>
    public double TotalKilograms { get; }

    /// <summary>The mass [lb]; 1 lb is exactly 0.45359237 kg.</summary>
    public double TotalPounds => TotalKilograms / KilogramsPerPound;

    /// <summary>A mass from pounds.</summary>
    public static Mass FromPounds(double pounds) => new(pounds * KilogramsPerPound);

    /// <summary>A mass from kilograms.</summary>
    public static Mass FromKilograms(double kilograms) => new(kilograms);

    public static Mass operator +(Mass a, Mass b) => new(a.TotalKilograms + b.TotalKilograms);

    public static bool operator >(Mass a, Mass b) => a.TotalKilograms > b.TotalKilograms;

    public static bool operator <(Mass a, Mass b) => a.TotalKilograms < b.TotalKilograms;

    public int CompareTo(Mass other) => TotalKilograms.CompareTo(other.TotalKilograms);
}
