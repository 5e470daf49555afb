using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.TakeOff;

/// <summary>
/// The products a request may name. Codes are our own. Every figure is a default to be replaced by
/// the shop's product data, and says where it comes from.
/// </summary>
public static class ProductCatalogue
{
    private const string Sheet =
        "from memory, typical of faced blanket; replace by the product data";
    private const string Bubble =
        "from memory, typical of foil bubble sheet; replace by the product data";
    private const string Area = "typical of the kind; replace by the product's own data";

    /// <summary>Every product, in catalogue order.</summary>
    public static IReadOnlyList<Product> All { get; } =
    [
        Blanket(2, 7, 100, 40, 0.11, false), Blanket(2, 7, 100, 40, 0.11, true),
        Blanket(3, 10, 100, 30, 0.16, false), Blanket(3, 10, 100, 30, 0.16, true),
        TwoTabs(Blanket(3, 10, 100, 30, 0.16, false)),
        Blanket(4, 13, 100, 30, 0.21, false), Blanket(4, 13, 100, 30, 0.21, true),
        Blanket(6, 19, 75, 20, 0.30, false), Blanket(6, 19, 75, 20, 0.30, true),
        BubbleFoil(), Flanged(BubbleFoil()),
        SprayFoam("spray-foam-closed", "Closed-cell spray foam", 2, 6.5, 2.0, 0.8),
        SprayFoam("spray-foam-open", "Open-cell spray foam", 3.5, 3.7, 0.5, 8),
        Batt("batt-3-5-unfaced", "3½ in", 3.5, 13, 0.18, 88),
        Batt("batt-5-5-unfaced", "5½ in", 5.5, 21, 0.30, 60),
        Board("board-2-eps", "Expanded polystyrene board", 2, 8, 0.17, 1.0),
        Board("board-2-xps", "Extruded polystyrene board", 2, 10, 0.30, 0.6),
    ];

    private static readonly Dictionary<string, Product> ByCode = All.ToDictionary(p => p.Code);

    /// <summary>The product with this code; null when there is none.</summary>
    public static Product? Find(string? code) =>
        code is not null && ByCode.TryGetValue(code, out var product) ? product : null;

    private static Product Blanket(
        int inches, double r, double rollFeet, double rollMetres, double poundsPerFt2, bool foil) =>
        new()
        {
            Code = $"blanket-{inches}-{(foil ? "foil" : "white")}",
            Title = $"{inches} in faced glass-fibre blanket, {(foil ? "bright foil" : "white")}",
            MetricTitle = $"{Millimetres(inches)} faced glass-fibre blanket, "
                + (foil ? "bright foil" : "white"),
            Kind = ProductKind.Blanket,
            Facing = foil
            ? "reinforced bright foil (foil, scrim, kraft)"
            : "reinforced white film (polypropylene, scrim, kraft)",
            Thickness = new(Length.FromInches(inches), "C", "nominal, before laying"),
            NominalR = new(ThermalResistance.FromRValue(r), "M", inches == 2
            ? Sheet + ": R-6 to R-7"
            : Sheet),
            Construction = new(
                StripConstruction.TabOutside, "C", "common practice, no source: one 3 in tab"),
            Tab = Length.FromInches(3),
            Rolls =
            [
                .. InchRolls([36, 48, 60, 72], rollFeet),
                .. MetricRolls([1200, 1500], rollMetres),
            ],
            PoundsPerSquareFoot = new(poundsPerFt2, "M", Sheet),
            Perm = foil
            ? new(0.02, "M", "from memory: foil/scrim/kraft about 0.02")
            : new(0.09, "M", "from memory: reinforced white 0.02 to 0.09"),
            RoomFaceEmittance = foil
            ? new(0.05, "M", "clean bright foil; dust and wet raise it")
            : new(0.9, "M", "plastics and paint of any colour"),
            CladdingFaceEmittance = new(0.9, "M", "bare glass fibre"),
            CoiledThickness = new(
            Length.FromInches(inches / 3.0), "C",
                "common practice, no source: 3 in squeezed to 1 in"),
        };

    private static Product TwoTabs(Product blanket) => blanket with
    {
        Code = $"{blanket.Code}-two-tabs",
        Title = $"{blanket.Title}, a tab on each side",
        MetricTitle = $"{blanket.MetricTitle}, a tab on each side",
        Construction = new(
            StripConstruction.TwoTabs, "C", "common practice, no source: two 3 in tabs"),
    };

    private static Product Flanged(Product sheet) => sheet with
    {
        Code = $"{sheet.Code}-flange",
        Title = $"{sheet.Title}, self-adhesive flange",
        MetricTitle = $"{sheet.MetricTitle}, self-adhesive flange",
        Construction = new(
            StripConstruction.FlangeOutside, "M", Bubble + ", flange of 2 in outside the width"),
        Tab = Length.FromInches(2),
        LapInsideWidth = Length.Zero,
    };

    private static Product BubbleFoil() => new()
    {
        Code = "bubble-foil",
        Title = "Foil-faced bubble sheet, 5/16 in",
        MetricTitle = $"Foil-faced bubble sheet, {Millimetres(5.0 / 16)}",
        Kind = ProductKind.BubbleSheet,
        Facing = "bright foil on both sides",
        Thickness = new(Length.FromInches(5.0 / 16), "M", Bubble + ", single bubble"),
        NominalR = new(ThermalResistance.FromRValue(1.1), "M",
            "common practice, no source: the sheet alone is R 1.0 to 1.2"),
        Construction = new(StripConstruction.LapInside, "M", Bubble + ", 2 in lap inside"),
        LapInsideWidth = Length.FromInches(2),
        Rolls = [.. InchRolls([24, 48, 60, 72], 100), .. MetricRolls([1200, 1500], 35)],
        PoundsPerSquareFoot = new(0.06, "M", Bubble + ": 0.04 to 0.08"),
        Perm = new(0.02, "M", "foil without holes; seams not counted"),
        RoomFaceEmittance = new(0.05, "M", "clean bright foil; dust and wet raise it"),
        CladdingFaceEmittance = new(0.05, "M", "clean bright foil, only where air is enclosed"),
        CoiledThickness = new(Length.FromInches(0.25), "M", "bubbles hardly squeeze"),
    };

    private static Product SprayFoam(
        string code, string title, double inches, double rPerInch, double pcf, double perm) => new()
        {
            Code = code,
            Title = title,
            Kind = ProductKind.SprayFoam,
            Thickness = new(Length.FromInches(inches), "M", "a usual pass; ask for another"),
            NominalR = new(ThermalResistance.FromRValue(rPerInch * inches), "M", Area),
            Construction = new(StripConstruction.None, "C", "sprayed"),
            RollsMark = "C",
            PoundsPerSquareFoot = new(pcf * inches / 12, "M", Area),
            Perm = new(perm, "M", Area),
            RoomFaceEmittance = new(0.9, "M", "plastics"),
            CladdingFaceEmittance = new(0.9, "M", "touches the cladding"),
        };

    private static Product Batt(
        string code, string thick, double inches, double r, double poundsPerFt2, double bagFt2) =>
        new()
        {
            Code = code,
            Title = $"Unfaced glass-fibre batt, {thick}",
            MetricTitle = $"Unfaced glass-fibre batt, {Millimetres(inches)}",
            Kind = ProductKind.Batt,
            Thickness = new(Length.FromInches(inches), "C", "nominal"),
            NominalR = new(ThermalResistance.FromRValue(r), "M", Area),
            Construction = new(StripConstruction.None, "C", "between framing"),
            RollsMark = "C",
            PoundsPerSquareFoot = new(poundsPerFt2, "M", Area),
            Perm = new(50, "M", "glass fibre hardly holds back vapour"),
            RoomFaceEmittance = new(0.9, "M", "bare glass fibre"),
            CladdingFaceEmittance = new(0.9, "M", "bare glass fibre"),
            UnitCoverageFt2 = new(bagFt2, "M", Area),
        };

    private static Product Board(
        string code, string kind, int inches, double r, double poundsPerFt2, double perm) =>
        new()
        {
            Code = code,
            Title = $"{kind}, {inches} in",
            MetricTitle = $"{kind}, {Millimetres(inches)}",
            Kind = ProductKind.Board,
            Thickness = new(Length.FromInches(inches), "C", "nominal"),
            NominalR = new(ThermalResistance.FromRValue(r), "M", Area),
            Construction = new(StripConstruction.None, "C", "in sheets"),
            RollsMark = "C",
            PoundsPerSquareFoot = new(poundsPerFt2, "M", Area),
            Perm = new(perm, "M", Area),
            RoomFaceEmittance = new(0.9, "M", "plastics"),
            CladdingFaceEmittance = new(0.9, "M", "plastics"),
            UnitCoverageFt2 = new(32, "C", "a 4 × 8 ft sheet"),
        };

    private static string Millimetres(double inches) =>
        $"{Math.Round(Length.FromInches(inches).TotalMillimetres)} mm";

    private static RollSize[] InchRolls(int[] widthsIn, double rollFeet) =>
        [.. widthsIn.Select(w => new RollSize(
            Length.FromInches(w), Length.FromFeet(rollFeet), Metric: false))];

    /// <summary>Metric widths come in whole metres within the range of 4.1 and 4.2.
    /// </summary>
    private static RollSize[] MetricRolls(int[] widthsMm, double rollMetres) =>
        [.. widthsMm.Select(w => new RollSize(
            Length.FromMillimetres(w), Length.FromMillimetres(rollMetres * 1000),
            Metric: true))];
}
