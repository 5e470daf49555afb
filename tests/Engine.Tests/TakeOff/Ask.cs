using PostFrame.Engine;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;
using Xunit;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>Requests in few words, sizes in inches.</summary>
internal static class Ask
{
    public static readonly string[] Walls = ["sidewallA", "sidewallB", "endwall1", "endwall2"];

    public static Length In(double inches) => Length.FromInches(inches);

    public static Length Mm(double millimetres) => Length.FromMillimetres(millimetres);

    public static Slope Pitch(double x) => Slope.FromRisePer12(x);

    public static SizingInput Job(
        double width, double length, double eave, RoofInput roof,
        params InsulationInput[] insulation) => new()
        {
            Building = new()
            {
                Width = In(width),
                Length = In(length),
                EaveHeight = In(eave),
                Roof = roof,
            },
            Insulation = insulation,
            Practice = new() { RoundUpTo = In(6) },
        };

    public static RoofInput Gable(double x, RidgeKind ridge = RidgeKind.Closed) =>
        new() { Form = RoofForm.Gable, Slope = Pitch(x), Ridge = ridge };

    public static InsulationInput Cover(double width, params string[] planes) => new()
    {
        Planes = planes,
        Product = "blanket-3-white",
        RollWidth = In(width),
    };

    public static InsulationInput Roof(
        double width, RoofLayout layout, params string[] planes) => new()
        {
            Planes = planes.Length > 0 ? planes : ["roof"],
            Product = "blanket-3-white",
            RollWidth = In(width),
            RoofLayout = layout,
        };

    public static SizingInput With(this SizingInput job, Func<BuildingInput, BuildingInput> change)
        => job with { Building = change(job.Building!) };

    public static SizingInput WithOpenings(this SizingInput job, params OpeningInput[] openings) =>
        job.With(b => b with { Openings = openings });

    public static SizingInput WithPractice(
        this SizingInput job, Func<PracticeInput, PracticeInput> change) =>
        job with { Practice = change(job.Practice) };

    public static OpeningInput Opening(
        string wall, OpeningKind kind, double width, double height, double? from,
        double? sill = null) => new()
        {
            Wall = wall,
            Kind = kind,
            Width = In(width),
            Height = In(height),
            FromStart = from is { } f ? In(f) : null,
            Sill = sill is { } s ? In(s) : null,
        };

    /// <summary>The result; fails with the violations when there are any.</summary>
    public static SizingResult Sized(this SizingInput job)
    {
        var outcome = Sizing.Size(job);
        Assert.True(outcome.Result is not null, string.Join("\n", outcome.Violations));
        return outcome.Result;
    }

    public static IReadOnlyList<Violation> Refused(this SizingInput job)
    {
        var outcome = Sizing.Size(job);
        Assert.Null(outcome.Result);
        return outcome.Violations;
    }

    public static Piece PieceAt(this SizingResult result, string mark) =>
        Assert.Single(result.Pieces, p => p.Mark == mark);

    public static PlaneResult PlaneAt(this SizingResult result, string plane) =>
        Assert.Single(result.Planes, p => p.Plane == plane);
}
