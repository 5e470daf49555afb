namespace PostFrame.Engine;

/// <summary>The one entry from a building to what has to be cut, bought and watched.</summary>
public static class Sizing
{
    /// <summary>
    /// Takes off a building. Never throws for what a person sent: everything wrong comes back as
    /// violations, all at once.
    /// </summary>
    public static SizingOutcome Size(SizingInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        return new SizingOutcome(
            null, [new("", "not-yet", "", null, null, "The take-off is not there yet.")]);
    }
}
