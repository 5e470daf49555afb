using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.TakeOff;

/// <summary>A stretch to cover with what wraps or laps beyond it at each end.</summary>
/// <remarks>Source: takeoff.md 2.6 (wrap is added before the count) and 2.9 (partition).</remarks>
internal sealed record StripRun(Interval Part, Length Before, Length After)
{
    public Length Start => Part.From - Before;

    public Length Size => Part.Size + Before + After;

    public static IReadOnlyList<StripRun> Of(Plane plane, Building building, Practice practice) =>
        [.. plane.Parts.Select(part => new StripRun(
            part, Beyond(part.From, plane, building, practice),
            Beyond(part.To, plane, building, practice)))];

    private static Length Beyond(
        Length edge, Plane plane, Building building, Practice practice)
    {
        if (edge == Length.Zero || edge == plane.Run)
            return plane.IsWall ? practice.CornerWrap : practice.RakeWrap;
        return plane.Kind != PlaneKind.Endwall && edge + plane.Origin == building.Partition
            ? practice.PartitionLap.Times(0.5)
            : Length.Zero;
    }
}
