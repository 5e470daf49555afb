using Google.OrTools.LinearSolver;

namespace PostFrame.CuttingWorker.Planning;

/// <summary>
/// The linear program over the patterns known so far: meet each demand at least cost, use no bin
/// more often than there are. Columns are only ever added, or shut by a zero upper bound.
/// </summary>
internal sealed class MasterLp : IDisposable
{
    private const string Parameters =
        "use_preprocessing:false change_status_to_imprecise:false";
    private const long MostPivots = 100_000;

    private readonly Solver _solver;
    private readonly Constraint[] _demand;
    private readonly Constraint?[] _stock;
    private readonly WorkMeter _meter;
    private readonly double[] _cost;
    private readonly List<Variable> _column = [];
    private readonly List<Variable> _swap = [];
    private readonly List<Variable> _pressed = [];
    private long _entries;

    /// <param name="instance">Items and bins.</param>
    /// <param name="demand">How many of each item are still to be cut.</param>
    /// <param name="stock">How many of each bin are left.</param>
    /// <param name="cost">Cost of each bin, scaled.</param>
    /// <param name="missing">Cost of leaving one piece of each item uncut, scaled.</param>
    /// <param name="meter">Counts the work.</param>
    public MasterLp(
        Instance instance, int[] demand, int[] stock, double[] cost, double[] missing,
            WorkMeter meter)
    {
        _meter = meter;
        _cost = cost;
        _solver = Solver.CreateSolver("GLOP")
            ?? throw new InvalidOperationException("The LP library did not load.");
        _solver.SetSolverSpecificParametersAsString(Parameters);
        _solver.Objective().SetMinimization();
        _demand = new Constraint[instance.Items];
        for (var i = 0; i < instance.Items; i++)
        {
            _demand[i] = _solver.MakeConstraint(demand[i], double.PositiveInfinity);
            var none = _solver.MakeNumVar(0, double.PositiveInfinity, string.Empty);
            _demand[i].SetCoefficient(none, 1);
            _solver.Objective().SetCoefficient(none, missing[i]);
        }

        for (var i = 1; i < instance.Items; i++)
        {
            var swap = _solver.MakeNumVar(0, double.PositiveInfinity, string.Empty);
            _demand[i - 1].SetCoefficient(swap, -1);
            _demand[i].SetCoefficient(swap, 1);
            _swap.Add(swap);
        }

        _stock = new Constraint?[instance.Bins.Length];
        for (var b = 0; b < instance.Bins.Length; b++)
        {
            if (stock[b] != int.MaxValue)
                _stock[b] = _solver.MakeConstraint(double.NegativeInfinity, stock[b]);
        }
    }

    public List<Pattern> Patterns { get; } = [];

    public double Objective { get; private set; }

    public double[] Amount { get; private set; } = [];

    public double[] Dual { get; private set; } = [];

    /// <summary>What one more of each bin would save; 0 or more.</summary>
    public double[] StockDual { get; private set; } = [];

    public void Add(Pattern pattern)
    {
        var column = _solver.MakeNumVar(0, double.PositiveInfinity, string.Empty);
        for (var k = 0; k < pattern.Item.Length; k++)
            _demand[pattern.Item[k]].SetCoefficient(column, pattern.Count[k]);
        _stock[pattern.Bin]?.SetCoefficient(column, 1);
        _solver.Objective().SetCoefficient(column, _cost[pattern.Bin]);
        foreach (var cut in Cuts)
        {
            if (cut.Rule.Of(pattern) is not (var times and > 0))
                continue;
            cut.Row.SetCoefficient(column, times);
            cut.Times.Add((Patterns.Count, times));
        }

        _column.Add(column);
        Patterns.Add(pattern);
        _entries += pattern.Item.Length + 2;
        _meter.Steps(pattern.Item.Length * 300.0 + 3000);
    }

    /// <summary>A cut as a row, and how often each column counts in it.</summary>
    public sealed record Cut(RankOneCut Rule, int Least, Constraint Row)
    {
        public List<(int Column, int Times)> Times { get; } = [];
    }

    public List<Cut> Cuts { get; } = [];

    public double[] CutDual { get; private set; } = [];

    public void Add(RankOneCut rule, int least)
    {
        var cut = new Cut(
            rule, least, _solver.MakeConstraint(least, double.PositiveInfinity));
        for (var p = 0; p < Patterns.Count; p++)
        {
            if (rule.Of(Patterns[p]) is not (var times and > 0))
                continue;
            cut.Row.SetCoefficient(_column[p], times);
            cut.Times.Add((p, times));
        }

        _entries += cut.Times.Count;
        _meter.Steps(Patterns.Count * 20.0);
        Cuts.Add(cut);
    }

    /// <summary>Changes what is still to be cut and what is left to cut it from.</summary>
    public void Set(int[] demand, int[] stock)
    {
        for (var i = 0; i < demand.Length; i++)
            _demand[i].SetLb(demand[i]);
        for (var b = 0; b < stock.Length; b++)
            _stock[b]?.SetUb(stock[b]);
    }

    /// <summary>
    /// Offers patterns a little below their cost, and only a little of each, so that the duals move
    /// to where these patterns are worth less than they cost.
    /// </summary>
    public void Press(IEnumerable<Pattern> patterns, double less, double most)
    {
        foreach (var pattern in patterns)
        {
            var column = _solver.MakeNumVar(0, most, string.Empty);
            for (var k = 0; k < pattern.Item.Length; k++)
                _demand[pattern.Item[k]].SetCoefficient(column, pattern.Count[k]);
            _stock[pattern.Bin]?.SetCoefficient(column, 1);
            _solver.Objective().SetCoefficient(column, _cost[pattern.Bin] - less);
            _pressed.Add(column);
        }
    }

    /// <summary>Takes the pressed patterns out, or puts them in again.</summary>
    public void Press(double most) => _pressed.ForEach(c => c.SetUb(most));

    /// <summary>Asks for amounts that need not be whole, until the demand is set again.</summary>
    public void Tilt(double[] demand)
    {
        for (var i = 0; i < demand.Length; i++)
            _demand[i].SetLb(demand[i]);
    }

    /// <summary>Shuts or opens a column.</summary>
    public void Shut(int column, bool shut) =>
        _column[column].SetUb(shut ? 0 : double.PositiveInfinity);

    /// <summary>
    /// True while the solution cuts a longer piece where a shorter one is wanted. Allowing that
    /// keeps the duals in order of length, which steadies them; it costs nothing in the relaxation.
    /// </summary>
    public bool Swaps { get; private set; }

    /// <summary>Forbids such swaps from now on, so that amounts are real patterns'.</summary>
    public void EndSwaps() => _swap.ForEach(s => s.SetUb(0));

    /// <summary>Solves; false when the work was over before, or the library gave no optimum.
    /// </summary>
    public bool Solve()
    {
        var pivotSteps = (_demand.Length + Cuts.Count) * 100.0 + _column.Count * 8.0
            + _stock.Length * 10.0 + 2000;
        var most = (long)Math.Min(
            MostPivots, Math.Max(1, (_meter.Left * 1e9 - _entries * 100.0) / pivotSteps));
        if (most < MostPivots)
            _solver.SetSolverSpecificParametersAsString(
                $"{Parameters} max_number_of_iterations:{most}");
        var status = _solver.Solve();
        if (status != Solver.ResultStatus.OPTIMAL)
        {
            _meter.Steps(1e7);
            if (most < MostPivots)
                _meter.End();
            return false;
        }

        var pivots = Math.Clamp(_solver.Iterations(), 1, MostPivots);
        _meter.Steps(_entries * 100.0 + pivots * pivotSteps);
        Objective = _solver.Objective().Value();
        Amount = [.. _column.Select(c => c.SolutionValue())];
        Dual = [.. _demand.Select(c => Math.Max(0, c.DualValue()))];
        CutDual = [.. Cuts.Select(c => Math.Max(0, c.Row.DualValue()))];
        StockDual = [.. _stock.Select(c => Math.Max(0, -(c?.DualValue() ?? 0)))];
        Swaps = _swap.Any(s => s.SolutionValue() > 1e-7);
        return true;
    }

    public void Dispose() => _solver.Dispose();
}
