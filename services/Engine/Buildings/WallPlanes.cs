using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Buildings;

/// <summary>The walls of a building and of its lean-tos, as planes.</summary>
/// <remarks>
/// Source: takeoff.md 2.3 (runs, lean-tos) and 2.9 (partition). Sidewalls run from endwall 1,
/// endwalls from sidewall A on both ends of the building.
/// </remarks>
internal static class WallPlanes
{
    /// <summary>Every wall, with no stretch to cover where it lies beyond the partition.</summary>
    public static IEnumerable<Plane> Of(Building building)
    {
        foreach (var side in new[] { BuildingSide.A, BuildingSide.B })
        {
            foreach (var wall in Sidewalls(building, side)) yield return wall;
            if (building.LeanToAt(side) is { } lean) yield return LeanSidewall(building, lean);
        }
        foreach (var end in new[] { 1, 2 })
            yield return Endwall(building, $"endwall{end}", $"E{end}", $"Endwall {end}",
                EndwallProfile(building, end));
        if (building.Partition is { } place)
            yield return Endwall(building, "partition", "P", "Partition", ProfileWith(
                building, lean => lean.IsFlushAndOpen && lean.Along.From < place
                    && place < lean.Along.To));
        foreach (var lean in building.LeanTos.Where(l => !l.IsFlushAndOpen
            && l.Along.From < building.Partition && building.Partition < l.Along.To))
            yield return Endwall(
                building, $"leanPartition{lean.Side}", $"LP{lean.Side}",
                $"Partition in lean-to {lean.Side}", LeanProfile(lean));
        foreach (var lean in building.LeanTos)
            foreach (var end in new[] { 1, 2 }.Where(e => !lean.SharesEndwall(e)))
                yield return Endwall(
                    building, $"leanEndwall{lean.Side}{end}", $"LE{lean.Side}{end}",
                    $"Lean-to {lean.Side} endwall {end}", LeanProfile(lean));
    }

    /// <summary>
    /// The cross-section of an endwall's one run: the main building, with the lean-tos that share
    /// that endwall on either side.
    /// </summary>
    public static Profile EndwallProfile(Building building, int end) =>
        ProfileWith(building, lean => lean.SharesEndwall(end));

    /// <summary>Why a sidewall is not there, in a sentence; nothing for any other name.</summary>
    public static string WhyNot(Building building, string name) =>
        name is "sidewallA" or "sidewallB" && building.LeanTos.Any(l =>
            l.IsFlushAndOpen && name.EndsWith(l.Side.ToString(), StringComparison.Ordinal))
            ? " The lean-to on that side is open to the main building, so no wall is left there."
            : "";

    private static Profile ProfileWith(Building building, Func<LeanTo, bool> shares)
    {
        var points = building.Roof.Profile.Points.ToList();
        if (building.LeanToAt(BuildingSide.A) is { } a && shares(a))
            points =
            [
                new(Length.Zero, a.LowEave),
                .. points.Select(p => new PlanePoint(p.Across + a.Width, p.Up)),
            ];
        if (building.LeanToAt(BuildingSide.B) is { } b && shares(b))
            points.Add(new(points[^1].Across + b.Width, b.LowEave));
        return new(points);
    }

    /// <summary>
    /// The main sidewall where it stands, and the band left above an open lean-to that meets it
    /// below the eave. Along a whole sidewall the band is all there is of it.
    /// </summary>
    private static IEnumerable<Plane> Sidewalls(Building building, BuildingSide side)
    {
        var top = side == BuildingSide.A
            ? building.Roof.Profile.Start.Up
            : building.Roof.Profile.End.Up;
        var wall = Along(
            building, $"sidewall{side}", $"S{side}", $"Sidewall {side}", top,
            new(Length.Zero, building.Length));
        var lean = building.LeanToAt(side);
        if (lean is not { Inside: LeanToInside.Open })
        {
            yield return wall;
            yield break;
        }
        if (!lean.IsWholeLength)
            yield return wall with
            {
                Gap = lean.Along,
                Parts = [.. new Interval[]
                {
                    new(Length.Zero, lean.Along.From), new(lean.Along.To, building.Length),
                }.Where(p => p.Overlaps(building.Insulated))
                    .Select(p => p.ClippedTo(building.Insulated))],
            };
        if (lean.Drop == Length.Zero) yield break;
        var band = wall with
        {
            Base = Length.Max(lean.Top, building.StemWall),
            IsBand = true,
            Parts = Covered(building, lean.Along),
        };
        yield return lean.IsWholeLength
            ? band
            : band with
            {
                Id = $"sidewall{side}Band",
                Code = $"S{side}B",
                Title = $"Sidewall {side} band",
            };
    }

    private static Plane LeanSidewall(Building building, LeanTo lean) => Along(
        building, $"leanSidewall{lean.Side}", $"LS{lean.Side}", $"Lean-to {lean.Side} sidewall",
        lean.LowEave, lean.Along);

    private static Plane Along(
        Building building, string id, string code, string title, Length top, Interval along) =>
        new()
        {
            Id = id,
            Code = code,
            Title = title,
            Kind = PlaneKind.Sidewall,
            Origin = along.From,
            Edge = Profile.Level(along.Size, top),
            Base = building.StemWall,
            Bottom = PlaneEnd.WallBase,
            Top = PlaneEnd.WallTop,
            Parts = [.. Covered(building, along).Select(p =>
            new Interval(p.From - along.From, p.To - along.From))],
            Framing = building.WallFraming,
        };

    private static IReadOnlyList<Interval> Covered(Building building, Interval along) =>
        along.Overlaps(building.Insulated) ? [along.ClippedTo(building.Insulated)] : [];

    private static Plane Endwall(
        Building building, string id, string code, string title, Profile edge) => new()
        {
            Id = id,
            Code = code,
            Title = title,
            Kind = PlaneKind.Endwall,
            Edge = edge,
            Base = building.StemWall,
            Bottom = PlaneEnd.WallBase,
            Top = PlaneEnd.WallTop,
            Parts = [new(Length.Zero, edge.End.Across)],
            Framing = building.WallFraming,
        };

    private static Profile LeanProfile(LeanTo lean) => lean.Side == BuildingSide.A
        ? new([new(Length.Zero, lean.LowEave), new(lean.Width, lean.Top)])
        : new([new(Length.Zero, lean.Top), new(lean.Width, lean.LowEave)]);
}
