using PostFrame.Documents;
using PostFrame.Engine;
using PostFrame.Engine.TakeOff;
using PostFrame.SizingApi.Sizings;
using EnginePlaneKind = PostFrame.Engine.Buildings.PlaneKind;
using OpeningKind = PostFrame.Engine.Buildings.OpeningKind;

namespace PostFrame.SizingApi.Drawings;

/// <summary>Lays a take-off out as the flat map to draw.</summary>
internal static class DrawMap
{
    /// <summary>What is not on the drawing, or would hurt whoever misreads it.</summary>
    private static readonly HashSet<string> Drawn =
        ["planes-left-out", "beyond-partition", "unplaced-opening", "cut-out-panels"];

    public static BuildingMap Of(SizingResult result) => new()
    {
        Title = result.Building.Name ?? "Building",
        Summary = result.Building.Summary,
        IsMetric = result.Building.Metric,
        Notes = [.. result.Warnings.Where(warning => Drawn.Contains(warning.Id))
            .Select(warning => warning.Text)],
        Planes = [.. result.Planes.OrderBy(FromRidgeOutward)
            .Select(plane => Plane(plane, result))],
    };

    /// <summary>
    /// The order in which planes of one side follow each other down from the ridge.
    /// </summary>
    private static int FromRidgeOutward(PlaneResult plane)
    {
        var isLeanTo = plane.Plane.StartsWith("lean", StringComparison.Ordinal);
        return (isLeanTo ? 2 : 0) + (plane.Kind is EnginePlaneKind.Roof ? 0 : 1);
    }

    private static MapPlane Plane(PlaneResult plane, SizingResult result) =>
        new()
        {
            Id = plane.Plane,
            Title = plane.Title,
            Kind = plane.Kind switch
            {
                EnginePlaneKind.Roof => PlaneKind.Roof,
                EnginePlaneKind.Sidewall => PlaneKind.Sidewall,
                _ => PlaneKind.Endwall,
            },
            OutlineIn = [.. plane.Outline.Select(point =>
                new MapPoint(point.Across.TotalInches, point.Up.TotalInches))],
            Strips = [.. result.Pieces.Where(piece => piece.Plane == plane.Plane)
                .Select(piece => Strip(piece, result.Building.Metric))],
            CoverText = plane.Strips > 0
                ? ""
                : ProductCatalogue.Find(plane.Product)!.TitleIn(result.Building.Metric),
            StartIn = plane.Start.TotalInches,
            Openings =
            [
                .. plane.Openings.Select(Opening),
                .. plane.Panels.Select(panel => new MapOpening(
                    "translucent panel", panel.From.TotalInches, panel.To.TotalInches,
                    panel.Bottom.TotalInches, panel.Top.TotalInches, IsPanel: true)),
            ],
            Lines = [.. plane.Lines.Select(Line)],
        };

    private static MapStrip Strip(Piece piece, bool isMetric) => new()
    {
        Mark = piece.Mark,
        LengthText = LengthWords.Of(piece.Cut, isMetric),
        FromIn = piece.From.TotalInches,
        ToIn = piece.To.TotalInches,
        BottomIn = piece.Bottom.TotalInches,
        TopIn = piece.Top.TotalInches,
    };

    private static MapLine Line(Engine.PlaneLine line) => new(
        line.Kind switch
        {
            "ridgeVent" => "ridge vent",
            var word => word,
        },
        line.From.TotalInches, line.To.TotalInches, line.Up.TotalInches,
        IsVent: line.Kind == "ridgeVent");

    private static MapOpening Opening(PlacedOpening opening) => new(
        opening.Kind switch
        {
            OpeningKind.WalkDoor => "walk door",
            OpeningKind.OverheadDoor => "overhead door",
            OpeningKind.SlidingDoor => "sliding door",
            OpeningKind.BifoldDoor => "bi-fold door",
            OpeningKind.FramedOpening => "framed opening",
            OpeningKind.Window => "window",
            OpeningKind.Louvre => "louvre",
            _ => "eave light",
        },
        opening.From.TotalInches, opening.To.TotalInches,
        opening.Bottom.TotalInches, opening.Top.TotalInches);
}
