using PostFrame.Engine;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;
using Xunit;
using static PostFrame.EngineTests.TakeOff.Ask;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>Requests with one mistake each, the member it stands at and the rule it breaks.
/// </summary>
internal static class Mistakes
{
    public static SizingInput W1 => WorkedJobs.W1;

    private static SizingInput WithRoof(RoofInput roof) => Job(360, 480, 120, roof,
        Cover(48, "endwall1"));

    public static SizingInput WithOpening(OpeningInput opening) => W1.WithOpenings(opening);

    private static SizingInput WithLean(LeanToInput lean) =>
        W1.With(b => b with { LeanTos = [lean] });

    private static LeanToInput Lean => new()
    {
        Side = BuildingSide.B,
        Width = In(144),
        Slope = Pitch(2),
        Inside = LeanToInside.Cold,
    };

    private static SizingInput WithLine(Func<InsulationInput, InsulationInput> change) =>
        W1 with { Insulation = [change(W1.Insulation![0]), W1.Insulation[1]] };

    public static IEnumerable<(string Name, SizingInput Job, string Path, string Rule)> Shapes =>
    [
        ("no building", W1 with { Building = null }, "/building", "missing"),
        ("no width", W1.With(b => b with { Width = null }), "/building/width", "missing"),
        ("negative width", W1.With(b => b with { Width = In(-1) }), "/building/width", "too-small"),
        ("absurd width", W1.With(b => b with { Width = In(1e6) }), "/building/width", "too-large"),
        ("no length", W1.With(b => b with { Length = null }), "/building/length", "missing"),
        ("zero length", W1.With(b => b with { Length = In(0) }), "/building/length", "too-small"),
        ("absurd length", W1.With(b => b with { Length = In(1e9) }),
            "/building/length", "too-large"),
        ("low eave", W1.With(b => b with { EaveHeight = In(3) }),
            "/building/eaveHeight", "too-small"),
        ("no roof", W1.With(b => b with { Roof = null }), "/building/roof", "missing"),
        ("no form", WithRoof(new()), "/building/roof/form", "missing"),
        ("no slope", WithRoof(new() { Form = RoofForm.Gable }), "/building/roof/slope", "missing"),
        ("roof falls inward", WithRoof(Gable(-4)), "/building/roof/slope", "roof-falls-inward"),
        ("flat roof", WithRoof(Gable(0)), "/building/roof/slope", "too-small"),
        ("steep roof", WithRoof(Gable(61)), "/building/roof/slope", "too-large"),
        ("peak below eave", WithRoof(new() { Form = RoofForm.Gable, RidgeHeight = In(110) }),
            "/building/roof/ridgeHeight", "roof-falls-inward"),
        ("slope against peak", WithRoof(Gable(4) with { RidgeHeight = In(190) }),
            "/building/roof/ridgeHeight", "does-not-close"),
        ("member of another form", WithRoof(Gable(4) with { SlopeA = Pitch(3) }),
            "/building/roof/slopeA", "not-for-this-form"),
        ("monoslope downhill", WithRoof(
            new() { Form = RoofForm.Monoslope, EaveHeightB = In(100) }),
            "/building/roof/eaveHeightB", "roof-falls-inward"),
        ("monoslope vented", WithRoof(new()
            { Form = RoofForm.Monoslope, Slope = Pitch(2), Ridge = RidgeKind.Vented }),
            "/building/roof/ridge", "no-ridge"),
        ("ridge outside", WithRoof(new()
        {
            Form = RoofForm.OffsetRidge, SlopeA = Pitch(4), SlopeB = Pitch(4),
            RidgeFromSidewallA = In(400),
        }), "/building/roof/ridgeFromSidewallA", "too-large"),
        ("offset ridge without side B", WithRoof(new()
        {
            Form = RoofForm.OffsetRidge, SlopeA = Pitch(4), RidgeFromSidewallA = In(100),
        }), "/building/roof/slopeB", "missing"),
        ("eave B under ground", WithRoof(new()
        {
            Form = RoofForm.OffsetRidge, SlopeA = Pitch(2), SlopeB = Pitch(12),
            RidgeFromSidewallA = In(100),
        }), "/building/roof", "eave-out-of-range"),
        ("gambrel runs", WithRoof(new()
        {
            Form = RoofForm.Gambrel, LowerSlope = Pitch(20), UpperSlope = Pitch(6),
            LowerRun = In(60), UpperRun = In(100),
        }), "/building/roof/upperRun", "runs-do-not-add-up"),
        ("gambrel without upper part", WithRoof(new()
        {
            Form = RoofForm.Gambrel, LowerSlope = Pitch(20), UpperSlope = Pitch(6),
            LowerRun = In(180),
        }), "/building/roof/lowerRun", "runs-do-not-add-up"),
        ("gambrel upside down", WithRoof(new()
        {
            Form = RoofForm.Gambrel, LowerSlope = Pitch(6), UpperSlope = Pitch(20),
            LowerRun = In(60),
        }), "/building/roof/upperSlope", "gambrel-upper-not-flatter"),
        ("half octagon with slopes", WithRoof(new()
        {
            Form = RoofForm.Gambrel, HalfOctagon = true, UpperSlope = Pitch(6),
        }), "/building/roof/upperSlope", "not-with-half-octagon"),
        ("profile with one point", WithRoof(new()
            { Form = RoofForm.Profile, Points = [new() { Across = In(0), Up = In(120) }] }),
            "/building/roof/points", "points-count"),
        ("profile backwards", WithRoof(Drawn((0, 120), (200, 180), (190, 170), (360, 120))),
            "/building/roof/points/2/across", "not-rightwards"),
        ("profile with a valley", WithRoof(Drawn((0, 120), (90, 180), (180, 140), (360, 190))),
            "/building/roof/points/2/up", "roof-falls-inward"),
        ("profile with a level part", WithRoof(Drawn((0, 120), (90, 180), (180, 180), (360, 120))),
            "/building/roof/points/2/up", "too-small"),
        ("profile flatter than 1/4:12",
            WithRoof(Drawn((0, 120), (120, 122), (240, 180), (360, 120))),
            "/building/roof/points/1/up", "too-small"),
        ("profile too flat on its far side", WithRoof(Drawn((0, 120), (120, 180), (360, 176))),
            "/building/roof/points/2/up", "too-small"),
        ("profile as steep as a wall", WithRoof(Drawn((0, 120), (10, 180), (360, 120))),
            "/building/roof/points/1/up", "too-large"),
        ("profile off the width", WithRoof(Drawn((0, 120), (180, 180), (350, 120))),
            "/building/roof/points/2/across", "does-not-close"),
        ("profile off the eave", WithRoof(Drawn((0, 100), (180, 180), (360, 120))),
            "/building/roof/points/0/up", "does-not-close"),
        ("ridge so low that the roof is too flat",
            WithRoof(new() { Form = RoofForm.Gable, RidgeHeight = In(121) }),
            "/building/roof/ridgeHeight", "too-small"),
        ("high eave so low that the roof is too flat",
            WithRoof(new() { Form = RoofForm.Monoslope, EaveHeightB = In(121) }),
            "/building/roof/eaveHeightB", "too-small"),
        ("eave B so high that its side is too flat", WithRoof(new()
        {
            Form = RoofForm.OffsetRidge, RidgeFromSidewallA = In(120), SlopeA = Pitch(1),
            EaveHeightB = In(129),
        }), "/building/roof/eaveHeightB", "too-small"),
        ("heel without a bearing", W1.With(b => b with { HeelHeight = In(6) }),
            "/building/heelHeight", "means-nothing"),
        ("purlins without a bearing", W1.With(b => b with { PurlinDepth = In(5.5) }),
            "/building/purlinDepth", "means-nothing"),
        ("posts without a clear span", W1.With(b => b with { PostDepth = In(5.5) }),
            "/building/postDepth", "means-nothing"),
        ("strip base above itself", W1.With(b => b with { StripBaseAboveDatum = In(8) }),
            "/building/stripBaseAboveDatum", "means-nothing"),
        ("panels that overlap", WithPanels((100, 36), (135, 36)),
            "/building/roof/translucentPanels/1/fromStart", "panels-overlap"),
        ("panels that leave no roof", WithPanels((0, 240), (240, 240)),
            "/insulation/0/planes/0", "nothing-to-cover"),
        ("drawn roof over a bearing", WithRoof(Drawn((0, 120), (180, 180), (360, 120)))
            .With(b => b with
            {
                EaveHeightDatum = EaveHeightDatum.Bearing, HeelHeight = In(6),
                PurlinDepth = In(0), GirtThickness = In(0),
            }), "/building/eaveHeightDatum", "not-with-profile"),
        ("slope of a broken side", WithRoof(new()
        {
            Form = RoofForm.DoublePitch, BrokenSide = BrokenSide.A, LowerSlope = Pitch(2),
            LowerRun = In(60), UpperSlope = Pitch(6), SlopeA = Pitch(4),
        }), "/building/roof/slopeA", "means-nothing"),
        ("slope of one of two broken sides", WithRoof(new()
        {
            Form = RoofForm.DoublePitch, BrokenSide = BrokenSide.Both, LowerSlope = Pitch(2),
            LowerRun = In(60), UpperSlope = Pitch(6), SlopeB = Pitch(4),
        }), "/building/roof/slopeB", "means-nothing"),
        ("posts without girts", W1.With(b => b with { WidthBasis = WidthBasis.OutsideOfPosts }),
            "/building/girtThickness", "missing"),
        ("clear span without posts", W1.With(b => b with { WidthBasis = WidthBasis.ClearSpan }),
            "/building/postDepth", "missing"),
        ("bearing without heel", W1.With(b => b with
            { EaveHeightDatum = EaveHeightDatum.Bearing }), "/building/heelHeight", "missing"),
        ("grade without base", W1.With(b => b with { EaveHeightDatum = EaveHeightDatum.Grade }),
            "/building/stripBaseAboveDatum", "missing"),
        ("stem wall to the eave", W1.With(b => b with { StemWallHeight = In(120) }),
            "/building/stemWallHeight", "too-large"),
        ("vent members on a closed ridge", WithRoof(Gable(4) with { VentFrom = In(1) }),
            "/building/roof/ventFrom", "ridge-not-vented"),
        ("vent backwards", WithRoof(Gable(4, RidgeKind.Vented) with
            { VentFrom = In(100), VentTo = In(50) }), "/building/roof/ventTo", "out-of-order"),
        ("partition outside", W1.With(b => b with
            { Partition = new() { FromEndwall1 = In(500) } }),
            "/building/partition/fromEndwall1", "too-large"),
        ("third endwall", W1.With(b => b with
            { Partition = new() { FromEndwall1 = In(100), InsulatedEndwall = 3 } }),
            "/building/partition/insulatedEndwall", "not-an-endwall"),
        ("panel beyond the end", W1.With(b => b with { Roof = b.Roof! with
            { TranslucentPanels = [new() { FromStart = In(470), Width = In(36) }] } }),
            "/building/roof/translucentPanels/0/width", "outside-building"),
        ("lean-to above its wall", WithLean(Lean with { Drop = In(-12) }),
            "/building/leanTos/0/drop", "lean-to-above-wall"),
        ("lean-to dropped below ground", WithLean(Lean with { Drop = In(130) }),
            "/building/leanTos/0/drop", "too-large"),
        ("lean-to into the ground", WithLean(Lean with { Slope = Pitch(12) }),
            "/building/leanTos/0/slope", "lean-to-too-low"),
        ("lean-to without side", WithLean(Lean with { Side = null }),
            "/building/leanTos/0/side", "missing"),
        ("two lean-tos on a side", W1.With(b => b with { LeanTos = [Lean, Lean] }),
            "/building/leanTos/1/side", "side-taken"),
    ];

    public static IEnumerable<(string Name, SizingInput Job, string Path, string Rule)> Others =>
    [
        ("door wider than wall", WithOpening(Door("endwall1", 400, 100, 10)),
            "/building/openings/0/width", "wider-than-wall"),
        ("door taller than wall", WithOpening(Door("sidewallA", 100, 121, 10)),
            "/building/openings/0/height", "taller-than-wall"),
        ("door into the rake", WithOpening(Door("endwall1", 100, 130, 2)),
            "/building/openings/0/height", "taller-than-wall"),
        ("door at the corner", WithOpening(Door("endwall1", 100, 100, 0)),
            "/building/openings/0/fromStart", "touches-corner"),
        ("door at the far corner", WithOpening(Door("endwall1", 100, 100, 260)),
            "/building/openings/0/fromStart", "touches-corner"),
        ("door beyond the wall", WithOpening(Door("endwall1", 100, 100, 300)),
            "/building/openings/0/fromStart", "outside-wall"),
        ("door nowhere", WithOpening(Door("endwall9", 100, 100, 30)),
            "/building/openings/0/wall", "no-such-wall"),
        ("negative door", WithOpening(Door("endwall1", -5, 100, 30)),
            "/building/openings/0/width", "too-small"),
        ("door without height", WithOpening(Door("endwall1", 90, 90, 30) with { Height = null }),
            "/building/openings/0/height", "missing"),
        ("door across the partition", WithOpening(Door("sidewallA", 100, 100, 250))
            .With(b => b with { Partition = new() { FromEndwall1 = In(300) } }),
            "/building/openings/0/fromStart", "crosses-partition"),
        ("doors overlap", W1.WithOpenings(
            Door("endwall1", 100, 100, 20), Door("endwall1", 100, 100, 119)),
            "/building/openings/1/fromStart", "openings-overlap"),
        ("eave light on an endwall", WithOpening(
            Opening("endwall1", OpeningKind.EaveLight, 60, 30, 60)),
            "/building/openings/0/wall", "not-a-sidewall"),
        ("eave light at a place without a width", WithOpening(new()
        {
            Wall = "sidewallA", Kind = OpeningKind.EaveLight, Height = In(20), FromStart = In(60),
        }), "/building/openings/0/width", "missing"),
        ("eave light with a sill", WithOpening(
            Opening("sidewallA", OpeningKind.EaveLight, 60, 20, 60, 90)),
            "/building/openings/0/sill", "means-nothing"),
        ("eave light twice", W1.WithOpenings(
            new() { Wall = "sidewallA", Kind = OpeningKind.EaveLight, Height = In(20) },
            new() { Wall = "sidewallA", Kind = OpeningKind.EaveLight, Height = In(20) }),
            "/building/openings/1/wall", "eave-light-taken"),
        ("eave light in bays under a continuous one", W1.WithOpenings(
            Opening("sidewallA", OpeningKind.EaveLight, 60, 20, 60),
            new() { Wall = "sidewallA", Kind = OpeningKind.EaveLight, Height = In(20) }),
            "/building/openings/0/wall", "eave-light-taken"),
        ("eave light as high as its wall", WithOpening(new()
            { Wall = "sidewallA", Kind = OpeningKind.EaveLight, Height = In(120) }),
            "/building/openings/0/height", "taller-than-wall"),
        ("window below the strips", W1.With(b => b with { StemWallHeight = In(60) })
            .WithOpenings(Opening("sidewallA", OpeningKind.Window, 60, 30, 60, 10)),
            "/building/openings/0/height", "below-strips"),
        ("no insulation", W1 with { Insulation = [] }, "/insulation", "missing"),
        ("unknown product", WithLine(l => l with { Product = "blanket-9" }),
            "/insulation/0/product", "no-such-product"),
        ("unknown plane", WithLine(l => l with { Planes = ["cellar"] }),
            "/insulation/0/planes/0", "no-such-plane"),
        ("plane twice", WithLine(l => l with { Planes = ["roof", "endwall1"] }),
            "/insulation/1/planes/2", "plane-taken"),
        ("slope of a roof taken whole", W1 with { Insulation =
            [W1.Insulation![0], Cover(48, "roofA")] }, "/insulation/1/planes/0", "plane-taken"),
        ("no planes", WithLine(l => l with { Planes = [] }), "/insulation/0/planes", "missing"),
        ("width not made", WithLine(l => l with { RollWidth = In(50) }),
            "/insulation/0/rollWidth", "no-such-width"),
        ("no roll width", WithLine(l => l with { RollWidth = null }),
            "/insulation/0/rollWidth", "missing"),
        ("foam in rolls", WithLine(l => l with
            { Product = "spray-foam-open", Thickness = In(3) }),
            "/insulation/0/rollWidth", "not-in-rolls"),
        ("foam without thickness", WithLine(l => l with
            { Product = "spray-foam-open", RollWidth = null }),
            "/insulation/0/thickness", "missing"),
        ("blanket of another thickness", WithLine(l => l with { Thickness = In(4) }),
            "/insulation/0/thickness", "not-this-product"),
        ("half a roof over the ridge", WithLine(l => l with { Planes = ["roofA"] }),
            "/insulation/0/roofLayout", "needs-whole-roof"),
        ("split over the ridge", WithLine(l => l with { BreakLayout = BreakLayout.Split }),
            "/insulation/0/breakLayout", "over-ridge-is-one-piece"),
        ("last strip of foam", WithLine(l => l with
            { Product = "board-2-eps", RollWidth = null, LastStrip = LastStrip.Wrap }),
            "/insulation/0/lastStrip", "not-in-rolls"),
        ("layout of foam", WithLine(l => l with
            { Product = "board-2-eps", RollWidth = null, RoofLayout = RoofLayout.Auto }),
            "/insulation/0/roofLayout", "not-in-rolls"),
        ("last strip of the best widths", WithLine(l => l with
            { BestRollWidth = true, RollWidth = null, LastStrip = LastStrip.Wrap }),
            "/insulation/0/lastStrip", "means-nothing"),
        ("roof layout on walls", W1 with { Insulation =
            [Cover(48, Walls) with { RoofLayout = RoofLayout.EaveToRidge }] },
            "/insulation/0/roofLayout", "no-roof"),
        ("break layout on walls", W1 with { Insulation =
            [Cover(48, Walls) with { BreakLayout = BreakLayout.Continuous }] },
            "/insulation/0/breakLayout", "no-roof"),
        ("split at a break that is not there", W1 with { Insulation =
            [Cover(48, "roof") with { BreakLayout = BreakLayout.Split }] },
            "/insulation/0/breakLayout", "no-break"),
        ("start height on a roof", WithLine(l => l with { StartHeight = In(96) }),
            "/insulation/0/startHeight", "no-walls"),
        ("start height above the eave", W1 with { Insulation =
            [W1.Insulation![1] with { StartHeight = In(121) }] },
            "/insulation/0/startHeight", "too-large"),
        ("tiny rounding step", W1.WithPractice(p => p with { RoundUpTo = In(0.01) }),
            "/practice/roundUpTo", "too-small"),
        ("negative tuck", W1.WithPractice(p => p with { EaveTuck = In(-1) }),
            "/practice/eaveTuck", "too-small"),
        ("tolerance over a quarter step", W1.WithPractice(p => p with
            { RoundUpTo = In(1), Tolerance = In(0.5) }), "/practice/tolerance", "too-large"),
        ("drape over half", W1.WithPractice(p => p with { DrapePercent = 51 }),
            "/practice/drapePercent", "too-large"),
        ("drape not a number", W1.WithPractice(p => p with { DrapePercent = double.NaN }),
            "/practice/drapePercent", "too-large"),
        ("limit of nothing", W1.WithPractice(p => p with { OnePersonLimit = Mass.FromPounds(0) }),
            "/practice/onePersonLimit", "too-small"),
        ("two lift less than one", W1.WithPractice(p => p with
            { OnePersonLimit = Mass.FromPounds(60), TwoPersonLimit = Mass.FromPounds(40) }),
            "/practice/twoPersonLimit", "too-small"),
        ("one person lifts more than the usual two", W1.WithPractice(p => p with
            { OnePersonLimit = Mass.FromPounds(80) }), "/practice/onePersonLimit", "too-large"),
        ("two lift less than the usual one", W1.WithPractice(p => p with
            { TwoPersonLimit = Mass.FromPounds(49) }), "/practice/twoPersonLimit", "too-small"),
        ("drape told twice", W1.WithPractice(p => p with
            { DrapePercent = 1, DrapeSag = In(1) }), "/practice/drapeSag", "told-twice"),
        ("sag deeper than a quarter of the spacing", W1.WithPractice(p => p with
            { DrapeSag = In(6.5) }), "/practice/drapeSag", "too-large"),
    ];

    public static OpeningInput Door(string wall, double width, double height, double from) =>
        Opening(wall, OpeningKind.OverheadDoor, width, height, from);

    private static SizingInput WithPanels(params (double From, double Width)[] panels) =>
        Job(360, 480, 120, Gable(4) with
        {
            TranslucentPanels = [.. panels.Select(p => new TranslucentPanelInput
            {
                FromStart = In(p.From), Width = In(p.Width),
                Treatment = TranslucentTreatment.SplitRun,
            })],
        }, Cover(48, "roof"));

    private static RoofInput Drawn(params (double Across, double Up)[] points) => new()
    {
        Form = RoofForm.Profile,
        Points = [.. points.Select(p => new ProfilePointInput
        {
            Across = In(p.Across), Up = In(p.Up),
        })],
    };
}
