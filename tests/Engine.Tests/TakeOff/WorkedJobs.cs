using PostFrame.Engine;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;
using static PostFrame.EngineTests.TakeOff.Ask;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>The eight worked buildings of takeoff.md section 7, as requests.</summary>
internal static class WorkedJobs
{
    public static SizingInput Get(string name) => name switch
    {
        "W1" => W1,
        "W2" => W2,
        "W3" => W3,
        "W4" => W4,
        "W5" => W5,
        "W6" => W6,
        "W7" => W7,
        "W8" => W8,
        _ => throw new ArgumentOutOfRangeException(nameof(name)),
    };

    public static SizingInput W1 => Job(
        360, 480, 120, Gable(4), Roof(48, RoofLayout.OverRidge), Cover(48, Walls))
        .WithOpenings(
            Opening("sidewallA", OpeningKind.WalkDoor, 36, 80, 72),
            Opening("sidewallA", OpeningKind.Window, 48, 36, 192, 42),
            Opening("sidewallB", OpeningKind.Window, 48, 36, 192, 42));

    public static SizingInput W2 => Job(
        480, 720, 168, Gable(4), Roof(60, RoofLayout.EaveToRidge), Cover(60, Walls))
        .WithOpenings(
            Opening("endwall1", OpeningKind.OverheadDoor, 240, 144, 120),
            Opening("sidewallA", OpeningKind.WalkDoor, 36, 80, 72));

    public static SizingInput W3 => Job(
        288, 576, 120, new() { Form = RoofForm.Monoslope, Slope = Pitch(2) },
        Cover(72, "roof"), Cover(72, Walls));

    public static SizingInput W4 => Job(
        432, 600, 108,
        new()
        {
            Form = RoofForm.Gambrel,
            LowerSlope = Pitch(20),
            LowerRun = In(72),
            UpperSlope = Pitch(6),
        },
        Roof(60, RoofLayout.EaveToRidge), Cover(60, Walls));

    public static SizingInput W5 => Job(
        384, 576, 168, Gable(4),
        Roof(48, RoofLayout.EaveToRidge, "roof", "leanRoofA", "leanRoofB"),
        Cover(48, "leanSidewallA", "leanSidewallB", "endwall1", "endwall2"))
        .With(b => b with { LeanTos = [Lean(BuildingSide.A), Lean(BuildingSide.B)] });

    public static SizingInput W6 => Job(312, 456, 132, Gable(4), Cover(48, Walls))
        .WithOpenings(Opening("sidewallA", OpeningKind.SlidingDoor, 120, 120, 144));

    public static SizingInput W7 => Job(
        576, 960, 144, Gable(3, RidgeKind.Vented), Roof(60, RoofLayout.EaveToRidge))
        .With(b => b with
        {
            Roof = b.Roof! with
            {
                EaveOverhang = In(12),
                TranslucentPanels =
                [
                    new() { FromStart = In(240), Width = In(36) },
                    new() { FromStart = In(600), Width = In(36) },
                ],
            },
        })
        .WithPractice(p => p with { RoundUpTo = In(1) });

    public static SizingInput W8 => new()
    {
        Metric = true,
        Building = new()
        {
            Width = Mm(12_000),
            Length = Mm(18_000),
            EaveHeight = Mm(4_200),
            Roof = new() { Form = RoofForm.Gable, Slope = Slope.FromDegrees(15) },
        },
        Insulation =
        [
            new()
            {
                Planes = ["roof"], Product = "blanket-3-white", RollWidth = Mm(1200),
                RoofLayout = RoofLayout.EaveToRidge,
            },
            new() { Planes = Walls, Product = "blanket-3-white", RollWidth = Mm(1200) },
        ],
    };

    private static LeanToInput Lean(BuildingSide side) => new()
    {
        Side = side,
        Width = In(144),
        Slope = Pitch(2),
        Inside = LeanToInside.Open,
    };
}
