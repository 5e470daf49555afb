namespace PostFrame.Engine.Heat;

/// <summary>ln Nu against ln Ra for one thickness, straight between its knots.</summary>
internal sealed record NusseltCurve(double ThicknessMm, (double LnRa, double LnNu)[] Knots)
{
    public static NusseltCurve Through(
        double thicknessMm, IEnumerable<(double LnRa, double LnNu)> knots) =>
        new(thicknessMm, [.. knots.OrderBy(knot => knot.LnRa)]);

    /// <summary>
    /// Nu at a Rayleigh number; beyond the own knots it follows the pooled shape.
    /// </summary>
    public double At(double rayleigh, NusseltCurve pooled)
    {
        var x = Math.Log(rayleigh);
        var (first, last) = (Knots[0], Knots[^1]);
        var lnNu = x > last.LnRa ? last.LnNu + pooled.Shape(x) - pooled.Shape(last.LnRa)
            : x < first.LnRa ? first.LnNu + pooled.Shape(x) - pooled.Shape(first.LnRa)
            : Between(x);
        return Math.Max(1, Math.Exp(lnNu));
    }

    private double Shape(double x)
    {
        var last = Knots[^1];
        if (x <= last.LnRa) return Math.Max(0, Between(x));
        // The last knots lie so close that their own slope is noise: take it over a decade of e.
        var back = Array.FindLast(Knots, knot => knot.LnRa <= last.LnRa - 1);
        var slope = (last.LnNu - back.LnNu) / (last.LnRa - back.LnRa);
        return last.LnNu + slope * (x - last.LnRa);
    }

    private double Between(double x)
    {
        var i = 1;
        while (i < Knots.Length - 1 && Knots[i].LnRa < x) i++;
        var (a, b) = (Knots[i - 1], Knots[i]);
        return a.LnNu + (b.LnNu - a.LnNu) * (x - a.LnRa) / (b.LnRa - a.LnRa);
    }
}
