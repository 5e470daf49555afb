namespace PostFrame.Engine.Quantities;

/// <summary>Counts in words.</summary>
internal static class CountWords
{
    /// <summary>"1 piece", "12 pieces".</summary>
    public static string Of(int count, string one) => count == 1 ? $"1 {one}" : $"{count} {one}s";

    /// <summary>A plural unit, singular where there is one of it: "rolls", "board feet".</summary>
    public static string Unit(decimal quantity, string units) =>
        quantity != 1 ? units
        : units.EndsWith("feet", StringComparison.Ordinal) ? units[..^4] + "foot"
        : units.TrimEnd('s');
}
