namespace PostFrame.Documents;

/// <summary>One piece in its place on a plane [in].</summary>
public sealed record MapStrip
{
    /// <summary>What the crew reads, such as "SA-04" or "E1-03H".</summary>
    public required string Mark { get; init; }

    /// <summary>The cut length as printed, such as "33 ft 0 in".</summary>
    public required string LengthText { get; init; }

    public required double FromIn { get; init; }

    public required double ToIn { get; init; }

    public required double BottomIn { get; init; }

    public required double TopIn { get; init; }
}
