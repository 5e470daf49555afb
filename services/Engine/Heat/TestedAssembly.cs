using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>
/// A steel-framed metal-building assembly whose U-factor comes from a table of tested values:
/// screws and squeezed blanket make any parallel-path figure too good by a third.
/// </summary>
/// <param name="Table">Such as "A2.3.3" of ASHRAE 90.1.</param>
/// <param name="Element">"roof" or "wall".</param>
/// <param name="System">How it is built, as the table words it.</param>
/// <param name="RatedInsulation">Such as "R-10" or "R-19 + R-11".</param>
/// <param name="U">The whole assembly.</param>
/// <param name="Read">True when seen; false when from memory.</param>
/// <param name="Corroboration">What was read that supports it.</param>
public sealed record TestedAssembly(
    string Table,
    string Element,
    string System,
    string RatedInsulation,
    ThermalTransmittance U,
    bool Read,
    string Corroboration);
