using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using PostFrame.Documents;
using PostFrame.LabellingWorker.Messages;
using PostFrame.Messaging;

namespace PostFrame.LabellingWorker.Labels;

/// <summary>Turns an order and its cutting plan into what the documents draw.</summary>
internal static partial class PrintedPaper
{
    private const double NmPerInch = 25_400_000;
    private const double NmPerMm = 1_000_000;

    /// <summary>1 m²·K/W in h·ft²·°F/Btu, by the IT calorie's Btu (NIST SP 811, B.9).</summary>
    private const double RPerSi = 5.678263337;

    /// <summary>The caution that stands at the foot of every checklist page.</summary>
    private const string Standing = "standing";

    /// <summary>Our own words, for an order that does not bring them.</summary>
    private const string StandingUnlessSaid =
        "This sheet helps you cut and lay blanket. It is not a building plan, a code review or a "
        + "safety plan. The building code in force where you build, your building official, and "
        + "the licensed designer and electrician on the job decide. If this sheet and they "
        + "disagree, they are right.";

    private const string FacingUnlessSaid =
        "Facing toward the inside; the tab laps over the next strip";

    /// <exception cref="PiecesDifferException">
    /// Order and plan do not hold the same pieces: a set would be short.
    /// </exception>
    public static PrintedSet Draw(OrderConfirmedData order, CuttingPlannedData plan)
    {
        var pieces = InCuttingOrder(order, plan);
        var rolls = plan.Plans.SelectMany(group => group.Rolls)
            .SelectMany(roll => roll.Cuts.Select(cut => (cut.PieceId, Roll: roll)))
            .ToDictionary(cut => cut.PieceId, cut => cut.Roll);
        var planes = order.Planes.ToDictionary(plane => plane.Plane);
        var map = Map(order);
        var labels = new LabelSet
        {
            OrderNumber = order.OrderNumber,
            Revision = order.Revision,
            ShipTo = order.ShipTo.Name,
            IsMetric = order.Pieces.Any(IsMetric),
            Map = map,
            Labels = [.. pieces.Select(
                piece => Label(piece, planes[piece.Plane], IsMetric(piece)))],
        };
        return new PrintedSet
        {
            OrderNumber = order.OrderNumber,
            Revision = order.Revision,
            Plan = plan.PlanNumber ?? 1,
            LabelCount = pieces.Count,
            Summary = JsonSerializer.Serialize(
                pieces.Select((piece, index) => Summary(piece, index, rolls[piece.PieceId])),
                MessageJson.Options),
            LabelsPdf = LabelSheet.Pdf(labels),
            ChecklistPdf = Checklist.Pdf(Packing(order, pieces, map)),
        };
    }

    private static List<ConfirmedPiece> InCuttingOrder(
        OrderConfirmedData order, CuttingPlannedData plan)
    {
        var byId = order.Pieces.ToDictionary(piece => piece.PieceId);
        var cuts = plan.Plans
            .SelectMany(group => group.Rolls.OrderBy(roll => roll.Roll))
            .SelectMany(roll => roll.Cuts.OrderBy(cut => cut.Sequence))
            .Select(cut => cut.PieceId)
            .ToList();
        var wrong = cuts.GroupBy(id => id)
            .Where(same => same.Count() > 1 || !byId.ContainsKey(same.Key))
            .Select(same => same.Key)
            .Concat(byId.Keys.Except(cuts))
            .ToList();
        return wrong.Count == 0
            ? [.. cuts.Select(id => byId[id])]
            : throw new PiecesDifferException(
                $"Order and cutting plan {order.OrderNumber}/{order.Revision} differ in "
                + $"{wrong.Count} pieces: {string.Join(", ", wrong.Take(10))}.");
    }

    internal static BuildingMap Map(OrderConfirmedData order) => new()
    {
        Title = order.Building.Name,
        Summary = order.Building.Summary,
        IsMetric = order.Pieces.Any(IsMetric),
        Notes = order.Notes ?? [],
        Planes = [.. order.Planes.OrderBy(FromRidgeOutward).Select(plane => Plane(order, plane))],
    };

    /// <summary>How planes of one side follow each other down from the ridge.</summary>
    private static int FromRidgeOutward(ConfirmedPlane plane) =>
        (plane.Plane.StartsWith("lean", StringComparison.Ordinal) ? 2 : 0)
        + (plane.Kind == "roof" ? 0 : 1);

    private static MapPlane Plane(OrderConfirmedData order, ConfirmedPlane plane) => new()
    {
        Id = plane.Plane,
        Title = plane.Title,
        Kind = Kind(plane),
        OutlineIn = [.. plane.Outline.Select(
            point => new MapPoint(Inches(point.AcrossNm), Inches(point.UpNm)))],
        StartIn = Inches(plane.StartNm ?? 0),
        Strips = [.. order.Pieces.Where(piece => piece.Plane == plane.Plane).Select(Strip)],
        Openings = [.. plane.Openings.Select(opening => new MapOpening(
            Words(opening.Kind), Inches(opening.FromNm), Inches(opening.ToNm),
            Inches(opening.BottomNm), Inches(opening.TopNm),
            opening.Kind == "translucentPanel"))],
        Lines = [.. (plane.Lines ?? []).Select(line => new MapLine(
            Words(line.Kind), Inches(line.FromNm), Inches(line.ToNm), Inches(line.UpNm),
            line.Kind == "ridgeVent"))],
    };

    private static MapStrip Strip(ConfirmedPiece piece) => new()
    {
        Mark = piece.Mark,
        LengthText = piece.CutText,
        FromIn = Inches(piece.FromNm),
        ToIn = Inches(piece.ToNm),
        BottomIn = Inches(piece.BottomNm),
        TopIn = Inches(piece.TopNm),
    };

    private static PlaneKind Kind(ConfirmedPlane plane) => plane.Kind switch
    {
        "roof" => PlaneKind.Roof,
        "sidewall" => PlaneKind.Sidewall,
        "endwall" => PlaneKind.Endwall,
        _ => throw new InvalidOperationException($"No plane is a {plane.Kind}."),
    };

    private static PieceLabel Label(
        ConfirmedPiece piece, ConfirmedPlane plane, bool isMetric) => new()
        {
            PieceId = piece.PieceId,
            Mark = piece.Mark,
            Kind = Kind(plane),
            PlaneTitle = plane.Title,
            StripText = $"strip {piece.Strip} of {plane.StripCount}{Role(piece)}{Lie(piece)}",
            CutText = piece.CutText,
            CutAlsoText = isMetric
            ? MetreText(piece.CutNm)
            : $"{InchText(piece.CutNm)} · {MmText(piece.CutNm)}",
            WidthText = piece.WidthText,
            WidthAlsoText = isMetric ? MetreText(piece.WidthNm) : MmText(piece.WidthNm),
            ProductText = Product(plane, isMetric),
            FacingText = plane.Facing ?? FacingUnlessSaid,
            WeightLb = piece.WeightLb,
        };

    private static string Role(ConfirmedPiece piece) => piece.Role switch
    {
        "header" => " · header, above the opening",
        "sill" => " · sill, below the opening",
        _ => "",
    };

    /// <summary>Every other strip stands, and covers no more of the run than it is wide; places
    /// come to a ten-thousandth of an inch.</summary>
    private static string Lie(ConfirmedPiece piece) =>
        piece.ToNm - piece.FromNm > piece.WidthNm + NmPerInch ? " · lies along the wall" : "";

    /// <summary>R as the product has it on the shelf: framing will squeeze it.</summary>
    private static string Product(ConfirmedPlane plane, bool isMetric) =>
        plane.NominalR is not { } r
        ? plane.ProductTitle
        : isMetric
            ? Invariant(
                $"{plane.ProductTitle} · nominal R {r / RPerSi:0.00} m²·K/W before installation")
            : Invariant($"{plane.ProductTitle} · nominal R-{r:0.#} before installation");

    private static PackingList Packing(
        OrderConfirmedData order, List<ConfirmedPiece> inCuttingOrder, BuildingMap map)
    {
        var numbers = inCuttingOrder
            .Select((piece, index) => (piece.PieceId, Number: index + 1))
            .ToDictionary(entry => entry.PieceId, entry => entry.Number);
        return new PackingList
        {
            OrderNumber = order.OrderNumber,
            Revision = order.Revision,
            ShipTo = order.ShipTo.Name,
            NeededBy = order.NeededBy,
            IsMetric = order.Pieces.Any(IsMetric),
            Map = map,
            Planes = [.. order.Planes.Select(plane => Packed(
                plane, [.. order.Pieces.Where(piece => piece.Plane == plane.Plane)], numbers))],
            Accessories = [.. (order.Accessories ?? []).Select(
                item => new PackedAccessory(item.Name, item.Quantity))],
            Cautions = [.. order.Cautions.Where(caution => caution.Id != Standing).Select(
                caution => new PrintedCaution(caution.Topic, caution.Text, caution.Basis))],
            StandingLine = order.Cautions.FirstOrDefault(caution => caution.Id == Standing)?.Text
                ?? StandingUnlessSaid,
        };
    }

    private static PackedPlane Packed(
        ConfirmedPlane plane, List<ConfirmedPiece> pieces, Dictionary<string, int> numbers)
    {
        var totalNm = pieces.Sum(piece => piece.CutNm);
        var isMetric = pieces.Any(IsMetric);
        return new PackedPlane
        {
            PlaneId = plane.Plane,
            ProductText = Product(plane, isMetric),
            TotalLengthText = isMetric
                ? Invariant($"{totalNm / NmPerMm / 1000:#,0.##} m")
                : Invariant($"{totalNm / NmPerInch / 12:#,0.#} ft"),
            Pieces = [.. pieces.Select(piece => new PackedPiece
            {
                Mark = piece.Mark,
                PieceId = piece.PieceId,
                CutText = piece.CutText,
                WidthText = piece.WidthText,
                WeightLb = piece.WeightLb,
                LabelNumber = numbers[piece.PieceId],
            })],
        };
    }

    private static PrintedLabel Summary(
        ConfirmedPiece piece, int index, PlannedRoll roll) => new()
        {
            Number = index + 1,
            Roll = roll.Roll,
            StockId = roll.StockId,
            Lot = roll.Lot,
            PieceId = piece.PieceId,
            Mark = piece.Mark,
            Plane = piece.Plane,
            CutText = piece.CutText,
            WidthText = piece.WidthText,
        };

    private static bool IsMetric(ConfirmedPiece piece) => piece.CutText.EndsWith('m');

    private static double Inches(long nm) => nm / NmPerInch;

    private static string InchText(long nm) => Invariant($"{nm / NmPerInch:0.##} in");

    private static string MetreText(long nm) => Invariant($"{nm / NmPerMm / 1000:0.###} m");

    private static string MmText(long nm) => Invariant($"{nm / NmPerMm:0} mm");

    private static string Invariant(FormattableString text) =>
        text.ToString(CultureInfo.InvariantCulture);

    /// <summary>"overheadDoor" as the crew says it.</summary>
    private static string Words(string kind) =>
        WordStart().Replace(kind, match => " " + match.Value.ToLowerInvariant());

    [GeneratedRegex("(?<!^)[A-Z]")]
    private static partial Regex WordStart();
}
