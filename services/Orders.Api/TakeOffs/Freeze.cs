using System.Globalization;
using PostFrame.OrdersApi.Messages;

namespace PostFrame.OrdersApi.TakeOffs;

/// <summary>A take-off as the workers need it: whole nanometres, and an id on each piece.</summary>
internal static class Freeze
{
    private const decimal NmPerInch = 25_400_000m;
    private const decimal NmPerMm = 1_000_000m;

    /// <summary>What the crew must know that no drawing, length or caution says.</summary>
    private static readonly HashSet<string> ForTheCrew =
    [
        "planes-left-out", "unplaced-opening", "cut-out-panels", "vented-eave",
        "overhang-beside-lean-to", "opening-saves-nothing", "short-headers-joined",
        "lay-with-the-wind",
    ];

    /// <summary>Those something is cut for; goods by area are among the accessories.</summary>
    public static IReadOnlyList<OrderConfirmed.Plane> Planes(TakeOff takeOff) =>
        [.. takeOff.Planes.Where(plane => takeOff.Pieces.Any(piece => piece.Plane == plane.Plane))
            .Select(plane => new OrderConfirmed.Plane
        {
            Id = plane.Plane,
            Title = plane.Title,
            Kind = plane.Kind,
            Product = plane.Product,
            ProductTitle = plane.ProductTitle,
            Facing = FacingText.Of(plane.Product),
            NominalR = plane.Thermal is { NominalR: > 0 } thermal ? thermal.NominalR : null,
            WidthNm = FromMm(takeOff.Pieces.First(piece => piece.Plane == plane.Plane).WidthMm),
            StripCount = plane.Strips,
            RunNm = FromIn(plane.RunIn),
            StartNm = plane.StartIn is { } start ? FromIn(start) : null,
            Outline = [.. plane.OutlineIn.Select(
                corner => new OrderConfirmed.Corner(FromIn(corner[0]), FromIn(corner[1])))],
            Openings = [.. plane.Openings.Select(opening => new OrderConfirmed.Opening(
                opening.Kind, FromIn(opening.FromIn), FromIn(opening.ToIn),
                FromIn(opening.BottomIn), FromIn(opening.TopIn)))],
            Lines = [.. plane.Lines.Select(line => new OrderConfirmed.RoofLine(
                line.Kind, FromIn(line.FromIn), FromIn(line.ToIn), FromIn(line.UpIn)))],
        })];

    /// <param name="takeOff">What to freeze.</param>
    /// <param name="idOf">The id of the n-th piece, counted from 1.</param>
    public static IReadOnlyList<OrderConfirmed.Piece> Pieces(
        TakeOff takeOff, Func<int, string> idOf) =>
        [.. takeOff.Pieces.Select((piece, n) => new OrderConfirmed.Piece
        {
            PieceId = idOf(n + 1),
            Mark = piece.Mark,
            Plane = piece.Plane,
            Strip = piece.Strip,
            Role = piece.Role,
            Product = piece.Product,
            WidthNm = FromMm(piece.WidthMm),
            CutNm = FromMm(piece.CutMm),
            CutText = piece.CutText,
            WidthText = takeOff.Building.Units == "metric"
                ? Shown(piece.WidthMm) + " mm"
                : Shown(piece.WidthIn) + " in",
            FromNm = FromIn(piece.FromIn),
            ToNm = FromIn(piece.ToIn),
            BottomNm = FromIn(piece.BottomIn),
            TopNm = FromIn(piece.TopIn),
            WeightLb = piece.WeightLb,
        })];

    public static IReadOnlyList<OrderConfirmed.Stock> Stock(TakeOff takeOff) =>
        [.. takeOff.Stock.Select(roll => new OrderConfirmed.Stock(
            roll.Product, FromMm(roll.WidthMm), FromMm(roll.RollLengthMm),
            FromMm(roll.EndTrimMm), FromMm(roll.MinUsefulOffcutMm)))];

    public static IReadOnlyList<OrderConfirmed.Caution> Cautions(TakeOff takeOff) =>
        [.. takeOff.Cautions.Select(caution => new OrderConfirmed.Caution(
            caution.Id, caution.Topic, caution.Text, caution.Basis))];

    public static IReadOnlyList<OrderConfirmed.Accessory> Accessories(TakeOff takeOff) =>
        [
            .. takeOff.AreaGoods.Select(goods => new OrderConfirmed.Accessory(
                $"{goods.Title}: {string.Join(", ", goods.Planes.Select(TitleOf(takeOff)))}",
                Counted(goods.Quantity, goods.Unit))),
            .. takeOff.Accessories.Where(accessory => accessory.Quantity > 0)
                .Select(accessory => new OrderConfirmed.Accessory(
                    accessory.Title, Counted(accessory.Quantity, accessory.Unit))),
        ];

    public static IReadOnlyList<string> Notes(TakeOff takeOff) =>
        [.. takeOff.Warnings.Where(warning => ForTheCrew.Contains(warning.Id))
            .Select(warning => warning.Text).Take(100)];

    private static Func<string, string> TitleOf(TakeOff takeOff) =>
        id => takeOff.Planes.First(plane => plane.Plane == id).Title;

    /// <summary>"4 rolls", and "1 roll": the unit comes as a plural.</summary>
    private static string Counted(decimal quantity, string unit) => string.Create(
        CultureInfo.InvariantCulture,
        $"{quantity:#,0.##} {(quantity == 1 ? unit.Replace("feet", "foot").TrimEnd('s') : unit)}");

    // Millimetres come exact; inches to four decimals, which is enough to draw a place.
    private static long FromMm(decimal mm) => (long)Math.Round(mm * NmPerMm);

    private static long FromIn(decimal inches) => (long)Math.Round(inches * NmPerInch);

    private static string Shown(decimal number) =>
        number.ToString("0.##", CultureInfo.InvariantCulture);
}
