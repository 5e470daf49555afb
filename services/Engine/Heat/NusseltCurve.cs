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
    public double At(double rayleigh, NusseltCurve pooled) => Read(rayleigh, pooled).Nu;

    /// <summary>The same with what it is told from.</summary>
    public NusseltReading Read(double rayleigh, NusseltCurve pooled)
    {
        var x = Math.Log(rayleigh);
        var (first, last) = (Knots[0], Knots[^1]);
        double From((double LnRa, double LnNu) end) => pooled.Shape(x) - pooled.Shape(end.LnRa);
        if (x > last.LnRa) return new(Plain(last), Plain(last), last.LnNu + From(last), From(last));
        if (x < first.LnRa)
            return new(Plain(first), Plain(first), first.LnNu + From(first), From(first));
        var (low, high) = Around(x);
        return new(Plain(low), Plain(high), Between(x), null);
    }

    private static (double Ra, double Nu) Plain((double LnRa, double LnNu) knot) =>
        (Math.Exp(knot.LnRa), Math.Exp(knot.LnNu));

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
        var (a, b) = Around(x);
        return a.LnNu + (b.LnNu - a.LnNu) * (x - a.LnRa) / (b.LnRa - a.LnRa);
    }

    private ((double LnRa, double LnNu) Low, (double LnRa, double LnNu) High) Around(double x)
    {
        var i = 1;
        while (i < Knots.Length - 1 && Knots[i].LnRa < x) i++;
        return (Knots[i - 1], Knots[i]);
    }
}

/// <summary>A Nusselt number and what it is told from.</summary>
/// <param name="Low">The knot below, or the end of the curve where it lies beyond.</param>
/// <param name="High">The knot above.</param>
/// <param name="LnNu">Before it is held to the 1 of still air.</param>
/// <param name="LnBeyond">How the pooled shape goes on from the end; null between knots.</param>
internal readonly record struct NusseltReading(
    (double Ra, double Nu) Low, (double Ra, double Nu) High, double LnNu, double? LnBeyond)
{
    public double Nu => Math.Max(1, Math.Exp(LnNu));

    public double? Beyond => LnBeyond is { } ln ? Math.Exp(ln) : null;
}
