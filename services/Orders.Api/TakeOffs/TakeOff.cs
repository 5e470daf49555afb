namespace PostFrame.OrdersApi.TakeOffs;

/// <summary>What orders reads of a sizing answer. Inches and millimetres as sizing wrote
/// them.</summary>
internal sealed record TakeOff
{
    public required BuildingLine Building { get; init; }

    public required IReadOnlyList<PieceLine> Pieces { get; init; }

    public required IReadOnlyList<PlaneLine> Planes { get; init; }

    public required IReadOnlyList<CautionLine> Cautions { get; init; }

    public required IReadOnlyList<StockLine> Stock { get; init; }

    public IReadOnlyList<AccessoryLine> Accessories { get; init; } = [];

    /// <summary>Foam, batts and board: bought by area, in no piece.</summary>
    public IReadOnlyList<AreaGoodsLine> AreaGoods { get; init; } = [];

    public IReadOnlyList<WarningLine> Warnings { get; init; } = [];

    public sealed record BuildingLine(string Name, string Summary, string? Units);

    public sealed record PieceLine
    {
        public required string Mark { get; init; }

        public required string Plane { get; init; }

        public required int Strip { get; init; }

        public required string Role { get; init; }

        public required string Product { get; init; }

        public required decimal WidthIn { get; init; }

        public required decimal WidthMm { get; init; }

        public required decimal CutMm { get; init; }

        public required string CutText { get; init; }

        public required decimal FromIn { get; init; }

        public required decimal ToIn { get; init; }

        public required decimal BottomIn { get; init; }

        public required decimal TopIn { get; init; }

        public required double WeightLb { get; init; }
    }

    public sealed record PlaneLine
    {
        public required string Plane { get; init; }

        public required string Title { get; init; }

        public required string Kind { get; init; }

        public required string Product { get; init; }

        public required string ProductTitle { get; init; }

        public required int Strips { get; init; }

        public required decimal RunIn { get; init; }

        public decimal? StartIn { get; init; }

        public required IReadOnlyList<decimal[]> OutlineIn { get; init; }

        public required IReadOnlyList<OpeningLine> Openings { get; init; }

        public IReadOnlyList<RoofLine> Lines { get; init; } = [];

        public ThermalLine? Thermal { get; init; }
    }

    public sealed record RoofLine(string Kind, decimal FromIn, decimal ToIn, decimal UpIn);

    public sealed record OpeningLine(
        string Kind, decimal FromIn, decimal ToIn, decimal BottomIn, decimal TopIn);

    public sealed record ThermalLine(double NominalR);

    public sealed record CautionLine(string Id, string Topic, string Text, string Basis);

    public sealed record StockLine
    {
        public required string Product { get; init; }

        public required decimal WidthMm { get; init; }

        public required decimal RollLengthMm { get; init; }

        public required decimal EndTrimMm { get; init; }

        public required decimal MinUsefulOffcutMm { get; init; }
    }

    public sealed record AccessoryLine(string Title, int Quantity, string Unit);

    public sealed record AreaGoodsLine(
        string Title, IReadOnlyList<string> Planes, decimal Quantity, string Unit);

    public sealed record WarningLine(string Id, string Text);
}
