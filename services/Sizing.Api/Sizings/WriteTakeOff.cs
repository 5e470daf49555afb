using PostFrame.Engine;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;
using PostFrame.Problems;

namespace PostFrame.SizingApi.Sizings;

/// <summary>Turns the engine's take-off into the wire's, number by number.</summary>
internal static class WriteTakeOff
{
    public static TakeOffBody From(SizingResult result)
    {
        var isMetric = result.Building.Metric;
        return new TakeOffBody
        {
            Building = Building(result.Building),
            Pieces = [.. result.Pieces.Select(piece => Piece(piece, isMetric))],
            Schedule = [.. result.Schedule.Select(line => Schedule(line, result, isMetric))],
            Planes = [.. InLayingOrder(result).Select(plane => Plane(plane, isMetric))],
            Totals = Totals(result.Totals),
            Assumptions = [.. result.Assumptions.Select(WriteNotes.Assumption)],
            Warnings = [.. result.Warnings.Select(WriteNotes.Warning)],
            Cautions = [.. result.Cautions.Select(WriteNotes.Caution)],
            Stock = [.. result.Stock.Select(WriteNotes.Stock)],
            Uncovered = [.. result.Uncovered.Select(Uncovered)],
            AreaGoods = [.. result.AreaGoods.Select(WriteNotes.AreaGoods)],
            Accessories = [.. result.Accessories.Select(WriteNotes.Accessory)],
            Packing = result.Packing is { } packing ? WriteNotes.Packing(packing) : null,
            PossibleSavings = [.. result.PossibleSavings.Select(WriteNotes.Saving)],
            Choices = [.. result.Choices.Select(WriteNotes.Choice)],
            Price = result.Price is { } price ? WriteNotes.Price(price) : null,
        };
    }

    /// <summary>As the pieces come: main roof, lean-to roofs, walls; area goods last.</summary>
    private static IEnumerable<PlaneResult> InLayingOrder(SizingResult result)
    {
        var order = result.Pieces.Select(piece => piece.Plane).Distinct().ToList();
        return result.Planes.OrderBy(plane =>
            order.IndexOf(plane.Plane) is var place && place < 0 ? int.MaxValue : place);
    }

    private static BuildingLine Building(BuildingSummary building) => new()
    {
        Name = building.Name ?? "",
        Summary = building.Summary,
        Form = WireNames<RoofForm>.Of(building.Form),
        Units = building.Metric ? "metric" : "imperial",
        WidthIn = LengthWords.Inches(building.Width),
        LengthIn = LengthWords.Inches(building.Length),
        EaveHeightIn = LengthWords.Inches(building.EaveHeight),
        PeakHeightIn = LengthWords.Inches(building.RidgeHeight),
        Ridge = WireNames<RidgeKind>.Of(building.Ridge),
        Profile = [.. building.Profile.Select(point => new PointLine(
            LengthWords.Inches(point.Across), LengthWords.Inches(point.Up)))],
    };

    private static PieceLine Piece(Piece piece, bool isMetric) => new()
    {
        Mark = piece.Mark,
        Plane = piece.Plane,
        Strip = piece.Strip,
        Role = WireNames<PieceRole>.Of(piece.Role),
        Lay = WireNames<PieceLay>.Of(piece.Lay),
        Product = piece.Product,
        WidthIn = LengthWords.Inches(piece.Width),
        ExactIn = LengthWords.Inches(piece.Exact),
        CutIn = LengthWords.Inches(piece.Cut),
        WidthMm = LengthWords.Millimetres(piece.Width),
        ExactMm = LengthWords.Millimetres(piece.Exact),
        CutMm = LengthWords.Millimetres(piece.Cut),
        CutText = LengthWords.Of(piece.Cut, isMetric),
        FromIn = LengthWords.Inches(piece.From),
        ToIn = LengthWords.Inches(piece.To),
        BottomIn = LengthWords.Inches(piece.Bottom),
        TopIn = LengthWords.Inches(piece.Top),
        WeightLb = Rounded(piece.Weight.TotalPounds, 2),
        Why = [.. piece.Why.Select(line => new ReasonLine
        {
            Term = line.Term,
            Text = line.Text,
            In = LengthWords.Inches(line.Value),
            Mm = LengthWords.Millimetres(line.Value),
            Mark = line.Mark,
        })],
    };

    private static ScheduleLine Schedule(
        Engine.ScheduleLine line, SizingResult result, bool isMetric) => new()
        {
            Plane = line.Plane,
            Product = line.Product,
            Role = WireNames<PieceRole>.Of(line.Role),
            WidthIn = LengthWords.Inches(line.Width),
            CutIn = LengthWords.Inches(line.Cut),
            WidthMm = LengthWords.Millimetres(line.Width),
            CutMm = LengthWords.Millimetres(line.Cut),
            CutText = LengthWords.Of(line.Cut, isMetric),
            Count = line.Count,
            Strips = StripsOf(result.Pieces
            .Where(piece => piece.Plane == line.Plane && piece.Product == line.Product
                && piece.Role == line.Role && piece.Width == line.Width && piece.Cut == line.Cut)
            .Select(piece => piece.Strip)),
        };

    /// <summary>1, 2, 3, 7 as <c>1–3, 7</c>.</summary>
    private static string StripsOf(IEnumerable<int> strips)
    {
        var spans = new List<(int First, int Last)>();
        foreach (var strip in strips.Distinct().Order())
        {
            if (spans.Count > 0 && spans[^1].Last == strip - 1)
            {
                spans[^1] = (spans[^1].First, strip);
            }
            else
            {
                spans.Add((strip, strip));
            }
        }

        return string.Join(", ", spans.Select(span =>
            span.First == span.Last ? $"{span.First}" : $"{span.First}–{span.Last}"));
    }

    private static PlaneLine Plane(PlaneResult plane, bool isMetric) => new()
    {
        Plane = plane.Plane,
        Title = plane.Title,
        Code = plane.Code,
        Kind = WireNames<PlaneKind>.Of(plane.Kind),
        Product = plane.Product,
        ProductTitle = ProductCatalogue.Find(plane.Product)?.TitleIn(isMetric)
            ?? plane.Product,
        Facing = ProductCatalogue.Find(plane.Product)?.Facing,
        NetFt2 = Rounded(plane.Net.TotalSquareFeet, 2),
        GrossFt2 = Rounded(plane.Gross.TotalSquareFeet, 2),
        Strips = plane.Strips,
        RunIn = LengthWords.Inches(plane.Run),
        StartIn = plane.Start == Length.Zero ? null : LengthWords.Inches(plane.Start),
        CoverageIn = LengthWords.Inches(plane.Coverage),
        SurplusIn = LengthWords.Inches(plane.Surplus),
        How = plane.How,
        OutlineIn = Outline(plane.Outline),
        Openings = [.. plane.Openings.Select(opening => new PlaneOpeningLine
        {
            Kind = WireNames<OpeningKind>.Of(opening.Kind),
            FromIn = LengthWords.Inches(opening.From),
            ToIn = LengthWords.Inches(opening.To),
            BottomIn = LengthWords.Inches(opening.Bottom),
            TopIn = LengthWords.Inches(opening.Top),
            Deducted = opening.Deducted,
        }), .. plane.Panels.Select(Panel)],
        Lines = [.. plane.Lines.Select(RoofLine)],
        Thermal = plane.Thermal is { } heat ? Thermal(heat) : null,
    };

    private static PlaneOpeningLine Panel(PlacedPanel panel) => new()
    {
        Kind = "translucentPanel",
        FromIn = LengthWords.Inches(panel.From),
        ToIn = LengthWords.Inches(panel.To),
        BottomIn = LengthWords.Inches(panel.Bottom),
        TopIn = LengthWords.Inches(panel.Top),
        Deducted = false,
    };

    private static PlaneRoofLine RoofLine(Engine.PlaneLine line) => new()
    {
        Kind = line.Kind,
        FromIn = LengthWords.Inches(line.From),
        ToIn = LengthWords.Inches(line.To),
        UpIn = LengthWords.Inches(line.Up),
    };

    private static UncoveredLine Uncovered(UncoveredPlane plane) => new()
    {
        Plane = plane.Plane,
        Title = plane.Title,
        Kind = WireNames<PlaneKind>.Of(plane.Kind),
        OutlineIn = Outline(plane.Outline),
    };

    private static decimal[][] Outline(IReadOnlyList<PlanePoint> points) =>
        [.. points.Select(point => new[]
        {
            LengthWords.Inches(point.Across), LengthWords.Inches(point.Up),
        })];

    private static ThermalLine Thermal(PlaneHeatSummary heat) => new()
    {
        NominalR = Rounded(heat.NominalR.TotalRValue, 2),
        Basis = heat.BasisTitle,
        Winter = Season(heat.Winter),
        Summer = Season(heat.Summer),
    };

    private static SeasonLine Season(SeasonHeat season) => new()
    {
        AssemblyR = Rounded(season.AssemblyR.TotalRValue, 2),
        AssemblyU = Rounded(season.AssemblyU.TotalUFactor, 4),
        Direction = WireNames<HeatFlow>.Of(season.Direction.Nearest),
        Method = season.Method,
    };

    private static TotalsLine Totals(SizingTotals totals) => new()
    {
        Pieces = totals.Pieces,
        LengthFt = Rounded(totals.Length.TotalFeet, 4),
        GrossFt2 = Rounded(totals.Gross.TotalSquareFeet, 2),
        NetFt2 = Rounded(totals.Net.TotalSquareFeet, 2),
        GrossToNet = Rounded(totals.GrossToNet, 4),
        WeightLb = Rounded(totals.Weight.TotalPounds, 1),
    };

    internal static double Rounded(double value, int decimals) =>
        Math.Round(value, decimals, MidpointRounding.AwayFromZero);
}
