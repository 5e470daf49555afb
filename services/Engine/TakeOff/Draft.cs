using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.TakeOff;

/// <summary>A piece as geometry only: where it is and how long it must be.</summary>
internal sealed record Draft
{
    public required Plane Plane { get; init; }

    public required PieceRole Role { get; init; }

    /// <summary>What its strip covers, clipped to the plane.</summary>
    public required Interval Covers { get; init; }

    public required Length Bottom { get; init; }

    /// <summary>Highest point of the strip, or the sill above a sill piece.</summary>
    public required PlanePoint Top { get; init; }

    public required PlaneEnd BottomEnd { get; init; }

    public required PlaneEnd TopEnd { get; init; }

    /// <summary>The opening above which (header) or under which (sill) it lies.</summary>
    public Opening? Opening { get; init; }

    /// <summary>Of a piece along the plane: its stretch, wraps included.</summary>
    public Interval? Stretch { get; init; }

    /// <summary>Of a piece along the plane: its lap on the next.</summary>
    public Length JointLap { get; init; }

    /// <summary>Of headers made one: what it takes the place of and why, in words.</summary>
    public string? InsteadOf { get; init; }

    public PieceLay Lay => Stretch is null ? PieceLay.Upright : PieceLay.Across;

    /// <summary>Length before rounding.</summary>
    public required Length Exact { get; init; }

    public required Length Cut { get; init; }
}
