using PostFrame.Documents.Drawing;

namespace PostFrame.Documents.Maps;

/// <summary>
/// Unfolds a building onto a page: the roof in the middle, side A below it and side B above it from
/// the ridge outward, the endwalls to the left and right; everything at one scale.
/// </summary>
internal static class MapLayout
{
    public static IReadOnlyList<PlacedPlane> Place(BuildingMap map, Frame page, double gapPt) =>
        Place(Columns(map), page, gapPt);

    /// <summary>One plane alone, standing on its foot, as large as the page allows.</summary>
    public static PlacedPlane PlaceAlone(MapPlane plane, Frame page, double gapPt) =>
        Place([[new Entry(plane, PlacedPlane.StandingSide(plane))]], page, gapPt)[0];

    private static List<PlacedPlane> Place(List<List<Entry>> columns, Frame page, double gapPt)
    {
        var widths = columns.Select(column => column.Max(entry => entry.WidthIn)).ToList();
        var heights = columns.Select(column => column.Sum(entry => entry.HeightIn)).ToList();
        var scale = page.Width <= 0 || page.Height <= 0 ? 0 : Scale(columns, page, gapPt);
        var usedWidth = widths.Sum() * scale + gapPt * (columns.Count - 1);
        var left = page.X + (page.Width - usedWidth) / 2;
        var middle = page.Y + page.Height / 2;
        var placed = new List<PlacedPlane>();
        for (var i = 0; i < columns.Count; i++)
        {
            var height = heights[i] * scale + gapPt * columns[i].Count;
            var centre = left + widths[i] * scale / 2;
            Stack(columns[i], centre, middle - height / 2 + gapPt, scale, gapPt, placed);
            var (columnX, columnWidth) = (left, widths[i] * scale);
            placed.ForEach(plane => plane.TitleRoom ??= (columnX, columnWidth));
            left += widths[i] * scale + gapPt;
        }

        return placed;
    }

    private sealed record Entry(MapPlane Plane, MapSide Side)
    {
        public double AcrossIn => Plane.OutlineIn.Max(p => p.AcrossIn) - FirstAcrossIn;

        public double UpIn => Plane.OutlineIn.Max(p => p.UpIn) - FirstUpIn;

        public double FirstAcrossIn => Plane.OutlineIn.Min(p => p.AcrossIn);

        public double FirstUpIn => Plane.OutlineIn.Min(p => p.UpIn);

        public bool IsLying => Side is MapSide.End1 or MapSide.End2;

        public double WidthIn => IsLying ? UpIn : AcrossIn;

        public double HeightIn => IsLying ? AcrossIn : UpIn;
    }

    /// <summary>
    /// Left, middle, right; each from the top of the page down; empty ones left out.
    /// </summary>
    private static List<List<Entry>> Columns(BuildingMap map)
    {
        var entries = map.Planes
            .Where(plane => plane.OutlineIn.Count >= 3)
            .Select(plane => new Entry(plane, PlacedPlane.SideOf(plane)))
            .ToList();
        var sideB = entries.Where(e => e.Side == MapSide.B).Reverse();
        var sideA = entries.Where(e => e.Side == MapSide.A);
        var end1 = entries.Where(e => e.Side == MapSide.End1).OrderBy(FromSideB);
        var end2 = entries.Where(e => e.Side == MapSide.End2).OrderBy(FromSideB);
        List<List<Entry>> columns = [[.. end1], [.. sideB, .. sideA], [.. end2]];
        return [.. columns.Where(column => column.Count > 0)];
    }

    /// <summary>A lean-to's endwall lies on the lean-to's side of the main one.</summary>
    private static int FromSideB(Entry entry) =>
        entry.Plane.Id.Contains('B') ? 0 : entry.Plane.Id.Contains('A') ? 2 : 1;

    private static double Scale(List<List<Entry>> columns, Frame page, double gapPt)
    {
        var across = columns.Sum(column => column.Max(entry => entry.WidthIn));
        var scale = (page.Width - gapPt * (columns.Count - 1)) / across;
        foreach (var column in columns)
        {
            var room = page.Height - gapPt * column.Count;
            scale = Math.Min(scale, room / column.Sum(entry => entry.HeightIn));
        }

        return Math.Max(scale, 0);
    }

    private static void Stack(
        List<Entry> column,
        double centre,
        double top,
        double scale,
        double gapPt,
        List<PlacedPlane> placed)
    {
        foreach (var entry in column)
        {
            var frame = new Frame(
                centre - entry.WidthIn * scale / 2,
                top,
                entry.WidthIn * scale,
                entry.HeightIn * scale);
            var origin = Origin(entry, frame, scale);
            placed.Add(new PlacedPlane(entry.Plane, entry.Side, origin, scale));
            top = frame.Bottom + gapPt;
        }
    }

    /// <summary>The page point of the plane's (0, 0).</summary>
    private static Spot Origin(Entry entry, Frame frame, double scale)
    {
        var across = entry.FirstAcrossIn * scale;
        var up = entry.FirstUpIn * scale;
        return entry.Side switch
        {
            MapSide.B => new(frame.X - across, frame.Y - up),
            MapSide.Mirrored => new(frame.Right + across, frame.Bottom + up),
            MapSide.End1 => new(frame.X - up, frame.Bottom + across),
            MapSide.End2 => new(frame.Right + up, frame.Bottom + across),
            _ => new(frame.X - across, frame.Bottom + up),
        };
    }
}
