namespace PostFrame.Engine.Heat;

/// <summary>One row of a code table.</summary>
/// <param name="Standard">Such as "ASHRAE/IES 90.1".</param>
/// <param name="Edition">Such as "2019", or "2018 (edition inferred)".</param>
/// <param name="Table">Such as "Table 5.5-6".</param>
/// <param name="Zone">As the table words it: "6", "5 and marine 4".</param>
/// <param name="Conditioning">Occupancy or conditioning, as the table words it.</param>
/// <param name="Element">"roof", "wall above grade", …</param>
/// <param name="Construction">"metal building", "attic and other", "wood-framed and other",
/// …</param>
/// <param name="Measure">U_max, F_max or R_prescriptive_text.</param>
/// <param name="Value">The limit as printed: a number [Btu/(h·ft²·°F)], or words.</param>
/// <param name="Read">True when seen in a stored copy; false when from memory.</param>
/// <param name="Source">Where it was seen.</param>
/// <param name="Note">What else the table says.</param>
public sealed record EnvelopeMinimum(
    string Standard,
    string Edition,
    string Table,
    string Zone,
    string Conditioning,
    string Element,
    string Construction,
    string Measure,
    string Value,
    bool Read,
    string Source,
    string Note)
{
    /// <summary>True for a row read in a copy that names its edition.</summary>
    public bool IsCertain => Read && !Edition.Contains("inferred", StringComparison.Ordinal);
}
