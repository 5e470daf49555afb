namespace PostFrame.CuttingWorker.Planning;

/// <summary>Something wrong with a plan.</summary>
/// <param name="Rule">
/// <c>demand</c>, <c>capacity</c>, <c>stock-count</c>, <c>lot</c>, <c>left-over</c>, <c>bound</c>,
/// <c>total</c> or <c>unknown-key</c>.
/// </param>
/// <param name="Where">The item, stock type or roll meant.</param>
/// <param name="Text">A sentence with the value, the bound and the unit.</param>
public sealed record PlanViolation(string Rule, string Where, string Text);
