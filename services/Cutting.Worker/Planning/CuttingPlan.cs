namespace PostFrame.CuttingWorker.Planning;

/// <summary>Which pieces come from which rolls, and how good that is.</summary>
public sealed record CuttingPlan
{
    /// <summary>The rolls; empty when the problem was refused.</summary>
    public required IReadOnlyList<PlannedRoll> Rolls { get; init; }

    /// <summary>Everything wrong with the problem; empty when it could be planned.</summary>
    public required IReadOnlyList<PlanRefusal> Refusals { get; init; }

    /// <summary>
    /// Pieces (key, count) that the stock at hand cannot give; empty when all are met.
    /// </summary>
    public required IReadOnlyList<KeyValuePair<string, int>> Unmet { get; init; }

    /// <summary>Rolls and remnants used.</summary>
    public required int RollCount { get; init; }

    /// <summary>
    /// No plan that meets the demand and costs no more than this one uses fewer rolls and remnants.
    /// </summary>
    public required int LowerBoundRolls { get; init; }

    /// <summary>
    /// Total cost of the rolls used, in the unit of <see cref="StockType.Cost"/>.
    /// </summary>
    public required long Cost { get; init; }

    /// <summary>No plan that meets the demand costs less than this.</summary>
    public required long LowerBoundCost { get; init; }

    /// <summary>True when no plan can cost less: cost equals its lower bound.</summary>
    public required bool Proven { get; init; }

    /// <summary>How the plan was found, in a few words.</summary>
    public required string Method { get; init; }

    /// <summary>
    /// Why no plan can cost less than the bound, in sentences a foreman can follow.
    /// </summary>
    public required string Explanation { get; init; }

    /// <summary>Work spent [work seconds].</summary>
    public required double WorkSeconds { get; init; }

    /// <summary>Cost above the lower bound.</summary>
    public long Gap => Cost - LowerBoundCost;
}
