using System.Globalization;

namespace PostFrame.CuttingWorker.Plans;

/// <summary>Lengths as the bench reads them.</summary>
internal static class Words
{
    private const decimal NmPerInch = 25_400_000m;

    /// <summary><c>15 ft 6 in</c>; a part of an inch to two decimals, rounded down.</summary>
    public static string Length(long lengthNm)
    {
        var inches = decimal.Floor(lengthNm / NmPerInch * 100) / 100;
        var feet = decimal.Floor(inches / 12);
        return string.Create(
            CultureInfo.InvariantCulture, $"{feet:0} ft {inches - (feet * 12):0.##} in");
    }

    /// <summary><c>48 in</c>, or millimetres where it is no whole number of inches.</summary>
    public static string Width(long widthNm) => widthNm % (long)NmPerInch == 0
        ? string.Create(CultureInfo.InvariantCulture, $"{widthNm / (long)NmPerInch} in")
        : string.Create(CultureInfo.InvariantCulture, $"{widthNm / 1_000_000m:0.##} mm");

    public static double Inches(long lengthNm) =>
        (double)Math.Round(lengthNm / NmPerInch, 3, MidpointRounding.AwayFromZero);

    public static double Millimetres(long lengthNm) =>
        (double)Math.Round(lengthNm / 1_000_000m, 2, MidpointRounding.AwayFromZero);
}
