using PostFrame.Documents.Drawing;

namespace PostFrame.Documents.Maps;

/// <summary>
/// A plane with its place on the page: which way its run and its up point, and the scale [pt/in].
/// Seen from outside: sidewall A and the roof stand upright, side B hangs from the ridge, the
/// endwalls lie down to the left (1) and right (2) with sidewall A at the bottom.
/// </summary>
internal sealed record PlacedPlane(MapPlane Plane, MapSide Side, Spot Origin, double Scale)
{
    /// <summary>Where above the plane its title may stand: from X, this wide [pt].</summary>
    public (double X, double Width)? TitleRoom { get; init; }

    /// <summary>Page point of a point in the plane's own frame [in].</summary>
    public Spot At(double acrossIn, double upIn) => Side switch
    {
        MapSide.B => new(Origin.X + acrossIn * Scale, Origin.Y + upIn * Scale),
        MapSide.End1 => new(Origin.X + upIn * Scale, Origin.Y - acrossIn * Scale),
        MapSide.Mirrored => new(Origin.X - acrossIn * Scale, Origin.Y - upIn * Scale),
        MapSide.End2 => new(Origin.X - upIn * Scale, Origin.Y - acrossIn * Scale),
        _ => new(Origin.X + acrossIn * Scale, Origin.Y - upIn * Scale),
    };

    public Frame Box(double fromIn, double toIn, double bottomIn, double topIn) =>
        Frame.Around([At(fromIn, bottomIn), At(toIn, topIn)]);

    /// <summary>The same plane standing on its foot, seen from outside.</summary>
    public static MapSide StandingSide(MapPlane plane) => SideOf(plane) switch
    {
        MapSide.B or MapSide.End1 => MapSide.Mirrored,
        _ => MapSide.A,
    };

    public static MapSide SideOf(MapPlane plane) => plane.Kind == PlaneKind.Endwall
        ? plane.Id.EndsWith('1') ? MapSide.End1 : MapSide.End2
        : plane.Id.EndsWith('B') ? MapSide.B : MapSide.A;

    public IReadOnlyList<Spot> Outline =>
        [.. Plane.OutlineIn.Select(point => At(point.AcrossIn, point.UpIn))];
}

/// <summary>Where on the flat building a plane is drawn.</summary>
internal enum MapSide
{
    A,
    B,
    End1,
    End2,

    /// <summary>
    /// Standing on its foot and seen from outside, where strip 1 is on the right.
    /// </summary>
    Mirrored,
}
