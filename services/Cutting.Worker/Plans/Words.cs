using System.Globalization;
using PostFrame.Engine.TakeOff;

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

    /// <summary>As <see cref="Length(long)"/>, or <c>4724 mm</c>, rounded down, where the width
    /// is metric.</summary>
    public static string Length(long lengthNm, long widthNm) => IsInInches(widthNm)
        ? Length(lengthNm)
        : string.Create(CultureInfo.InvariantCulture, $"{lengthNm / 1_000_000} mm");

    /// <summary><c>48 in</c>, or millimetres where it is no whole number of inches.</summary>
    public static string Width(long widthNm) => IsInInches(widthNm)
        ? string.Create(CultureInfo.InvariantCulture, $"{widthNm / (long)NmPerInch} in")
        : string.Create(CultureInfo.InvariantCulture, $"{widthNm / 1_000_000m:0.##} mm");

    /// <summary>What people call a product; its code where the catalogue lacks it.</summary>
    public static string Title(string product, long widthNm) =>
        ProductCatalogue.Find(product)?.TitleIn(metric: !IsInInches(widthNm)) ?? product;

    private static bool IsInInches(long widthNm) => widthNm % (long)NmPerInch == 0;

    public static double Inches(long lengthNm) =>
        (double)Math.Round(lengthNm / NmPerInch, 3, MidpointRounding.AwayFromZero);

    public static double Millimetres(long lengthNm) =>
        (double)Math.Round(lengthNm / 1_000_000m, 2, MidpointRounding.AwayFromZero);
}
