namespace PostFrame.Engine.Heat;

/// <summary>One number opened: formula, inputs, source and mark.</summary>
/// <param name="Quantity">What it is.</param>
/// <param name="Formula">The formula, in symbols of the inputs.</param>
/// <param name="Inputs">What went in.</param>
/// <param name="Value">The number.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Source">Standard or table.</param>
/// <param name="Mark">R read, M from memory, M✓ memory borne out, C computed, A assumption, G as
/// given by the caller.</param>
public sealed record WorkingStep(
    string Quantity,
    string Formula,
    IReadOnlyList<WorkingInput> Inputs,
    double Value,
    string Unit,
    string Source,
    string Mark)
{
    /// <summary>Which figure of the result the step opens, by its name; null for a step on the way.
    /// </summary>
    public string? Figure { get; init; }
}
