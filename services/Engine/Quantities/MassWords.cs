using System.Globalization;

namespace PostFrame.Engine.Quantities;

/// <summary>Masses in words, in the job's own units.</summary>
internal static class MassWords
{
    /// <summary>"50 lb" or "22.7 kg".</summary>
    public static string Say(this Mass mass, bool metric) =>
        $"{mass.Number(metric)} {Unit(metric)}";

    /// <summary>The number alone.</summary>
    public static string Number(this Mass mass, bool metric) =>
        (metric ? mass.TotalKilograms : mass.TotalPounds)
            .ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary>The unit of <see cref="Number"/>.</summary>
    public static string Unit(bool metric) => metric ? "kg" : "lb";
}
