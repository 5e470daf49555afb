using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>
/// A figure of the answer that a step opens: the step's value × times + plus, rounded.
/// </summary>
/// <param name="Member">Its place below the sheet's home, such as "winter/assemblyR".</param>
internal readonly record struct Opens(string Member, double Times = 1, double Plus = 0)
{
    private const double WPerM2PerBtu = 3.154591;

    public static Opens R(string member) => new(member, ThermalResistance.RValuesPerSi);

    public static Opens Si(string member) => new(member, 1 / ThermalResistance.RValuesPerSi);

    public static Opens U(string member) => new(member, 1 / ThermalResistance.RValuesPerSi);

    public static Opens Fahrenheit(string member) => new(member, 1.8, 32);

    public static Opens Difference(string member) => new(member, 1.8);

    public static Opens Flux(string member) => new(member, 1 / WPerM2PerBtu);

    public static Opens Inches(string member) => new(member, 1 / 25.4);
}

/// <summary>Collects the steps of a line, or of what all lines share.</summary>
/// <param name="home">JSON Pointer of what the sheet opens: "" or "/lines/0".</param>
internal sealed class WorkingSheet(string home)
{
    private readonly List<WorkingLine> _lines = [];

    public IReadOnlyList<WorkingLine> Lines => _lines;

    public void Add(
        string part, string quantity, string formula, IReadOnlyList<WorkingInput> inputs,
        double value, string unit, string source, string mark, params Opens[] opens) =>
        _lines.Add(new(
            part, quantity, formula,
            [.. inputs.Select(i => new WorkingInputLine(i.Symbol, Sig(i.Value), i.Unit))],
            Sig(value), unit, source, mark,
            opens.Length == 0
                ? null
                : [.. opens.Select(o => new OpensLine(
                    $"{home}/{o.Member}", o.Times == 1 ? null : Sig(o.Times, 9),
                    o.Plus == 0 ? null : o.Plus))]));

    public void Add(string part, WorkingStep step, params Opens[] opens) => Add(
        part, step.Quantity, step.Formula, step.Inputs, step.Value, step.Unit, step.Source,
        step.Mark, opens);

    /// <summary>
    /// Enough significant digits to follow with a pencil; the whole number where it is larger.
    /// </summary>
    public static double Sig(double value, int digits = 6)
    {
        if (value == 0 || !double.IsFinite(value)) return 0;
        var decimals = digits - 1 - (int)Math.Floor(Math.Log10(Math.Abs(value)));
        return decimals <= 15 ? Math.Round(value, Math.Max(0, decimals)) : value;
    }
}
