using System.Globalization;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;

namespace PostFrame.Engine;

/// <summary>Writes a job up as a result.</summary>
internal static class Answer
{
    public static SizingResult Of(Job job, PriceList? prices)
    {
        var goods = AreaTakeOff.Of(job);
        var accessories = new Accessories(job).All();
        return new()
        {
            Building = Summary(job),
            Pieces = job.Pieces,
            Schedule = Schedule(job),
            Planes = job.Planes,
            Uncovered = [.. job.Plan.Uncovered.Select(p =>
                new UncoveredPlane(p.Id, p.Code, p.Title, p.Kind, p.Outline()))],
            Totals = Totals(job),
            Assumptions = Assumptions.Of(job),
            Warnings = Warnings.Of(job),
            Cautions = Cautions.Of(job),
            Stock = Stock(job),
            AreaGoods = goods,
            Accessories = accessories,
            Packing = new Packer(job).Pack(),
            PossibleSavings = job.Savings,
            Choices = job.Choices,
            Price = Pricing.Of(job, goods, accessories, prices),
        };
    }

    private static BuildingSummary Summary(Job job)
    {
        var building = job.Building;
        var eave = building.Roof.Profile.Start.Up;
        return new()
        {
            Name = building.Name,
            Form = building.Form,
            Width = building.Width,
            Length = building.Length,
            EaveHeight = eave,
            RidgeHeight = building.Roof.Profile.Highest.Up,
            Ridge = building.Vent is null ? RidgeKind.Closed : RidgeKind.Vented,
            Profile = WallPlanes.EndwallProfile(building, 1).Points,
            Metric = job.Metric,
            Summary = $"{building.Width.SayRounded(job.Metric)} × "
                + $"{building.Length.SayRounded(job.Metric)} × {eave.SayRounded(job.Metric)}, "
                + $"{FormWords(building.Form)} {Slopes(building, job.Given.Roof!)}",
        };
    }

    private static string FormWords(RoofForm form) => form switch
    {
        RoofForm.OffsetRidge => "offset ridge",
        RoofForm.DoublePitch => "double pitch",
        _ => RoofMembers.Word(form),
    };

    /// <summary>From eave to ridge as the request told it; both sides where they differ.</summary>
    private static string Slopes(Building building, RoofInput given)
    {
        Slope[] told = [.. new[]
        {
            given.Slope, given.SlopeA, given.SlopeB, given.LowerSlope, given.UpperSlope,
            given.HalfOctagon ? Slope.FromDegrees(67.5) : null,
            given.HalfOctagon ? Slope.FromDegrees(22.5) : null,
        }.OfType<Slope>()];
        if (building.Roof.Ridge is null) return Side(RoofPlanes.Over(building));
        var (a, b) = (Side(RoofPlanes.OnSide(building, BuildingSide.A)),
            Side(RoofPlanes.OnSide(building, BuildingSide.B)));
        return a == b ? a : $"A {a}, B {b}";

        string Side(Plane plane) => string.Join(" and ", plane.Slopes
            .Where(s => !s.IsOverhang).Select(s => Words(s.Slope)));

        string Words(Slope slope) => told.Where(t =>
                Math.Abs(t.RiseOverRun - slope.RiseOverRun) < 1e-5)
            .Select(t => $"{t}").FirstOrDefault()
            ?? (building.Metric
                ? string.Create(CultureInfo.InvariantCulture, $"{slope.TotalDegrees:0.#}°")
                : $"{slope}");
    }

    private static IReadOnlyList<ScheduleLine> Schedule(Job job) =>
    [
        .. job.Pieces
            .GroupBy(p => (p.Plane, p.Product, p.Role, p.Width, p.Cut))
            .Select(g => new ScheduleLine(
                g.Key.Plane, g.Key.Product, g.Key.Role, g.Key.Width, g.Key.Cut, g.Count())),
    ];

    private static SizingTotals Totals(Job job)
    {
        var gross = job.Pieces.Aggregate(Area.Zero, (sum, p) => sum + Area.Of(p.Width, p.Cut));
        var rolled = job.Planes.Where(p => p.Strips > 0);
        var net = rolled.Aggregate(Area.Zero, (sum, p) => sum + p.Net);
        return new(
            job.Pieces.Count,
            job.Pieces.Aggregate(Length.Zero, (sum, p) => sum + p.Cut), gross, net,
            net.TotalSquareFeet > 0 ? gross.TotalSquareFeet / net.TotalSquareFeet : 0,
            job.Pieces.Aggregate(Mass.FromPounds(0), (sum, p) => sum + p.Weight));
    }

    private static IReadOnlyList<StockLine> Stock(Job job) =>
    [
        .. job.Pieces.Select(p => (p.Product, p.Width)).Distinct()
            .OrderBy(p => p.Product, StringComparer.Ordinal).ThenBy(p => p.Width)
            .Select(p => new StockLine(
                p.Product, p.Width,
                job.ProductOf(p.Product).Rolls.First(r => r.Width == p.Width).RollLength,
                job.Practice.EndTrim, job.Practice.MinUsefulOffcut)),
    ];
}
