using System.Globalization;

namespace PostFrame.Documents.Drawing;

/// <summary>Weights as the crew reads them, rounded up: never lighter than the piece is.</summary>
internal static class Masses
{
    /// <summary>Exact. Source: the international avoirdupois pound of 1959.</summary>
    private const double KilogramsPerPound = 0.45359237;

    /// <summary>In the unit of the job.</summary>
    public static string Of(double pounds, bool isMetric) =>
        isMetric ? Kilograms(pounds) : Pounds(pounds);

    private static string Pounds(double pounds) => $"{Whole(pounds)} lb";

    private static string Kilograms(double pounds) => $"{Whole(pounds * KilogramsPerPound)} kg";

    private static string Whole(double amount) =>
        Math.Ceiling(amount - 1e-9).ToString("N0", CultureInfo.InvariantCulture);
}
