using PostFrame.Documents.Drawing;

namespace PostFrame.Documents.Maps;

/// <summary>
/// Unfolds a building onto a page: the roof in the middle, side A below it and side B above it from
/// the ridge outward, the endwalls to the left and right; everything at one scale.
/// </summary>
internal static class MapLayout
{
    /// <summary>
    /// All planes at one scale; no column is narrower than its title's least width.
    /// </summary>
    public static IReadOnlyList<PlacedPlane> Place(
        BuildingMap map, Frame page, double gapPt, Func<MapPlane, double>? titlePt = null)
    {
        var columns = Columns(map, titlePt ?? (_ => 0));
        var scale = page.Width <= 0 || page.Height <= 0 ? 0 : Scale(columns, page, gapPt);
        var widths = columns.Select(column => column.WidthPt(scale)).ToList();
        var left = page.X + (page.Width - widths.Sum() - gapPt * (columns.Count - 1)) / 2;
        var middle = page.Y + page.Height / 2;
        var placed = new List<PlacedPlane>();
        foreach (var (column, width) in columns.Zip(widths))
        {
            var top = middle - (column.HeightIn * scale + gapPt * column.Entries.Count) / 2 + gapPt;
            var inner = left + (width - column.WidthIn * scale) / 2;
            foreach (var entry in column.Entries)
            {
                var across = column.AlongIn(entry) * scale;
                placed.Add(At(entry, new Spot(inner + across, top), scale) with
                {
                    TitleRoom = (left, width),
                });
                top += entry.HeightIn * scale + gapPt;
            }

            left += width + gapPt;
        }

        return placed;
    }

    /// <summary>One plane alone, standing on its foot, as large as the page allows.</summary>
    public static PlacedPlane PlaceAlone(MapPlane plane, Frame page, double gapPt)
    {
        var entry = new Entry(plane, PlacedPlane.StandingSide(plane));
        return PlaceAlone(plane, page, gapPt, Math.Max(0, Math.Min(
            page.Width / entry.WidthIn, (page.Height - gapPt) / entry.HeightIn)));
    }

    /// <summary>The same at a given scale, in the middle across.</summary>
    public static PlacedPlane PlaceAlone(MapPlane plane, Frame page, double gapPt, double scale)
    {
        var entry = new Entry(plane, PlacedPlane.StandingSide(plane));
        var left = page.X + (page.Width - entry.WidthIn * scale) / 2;
        var slack = Math.Max(0, page.Height - gapPt - entry.HeightIn * scale);
        return At(entry, new Spot(left, page.Y + gapPt + slack / 2), scale) with
        {
            TitleRoom = (left, page.Right - left),
        };
    }

    private sealed record Column(IReadOnlyList<Entry> Entries, double TitlePt)
    {
        private double FirstIn => Entries.Min(entry => entry.AlongIn);

        public double WidthIn => Entries[0].IsLying
            ? Entries.Max(entry => entry.WidthIn)
            : Entries.Max(entry => entry.AlongIn + entry.WidthIn) - FirstIn;

        public double HeightIn => Entries.Sum(entry => entry.HeightIn);

        public double WidthPt(double scale) => Math.Max(WidthIn * scale, TitlePt);

        /// <summary>
        /// From the column's edge: endwalls in its middle, the rest where it is along the building.
        /// </summary>
        public double AlongIn(Entry entry) => entry.IsLying
            ? (WidthIn - entry.WidthIn) / 2
            : entry.AlongIn - FirstIn;
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

        /// <summary>Where its page left end lies along the building.</summary>
        public double AlongIn => Plane.StartIn + FirstAcrossIn;
    }

    /// <summary>
    /// Left, middle, right; each from the top of the page down; empty ones left out.
    /// </summary>
    private static List<Column> Columns(BuildingMap map, Func<MapPlane, double> titlePt)
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
        return [.. columns.Where(column => column.Count > 0).Select(column =>
            new Column(column, column.Max(entry => titlePt(entry.Plane))))];
    }

    /// <summary>A lean-to's endwall lies on the lean-to's side of the main one.</summary>
    private static int FromSideB(Entry entry) =>
        entry.Plane.Id.Contains('B') ? 0 : entry.Plane.Id.Contains('A') ? 2 : 1;

    /// <summary>
    /// The largest at which every column fits; one held open by its title leaves less to the rest.
    /// </summary>
    private static double Scale(List<Column> columns, Frame page, double gapPt)
    {
        var width = page.Width - gapPt * (columns.Count - 1);
        var high = columns.Min(column =>
            (page.Height - gapPt * column.Entries.Count) / column.HeightIn);
        var scale = Math.Min(high, width / columns.Sum(column => column.WidthIn));
        for (var round = 0; round < columns.Count; round++)
        {
            var free = columns.Where(c => c.WidthIn * scale > c.TitlePt).ToList();
            var held = columns.Except(free).Sum(column => column.TitlePt);
            if (free.Count > 0)
            {
                scale = Math.Min(high, (width - held) / free.Sum(column => column.WidthIn));
            }
        }

        return Math.Max(scale, 0);
    }

    private static PlacedPlane At(Entry entry, Spot corner, double scale)
    {
        var frame = new Frame(
            corner.X, corner.Y, entry.WidthIn * scale, entry.HeightIn * scale);
        return new PlacedPlane(entry.Plane, entry.Side, Origin(entry, frame, scale), scale);
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
