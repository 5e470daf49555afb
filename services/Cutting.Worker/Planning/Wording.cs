using System.Globalization;

namespace PostFrame.CuttingWorker.Planning;

/// <summary>Lengths and reasons in words.</summary>
internal static class Wording
{
    private const double InchNm = 25_400_000;
    private const int MostWorths = 4;

    /// <summary>
    /// A length in inches and millimetres; in nanometres when it is below a tenth of one.
    /// </summary>
    public static string Length(Instance instance, Int128 units) =>
        Length(units * instance.UnitNm);

    public static string Length(Int128 lengthNm)
    {
        var nm = (double)lengthNm;
        return Math.Abs(nm) < InchNm / 10
            ? string.Create(CultureInfo.InvariantCulture, $"{nm:#,0} nm")
            : string.Create(CultureInfo.InvariantCulture,
            $"{nm / InchNm:#,0.##} in ({nm / 1e6:#,0.#} mm)");
    }

    /// <summary>So many, with the word for one or for several.</summary>
    public static string Counted(Int128 count, string one) =>
        string.Create(CultureInfo.InvariantCulture, $"{count:#,0} {one}{(count == 1 ? "" : "s")}");

    /// <summary>A cost in a unit that only the caller knows.</summary>
    public static string Cost(long cost) =>
        string.Create(CultureInfo.InvariantCulture, $"a cost of {cost:#,0}");

    /// <summary>Why the worths of a dual point bound the cost.</summary>
    public static string Relaxation(Instance instance, DualPoint point, long bound)
    {
        var one = instance.Bins.Length == 1;
        var top = (double)point.Top.Max();
        var worthy = Enumerable.Range(0, instance.Items).Where(i => point.Value[i] > 0).ToList();
        var worths = worthy
            .OrderByDescending(i => (double)point.Value[i] * instance.Demand[i])
            .Take(MostWorths).Order()
            .Select(i => string.Create(CultureInfo.InvariantCulture,
                $"{Length(instance, instance.Length[i])} = {point.Value[i] / top:0.000}"))
            .Concat(worthy.Count > MostWorths ? ["…"] : []);
        var whole = one ? "a roll" : "the longest stock";
        var end = one ? "so no plan uses fewer than "
            + Counted(bound / Math.Max(1, instance.Bins[0].Cost), "roll") + "."
            : $"so no plan takes less than {instance.CostText(bound)}.";
        return $"Give each length a worth ({string.Join(", ", worths)}). Checked in whole "
            + $"numbers over "
            + $"every possible pattern, {whole} never carries more than 1; all pieces together "
            + $"are worth "
            + string.Create(CultureInfo.InvariantCulture,
            $"{(double)point.Worth / top:0.000}, {end}");
    }
}
