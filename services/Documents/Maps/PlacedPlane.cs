using PostFrame.Documents.Drawing;

namespace PostFrame.Documents.Maps;

/// <summary>
/// A plane with its place on the page: which way its run and its up point, and the scale [pt/in].
/// Seen from outside: sidewall A and the roof stand upright, side B hangs from the ridge, the
/// endwalls lie down to the left (1) and right (2) with sidewall A at the bottom.
/// </summary>
internal sealed record PlacedPlane(MapPlane Plane, MapSide Side, Spot Origin, double Scale)
{
    /// <summary>Page point of a point in the plane's own frame [in].</summary>
    public Spot At(double acrossIn, double upIn) => Side switch
    {
        MapSide.B => new(Origin.X + acrossIn * Scale, Origin.Y + upIn * Scale),
        MapSide.End1 => new(Origin.X + upIn * Scale, Origin.Y - acrossIn * Scale),
        MapSide.End2 => new(Origin.X - upIn * Scale, Origin.Y - acrossIn * Scale),
        _ => new(Origin.X + acrossIn * Scale, Origin.Y - upIn * Scale),
    };

    public Frame Box(double fromIn, double toIn, double bottomIn, double topIn) =>
        Frame.Around([At(fromIn, bottomIn), At(toIn, topIn)]);

    public IReadOnlyList<Spot> Outline =>
        [.. Plane.OutlineIn.Select(point => At(point.AcrossIn, point.UpIn))];

    /// <summary>True when the plane's up runs across the page.</summary>
    public bool IsLying => Side is MapSide.End1 or MapSide.End2;
}

/// <summary>Where on the flat building a plane is drawn.</summary>
internal enum MapSide
{
    A,
    B,
    End1,
    End2,
}
