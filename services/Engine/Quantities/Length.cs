namespace PostFrame.Engine.Quantities;

/// <summary>
/// A length held as whole nanometres. 1/64 in is exactly 396 875 nm and every metric size is exact,
/// so sums of cuts never drift. Default: zero. Arithmetic is checked.
/// </summary>
public readonly struct Length : IEquatable<Length>, IComparable<Length>
{
    /// <summary>Nanometres in one inch: exactly 25.4 mm.</summary>
    public const long NanometresPerInch = 25_400_000;

    private const long NanometresPerMillimetre = 1_000_000;

    private Length(long nanometres) => Nanometres = nanometres;

    /// <summary>The length [nm].</summary>
    public long Nanometres { get; }

    /// <summary>The length [in].</summary>
    public double TotalInches => Nanometres / (double)NanometresPerInch;

    /// <summary>The length [ft].</summary>
    public double TotalFeet => TotalInches / 12;

    /// <summary>The length [mm].</summary>
    public double TotalMillimetres => Nanometres / (double)NanometresPerMillimetre;

    /// <summary>The length [m].</summary>
    public double TotalMetres => TotalMillimetres / 1000;

    /// <summary>No length.</summary>
    public static Length Zero => default;

    /// <summary>A length from whole nanometres.</summary>
    public static Length FromNanometres(long nanometres) => new(nanometres);

    /// <summary>A length from inches, to the nearest nanometre.</summary>
    public static Length FromInches(double inches) => Round(inches * NanometresPerInch);

    /// <summary>A length from feet, to the nearest nanometre.</summary>
    public static Length FromFeet(double feet) => Round(feet * 12 * NanometresPerInch);

    /// <summary>A length from millimetres, to the nearest nanometre.</summary>
    public static Length FromMillimetres(double mm) => Round(mm * NanometresPerMillimetre);

    /// <summary>The larger of two lengths.</summary>
    public static Length Max(Length a, Length b) => a > b ? a : b;

    /// <summary>The smaller of two lengths.</summary>
    public static Length Min(Length a, Length b) => a < b ? a : b;

    /// <summary>
    /// This length times a plain factor, to the nearest nanometre.
    /// </summary>
    /// <exception cref="OverflowException">The product is beyond ±9.2 million km.</exception>
    public Length Times(double factor) => Round(Nanometres * factor);

    /// <summary>
    /// This length rounded up to a whole number of steps; a length within
    /// <paramref name="tolerance"/> above a step is that step.
    /// </summary>
    /// <remarks>Source: takeoff.md 2.8, ceil((exact − τ)/q)·q, in whole nanometres.</remarks>
    public Length RoundedUpTo(Length step, Length tolerance)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(step.Nanometres, 0);
        return new(Math.Max(1, StepsToCover(step, tolerance)) * step.Nanometres);
    }

    /// <summary>
    /// The number of whole steps that cover this length less the tolerance; 0 or more.
    /// </summary>
    /// <remarks>Source: takeoff.md 2.6, n = ceil((R − τ)/C).</remarks>
    public long StepsToCover(Length step, Length tolerance)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(step.Nanometres, 0);
        var rest = checked(Nanometres - tolerance.Nanometres);
        return rest <= 0 ? 0 : (rest - 1) / step.Nanometres + 1;
    }

    public static Length operator +(Length a, Length b) => new(a.Nanometres + b.Nanometres);

    public static Length operator -(Length a, Length b) => new(a.Nanometres - b.Nanometres);

    public static Length operator -(Length a) => new(-a.Nanometres);

    public static Length operator *(Length a, long count) => new(a.Nanometres * count);

    public static Length operator *(long count, Length a) => new(a.Nanometres * count);

    /// <summary>The ratio of two lengths.</summary>
    public static double operator /(Length a, Length b) => a.Nanometres / (double)b.Nanometres;

    public static bool operator <(Length a, Length b) => a.Nanometres < b.Nanometres;

    public static bool operator >(Length a, Length b) => a.Nanometres > b.Nanometres;

    public static bool operator <=(Length a, Length b) => a.Nanometres <= b.Nanometres;

    public static bool operator >=(Length a, Length b) => a.Nanometres >= b.Nanometres;

    public static bool operator ==(Length a, Length b) => a.Nanometres == b.Nanometres;

    public static bool operator !=(Length a, Length b) => a.Nanometres != b.Nanometres;

    public int CompareTo(Length other) => Nanometres.CompareTo(other.Nanometres);

    public bool Equals(Length other) => Nanometres == other.Nanometres;

    public override bool Equals(object? obj) => obj is Length other && Equals(other);

    public override int GetHashCode() => Nanometres.GetHashCode();

    public override string ToString() =>
        FormattableString.Invariant($"{TotalInches:0.###} in");

    private static Length Round(double nanometres) => new(checked((long)Math.Round(nanometres)));
}
