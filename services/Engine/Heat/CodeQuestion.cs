namespace PostFrame.Engine.Heat;

/// <summary>Which row of which code is asked for.</summary>
/// <param name="Standard">As in the rows.</param>
/// <param name="Edition">As in the rows.</param>
/// <param name="Zone">Climate zone with its letter where it has one: "6A", "4C", "7".</param>
/// <param name="Conditioning">As in the rows.</param>
/// <param name="Element">As in the rows.</param>
/// <param name="Construction">As in the rows.</param>
public sealed record CodeQuestion(
    string Standard,
    string Edition,
    string Zone,
    string Conditioning,
    string Element,
    string Construction);
