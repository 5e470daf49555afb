using CsCheck;
using PostFrame.Engine;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;
using static PostFrame.EngineTests.TakeOff.Ask;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>
/// Random buildings of a form, sizes in whole sixteenths of an inch, that a supplier could sell.
/// </summary>
internal sealed class RandomJobs
{
    private readonly Random random;

    private RandomJobs(int seed) => random = new(seed);

    /// <summary>Plain: no wraps, no vents, no stem walls; what a polygon can judge.</summary>
    public static Gen<SizingInput> Of(RoofForm form) =>
        Gen.Int.Select(seed => new RandomJobs(seed).Make(form));

    public static Gen<SizingInput> OfAnyForm { get; } = Gen.OneOf(
        Enum.GetValues<RoofForm>().Select(Of).ToArray());

    private SizingInput Make(RoofForm form)
    {
        var width = Size(16 * 12, 80 * 12);
        var roof = WithOverhangs(Roof(form, width));
        double[] widths = random.Next(2) == 0 ? [48, 60, 72] : [48];
        var roll = widths[random.Next(widths.Length)];
        var product = random.Next(4) == 0 ? "bubble-foil" : "blanket-3-white";
        var layout = form == RoofForm.Monoslope || random.Next(2) == 0
            ? RoofLayout.Auto
            : RoofLayout.EaveToRidge;
        var job = Job(width, Size(16 * 12, 120 * 12), Size(9 * 12, 20 * 12), roof,
            Ask.Roof(roll, layout) with { Product = product },
            Cover(roll, Walls) with { Product = product });
        job = job with
        {
            Practice = new() { RoundUpTo = In(new[] { 1.0, 6, 12 }[random.Next(3)]) },
        };
        return WithRandomOpenings(WithLeanTos(job));
    }

    private RoofInput Roof(RoofForm form, double width) => form switch
    {
        RoofForm.Gable => Gable(1 + random.Next(44) / 4.0),
        RoofForm.OffsetRidge => OffsetRidge(width),
        RoofForm.Monoslope => new() { Form = form, Slope = Pitch(1 + 2 * random.NextDouble()) },
        RoofForm.Gambrel => new()
        {
            Form = form,
            LowerSlope = Pitch(14 + random.Next(8)),
            LowerRun = In(Math.Floor(width / 6)),
            UpperSlope = Pitch(3 + random.Next(5)),
        },
        RoofForm.DoublePitch => new()
        {
            Form = form,
            LowerSlope = Pitch(random.Next(2) == 0 ? 2 : 8),
            LowerRun = In(Math.Floor(width / 5)),
            UpperSlope = Pitch(5),
            BrokenSide = (BrokenSide)random.Next(3),
        },
        _ => new() { Form = form, Points = null },
    };

    private RoofInput WithOverhangs(RoofInput roof) => random.Next(2) == 0
        ? roof
        : roof with
        {
            EaveOverhang = In(random.Next(36)),
            RakeOverhang = In(random.Next(36)),
            CoverOverhangs = random.Next(3) > 0,
        };

    /// <summary>Eave B lies within 20 in of eave A.</summary>
    private RoofInput OffsetRidge(double width)
    {
        var ridge = width * (0.25 + 0.5 * random.NextDouble());
        var rise = ridge * (0.2 + 0.4 * random.NextDouble());
        var fall = Math.Max(12, rise + 40 * random.NextDouble() - 20);
        return new()
        {
            Form = RoofForm.OffsetRidge,
            RidgeFromSidewallA = In(ridge),
            SlopeA = Slope.FromRatio(rise / ridge),
            SlopeB = Slope.FromRatio(fall / (width - ridge)),
        };
    }

    private SizingInput WithLeanTos(SizingInput job)
    {
        var building = job.Building!;
        if (building.Roof!.Form == RoofForm.Profile)
        {
            var points = Points(
                building.Width!.Value.TotalInches, building.EaveHeight!.Value.TotalInches);
            building = building with { Roof = building.Roof with { Points = points } };
        }
        if (random.Next(3) > 0 || building.Roof.Form == RoofForm.OffsetRidge)
            return job with { Building = building };
        var side = (BuildingSide)random.Next(2);
        var drop = random.Next(2) == 0 ? 0 : 18;
        return job with
        {
            Building = building with
            {
                LeanTos =
                [
                    new()
                    {
                        Side = side, Width = In(96), Slope = Pitch(1), Drop = In(drop),
                        Inside = LeanToInside.Open,
                    },
                ],
            },
            Insulation =
            [
                job.Insulation![0] with { Planes = ["roof", $"leanRoof{side}"] },
                job.Insulation[1] with
                {
                    Planes =
                    [
                        .. Walls.Where(p => p != $"sidewall{side}"), $"leanSidewall{side}",
                    ],
                },
            ],
        };
    }

    private ProfilePointInput[] Points(double width, double eave)
    {
        var ridge = width * (0.3 + 0.4 * random.NextDouble());
        var peak = eave + 40 + 60 * random.NextDouble();
        return
        [
            Point(0, eave),
            Point(ridge * 0.4, eave + (peak - eave) * (0.25 + 0.5 * random.NextDouble())),
            Point(ridge, peak),
            Point(width, Math.Max(100, eave - 12 * random.NextDouble())),
        ];

        static ProfilePointInput Point(double across, double up) =>
            new() { Across = In(across), Up = In(up) };
    }

    private SizingInput WithRandomOpenings(SizingInput job)
    {
        var openings = new List<OpeningInput>();
        OpeningKind[] kinds =
        [
            OpeningKind.OverheadDoor, OpeningKind.SlidingDoor, OpeningKind.Window,
            OpeningKind.WalkDoor,
        ];
        foreach (var wall in job.Insulation![1].Planes!.Where(p =>
            !p.StartsWith("lean", StringComparison.Ordinal)))
        {
            if (random.Next(2) == 0) continue;
            var run = wall.StartsWith("end", StringComparison.Ordinal)
                ? job.Building!.Width!.Value.TotalInches
                : job.Building!.Length!.Value.TotalInches;
            var kind = kinds[random.Next(kinds.Length)];
            var parts = run > 240 ? 1 + random.Next(2) : 1;
            var width = Size(36, (int)(run / parts) - 40);
            var from = 1 + random.Next((int)(run / parts - width - 2) * 16) / 16.0;
            var height = Size(60, 84);
            for (var part = 0; part < parts; part++)
                openings.Add(kind == OpeningKind.Window
                    ? Opening(wall, kind, width, 30, from + part * run / parts, 36)
                    : Opening(wall, kind, width, height, from + part * run / parts));
        }
        return job.WithOpenings([.. openings]);
    }

    private double Size(int from, int to) => from + random.Next((to - from) * 16) / 16.0;
}
