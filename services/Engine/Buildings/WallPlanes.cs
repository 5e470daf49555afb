using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Buildings;

/// <summary>The walls of a building and of its lean-tos, as planes.</summary>
/// <remarks>
/// Source: takeoff.md 2.3 (runs, lean-tos) and 2.9 (partition). Sidewalls run from endwall 1,
/// endwalls from sidewall A on both ends of the building.
/// </remarks>
internal static class WallPlanes
{
    public static IEnumerable<Plane> Of(Building building)
    {
        foreach (var side in new[] { BuildingSide.A, BuildingSide.B })
        {
            if (Sidewall(building, side) is { } wall) yield return wall;
            if (building.LeanToAt(side) is { } lean) yield return LeanSidewall(building, lean);
        }
        var across = EndwallProfile(building);
        yield return Endwall(building, "endwall1", "E1", "Endwall 1", across);
        yield return Endwall(building, "endwall2", "E2", "Endwall 2", across);
        if (building.Partition is not null)
            yield return Endwall(building, "partition", "P", "Partition", across);
        foreach (var lean in building.LeanTos.Where(l => !l.SharesEndwall))
            foreach (var end in new[] { 1, 2 })
                yield return Endwall(
                    building, $"leanEndwall{lean.Side}{end}", $"LE{lean.Side}{end}",
                    $"Lean-to {lean.Side} endwall {end}", LeanProfile(lean));
    }

    /// <summary>
    /// The cross-section of the endwall's one run: the main building, with the lean-tos that
    /// share its endwall on either side.
    /// </summary>
    public static Profile EndwallProfile(Building building)
    {
        var points = building.Roof.Profile.Points.ToList();
        if (building.LeanToAt(BuildingSide.A) is { SharesEndwall: true } a)
            points =
            [
                new(Length.Zero, a.LowEave),
                .. points.Select(p => new PlanePoint(p.Across + a.Width, p.Up)),
            ];
        if (building.LeanToAt(BuildingSide.B) is { SharesEndwall: true } b)
            points.Add(new(points[^1].Across + b.Width, b.LowEave));
        return new(points);
    }

    private static Plane? Sidewall(Building building, BuildingSide side)
    {
        var top = side == BuildingSide.A
            ? building.Roof.Profile.Start.Up
            : building.Roof.Profile.End.Up;
        var lean = building.LeanToAt(side);
        if (lean is { SharesEndwall: true }) return null;
        var isBand = lean is { Inside: LeanToInside.Open };
        return Along(building, $"sidewall{side}", $"S{side}", $"Sidewall {side}", top) with
        {
            Base = isBand ? Length.Max(lean!.Top, building.StemWall) : building.StemWall,
            IsBand = isBand,
        };
    }

    private static Plane LeanSidewall(Building building, LeanTo lean) => Along(
        building, $"leanSidewall{lean.Side}", $"LS{lean.Side}", $"Lean-to {lean.Side} sidewall",
        lean.LowEave);

    private static Plane Along(
        Building building, string id, string code, string title, Length top) => new()
    {
        Id = id, Code = code, Title = title, Kind = PlaneKind.Sidewall,
        Edge = Profile.Level(building.Length, top), Base = building.StemWall,
        Bottom = PlaneEnd.WallBase, Top = PlaneEnd.WallTop, Parts = [building.Insulated],
        Framing = building.WallFraming,
    };

    private static Plane Endwall(
        Building building, string id, string code, string title, Profile edge) => new()
    {
        Id = id, Code = code, Title = title, Kind = PlaneKind.Endwall, Edge = edge,
        Base = building.StemWall, Bottom = PlaneEnd.WallBase, Top = PlaneEnd.WallTop,
        Parts = [new(Length.Zero, edge.End.Across)], Framing = building.WallFraming,
    };

    private static Profile LeanProfile(LeanTo lean) => lean.Side == BuildingSide.A
        ? new([new(Length.Zero, lean.LowEave), new(lean.Width, lean.Top)])
        : new([new(Length.Zero, lean.Top), new(lean.Width, lean.LowEave)]);
}
