using System.Globalization;
using PostFrame.Documents;

namespace PostFrame.ServicesTests.Documents;

/// <summary>Buildings to draw, laid out by the worked take-offs W1, W2, W4 and W5.</summary>
internal static class SampleBuildings
{
    public static readonly BuildingMap PlainGable = Map("Plain gable",
        Strips("roof", "Roof, over the ridge", PlaneKind.Roof, "R", 480, 379.47, 48, 396) with
        {
            Lines = [new("ridge", 0, 480, 189.74)],
        },
        Strips("sidewallA", "Sidewall A", PlaneKind.Sidewall, "SA", 480, 120, 48, 126) with
        {
            Openings = [new("walk door", 200, 236, 0, 80)],
        },
        Strips("sidewallB", "Sidewall B", PlaneKind.Sidewall, "SB", 480, 120, 48, 126) with
        {
            Openings = [new("window", 100, 148, 40, 80), new("window", 300, 348, 40, 80)],
        },
        Endwall(1, 48, null, (0, 120), (180, 180), (360, 120)),
        Endwall(2, 48, null, (0, 120), (180, 180), (360, 120)));

    public static readonly BuildingMap VentedWithDoor = Map("Overhead door, ridge vent, panels",
        Strips("roofA", "Roof A", PlaneKind.Roof, "RA", 720, 252.98, 60, 270) with
        {
            Openings = [new("translucent panel", 300, 336, 20, 230)],
            Lines = [new("ridge vent", 0, 720, 252.98, true)],
        },
        Strips("roofB", "Roof B", PlaneKind.Roof, "RB", 720, 252.98, 60, 270) with
        {
            Lines = [new("ridge vent", 120, 600, 252.98, true)],
        },
        Strips("sidewallA", "Sidewall A", PlaneKind.Sidewall, "SA", 720, 168, 60, 174),
        Strips("sidewallB", "Sidewall B", PlaneKind.Sidewall, "SB", 720, 168, 60, 174),
        Endwall(1, 60, new("overhead door", 120, 360, 0, 144), (0, 168), (240, 248), (480, 168)),
        Endwall(2, 60, null, (0, 168), (240, 248), (480, 168)));

    public static readonly BuildingMap Gambrel = Map("Gambrel",
        Strips("roofA", "Roof A", PlaneKind.Roof, "RA", 600, 300.94, 60, 318) with
        {
            Lines = [new("break", 0, 600, 139.94)],
        },
        Strips("roofB", "Roof B", PlaneKind.Roof, "RB", 600, 300.94, 60, 318) with
        {
            Lines = [new("break", 0, 600, 139.94)],
        },
        Strips("sidewallA", "Sidewall A", PlaneKind.Sidewall, "SA", 600, 108, 60, 114),
        Strips("sidewallB", "Sidewall B", PlaneKind.Sidewall, "SB", 600, 108, 60, 114),
        Endwall(1, 60, new("sliding door", 120, 312, 0, 120),
            (0, 108), (72, 228), (216, 300), (360, 228), (432, 108)),
        Endwall(2, 60, null, (0, 108), (72, 228), (216, 300), (360, 228), (432, 108)));

    public static readonly BuildingMap LeanTos = Map("Lean-tos on both sides",
        Strips("roofA", "Roof A", PlaneKind.Roof, "RA", 576, 202.39, 48, 216),
        Strips("roofB", "Roof B", PlaneKind.Roof, "RB", 576, 202.39, 48, 216),
        Strips("leanRoofA", "Lean-to roof A", PlaneKind.Roof, "LRA", 576, 145.99, 48, 162),
        Strips("leanSidewallA", "Lean-to sidewall A", PlaneKind.Sidewall, "LSA", 576, 144, 48, 150),
        Strips("leanRoofB", "Lean-to roof B", PlaneKind.Roof, "LRB", 576, 145.99, 48, 162),
        Strips("leanSidewallB", "Lean-to sidewall B", PlaneKind.Sidewall, "LSB", 576, 144, 48, 150),
        Endwall(1, 48, null, (0, 144), (144, 168), (336, 232), (528, 168), (672, 144)),
        Endwall(2, 48, null, (0, 144), (144, 168), (336, 232), (528, 168), (672, 144)));

    public static readonly BuildingMap WallsOnly = Map("Walls only",
        Strips("sidewallA", "Sidewall A", PlaneKind.Sidewall, "SA", 480, 120, 48, 126),
        Strips("sidewallB", "Sidewall B", PlaneKind.Sidewall, "SB", 480, 120, 48, 126),
        Endwall(1, 48, null, (0, 120), (180, 180), (360, 120)),
        Endwall(2, 48, null, (0, 120), (180, 180), (360, 120)));

    /// <summary>60 × 200 ft in 36 in strips: 67 to a side, each a sliver on the map.</summary>
    public static readonly BuildingMap ManyNarrowStrips = Map("Long building",
        Strips("roofA", "Roof A", PlaneKind.Roof, "RA", 2400, 379.5, 36, 396),
        Strips("roofB", "Roof B", PlaneKind.Roof, "RB", 2400, 379.5, 36, 396),
        Strips("sidewallA", "Sidewall A", PlaneKind.Sidewall, "SA", 2400, 192, 36, 198),
        Strips("sidewallB", "Sidewall B", PlaneKind.Sidewall, "SB", 2400, 192, 36, 198),
        Endwall(1, 36, new("bi-fold door", 180, 540, 0, 168), (0, 192), (360, 312), (720, 192)),
        Endwall(2, 36, null, (0, 192), (360, 312), (720, 192)));

    /// <summary>
    /// Vented 40 × 64 ft, a lean-to dropped 1 ft below the eave of side A: a band of sidewall is
    /// left, made as one piece lying across, and the lean-to's endwalls are runs of their own.
    /// </summary>
    public static readonly BuildingMap DroppedLeanTo = Map("Dropped lean-to",
        Strips("roofA", "Roof A", PlaneKind.Roof, "RA", 768, 252.98, 48, 264) with
        {
            Lines = [new("ridge", 0, 768, 252.98), new("ridge vent", 0, 768, 252.98, true)],
        },
        Strips("roofB", "Roof B", PlaneKind.Roof, "RB", 768, 252.98, 48, 264),
        Strips("sidewallA", "Sidewall A", PlaneKind.Sidewall, "SA", 768, 12, 768, 18),
        Strips("leanRoofA", "Lean-to A roof", PlaneKind.Roof, "LRA", 768, 145.99, 48, 162),
        Strips("leanSidewallA", "Lean-to A sidewall", PlaneKind.Sidewall, "LSA", 768, 108, 48, 114),
        Strips("sidewallB", "Sidewall B", PlaneKind.Sidewall, "SB", 768, 144, 48, 150),
        Endwall(1, 48, null, (0, 144), (240, 224), (480, 144)),
        Endwall(2, 48, null, (0, 144), (240, 224), (480, 144)),
        LeanEndwall(1),
        LeanEndwall(2));

    public static readonly IReadOnlyList<BuildingMap> All =
    [
        PlainGable, VentedWithDoor, Gambrel, LeanTos, DroppedLeanTo, WallsOnly, ManyNarrowStrips,
    ];

    /// <summary>
    /// Labels of every piece; ids as Orders issues them, roof pieces for two people.
    /// </summary>
    public static LabelSet Labels(BuildingMap map) => new()
    {
        OrderNumber = "PF-1001",
        Revision = 1,
        ShipTo = "Cedar Bend Farm",
        Map = map,
        Labels = [.. map.Planes.SelectMany(plane => plane.Strips.Select(strip => new PieceLabel
        {
            PieceId = PieceId(strip.Mark),
            Mark = strip.Mark,
            Kind = plane.Kind,
            PlaneTitle = plane.Title,
            StripText = $"strip {strip.Mark[^2..]} of {plane.Strips.Count}",
            CutText = strip.LengthText,
            CutAlsoText = "396 in · 10058 mm",
            WidthText = "48 in",
            WidthAlsoText = "1219 mm",
            ProductText = "Faced blanket, 3 in, white · nominal R-10 before installation",
            FacingText = "White facing toward the inside; the tab laps over the next strip",
            WeightLb = plane.Kind == PlaneKind.Roof ? 57.2 : 23.1,
        }))],
    };

    public static PackingList Packing(BuildingMap map)
    {
        var number = 0;
        return new PackingList
        {
            OrderNumber = "PF-1001",
            Revision = 1,
            ShipTo = "Cedar Bend Farm",
            NeededBy = "2026-12-04",
            Map = map,
            Planes = [.. map.Planes.Select(plane => new PackedPlane
            {
                PlaneId = plane.Id,
                ProductText = "Faced blanket, 3 in, reinforced white · nominal R-10",
                TotalLengthText = "330 ft",
                Pieces = [.. plane.Strips.Select(strip => new PackedPiece
                {
                    Mark = strip.Mark,
                    PieceId = PieceId(strip.Mark),
                    CutText = strip.LengthText,
                    WidthText = "48 in",
                    WeightLb = plane.Kind == PlaneKind.Roof ? 57.2 : 23.1,
                    LabelNumber = ++number,
                })],
            })],
            Accessories = [new("Lap and patch tape, 3 in × 180 ft", "4 rolls")],
            Cautions =
            [
                .. Enumerable.Range(1, 12).Select(n => new PrintedCaution(
                    $"Caution {n}", string.Concat(Enumerable.Repeat("Mind the edge. ", 20)),
                    "common practice")),
            ],
            StandingLine = "This sheet helps you cut and lay blanket. It is not a building plan.",
        };
    }

    public static string PieceId(string mark) => "4K-"
        + mark.Replace("-", "", StringComparison.Ordinal).Replace('0', 'Z').Replace('1', 'Y');

    private static BuildingMap Map(string title, params MapPlane[] planes) => new()
    {
        Title = title,
        Summary = "drawn for a test",
        Planes = planes,
    };

    private static MapPlane Strips(
        string id, string title, PlaneKind kind, string code,
        double runIn, double upIn, double widthIn, double cutIn) => new()
        {
            Id = id,
            Title = title,
            Kind = kind,
            OutlineIn = [new(0, 0), new(runIn, 0), new(runIn, upIn), new(0, upIn)],
            Strips = [.. Enumerable.Range(1, (int)Math.Ceiling(runIn / widthIn)).Select(
            strip => new MapStrip
            {
                Mark = string.Create(CultureInfo.InvariantCulture, $"{code}-{strip:00}"),
                LengthText = Feet(cutIn),
                FromIn = (strip - 1) * widthIn,
                ToIn = strip * widthIn,
                BottomIn = 0,
                TopIn = cutIn,
            })],
        };

    private static MapPlane Endwall(
        int number, double widthIn, MapOpening? door, params (double Across, double Up)[] profile)
    {
        var runIn = profile[^1].Across;
        return new MapPlane
        {
            Id = $"endwall{number}",
            Title = $"Endwall {number}",
            Kind = PlaneKind.Endwall,
            OutlineIn =
            [
                new(0, 0), new(runIn, 0),
                .. profile.Reverse().Select(p => new MapPoint(p.Across, p.Up)),
            ],
            Strips =
            [
                .. Enumerable.Range(0, (int)Math.Ceiling(runIn / widthIn)).Select(i => EndStrip(
                    number, i, i * widthIn, Math.Min(runIn, (i + 1) * widthIn), door, profile)),
            ],
            Openings = door is null ? [] : [door],
        };
    }

    private static MapPlane LeanEndwall(int number)
    {
        var plane = Endwall(number, 48, null, (0, 108), (144, 132));
        return plane with
        {
            Id = $"leanEndwallA{number}",
            Title = $"Lean-to A endwall {number}",
            Strips = [.. plane.Strips.Select(strip => strip with
            {
                Mark = strip.Mark.Replace("E", "LEA", StringComparison.Ordinal),
            })],
        };
    }

    private static MapStrip EndStrip(
        int number, int index, double fromIn, double toIn, MapOpening? door,
        (double Across, double Up)[] profile)
    {
        var isHeader = door is not null && door.FromIn <= fromIn && toIn <= door.ToIn;
        var bottomIn = isHeader ? door!.TopIn : 0;
        var topIn = profile.Where(p => p.Across > fromIn && p.Across < toIn).Select(p => p.Up)
            .Append(Up(profile, fromIn)).Append(Up(profile, toIn)).Max();
        var cutIn = Math.Ceiling((topIn - bottomIn + 6 - 0.0625) / 6) * 6;
        return new MapStrip
        {
            Mark = string.Create(
                CultureInfo.InvariantCulture, $"E{number}-{index + 1:00}{(isHeader ? "H" : "")}"),
            LengthText = Feet(cutIn),
            FromIn = fromIn,
            ToIn = toIn,
            BottomIn = bottomIn,
            TopIn = topIn,
        };
    }

    private static double Up((double Across, double Up)[] profile, double across)
    {
        var i = Array.FindLastIndex(profile, p => p.Across <= across);
        return i == profile.Length - 1
            ? profile[i].Up
            : profile[i].Up + (across - profile[i].Across)
                * (profile[i + 1].Up - profile[i].Up) / (profile[i + 1].Across - profile[i].Across);
    }

    private static string Feet(double inches) => string.Create(
        CultureInfo.InvariantCulture, $"{Math.Floor(inches / 12)} ft {inches % 12:0.##} in");
}
