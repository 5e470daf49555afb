namespace PostFrame.Engine.Heat;

/// <summary>Refuses physics outside its range, naming the range.</summary>
internal static class Limits
{
    public static void Check(double value, double from, double to, string unit, string name)
    {
        if (double.IsFinite(value) && value >= from && value <= to) return;
        throw new ArgumentOutOfRangeException(
            name, value, FormattableString.Invariant($"Must be {from} to {to} {unit}."));
    }
}
