using CsCheck;
using PostFrame.Engine;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.TakeOff;
using static PostFrame.EngineTests.TakeOff.Ask;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>
/// Random buildings of every form with everything else a request may hold: vents, panels,
/// partitions, stem walls, set-back lean-tos, eave lights, unplaced openings, wraps, best widths.
/// </summary>
internal static class RichJobs
{
    /// <summary>Only those that are not refused: about half of what is thrown together.</summary>
    public static Gen<SizingInput> Valid { get; } =
        Any.Where(job => Sizing.Size(job).Result is not null);

    public static Gen<SizingInput> Any =>
        Gen.Select(RandomJobs.OfAnyForm, Gen.Int, (job, seed) => Rich(job, new Random(seed)));

    private static SizingInput Rich(SizingInput job, Random random)
    {
        var length = job.Building!.Length!.Value.TotalInches;
        if (Sometimes(random) && job.Building.Roof!.Form != RoofForm.Monoslope)
            job = job.With(b => b with
            {
                Roof = b.Roof! with
                {
                    Ridge = RidgeKind.Vented,
                    VentFrom = In(length * 0.2),
                    VentTo = In(length * (0.3 + 0.7 * random.NextDouble())),
                },
            });
        if (Sometimes(random)) job = WithPanels(job, random, length);
        if (Sometimes(random))
            job = job.With(b => b with
            {
                Partition = new()
                {
                    FromEndwall1 = In(length * (0.2 + 0.6 * random.NextDouble())),
                    InsulatedEndwall = 1 + random.Next(2),
                },
            });
        if (Sometimes(random)) job = job.With(b => b with { StemWallHeight = In(random.Next(40)) });
        if (Sometimes(random)) job = WithSetBackLeanTo(job, random, length);
        if (Sometimes(random)) job = WithMoreOpenings(job, random);
        return WithChoices(job, random);
    }

    private static bool Sometimes(Random random) => random.Next(3) == 0;

    private static SizingInput WithPanels(SizingInput job, Random random, double length) =>
        job.With(b => b with
        {
            Roof = b.Roof! with
            {
                TranslucentPanels =
                [
                    .. Enumerable.Range(0, 1 + random.Next(3)).Select(i => new TranslucentPanelInput
                    {
                        FromStart = In(length * 0.3 * i), Width = In(36),
                        Treatment = (TranslucentTreatment)random.Next(2),
                    }),
                ],
            },
        });

    private static SizingInput WithSetBackLeanTo(SizingInput job, Random random, double length) =>
        job.With(b => b with
        {
            LeanTos = b.LeanTos is not { Count: > 0 } leans ? b.LeanTos :
            [
                leans[0] with
                {
                    FromEndwall1 = In(random.Next(2) * length * 0.25), Length = In(length * 0.6),
                    Inside = (LeanToInside)random.Next(3),
                },
            ],
        });

    private static SizingInput WithMoreOpenings(SizingInput job, Random random) => job.With(b =>
        b with
        {
            Openings =
            [
                .. b.Openings!,
                new() { Wall = "sidewallB", Kind = OpeningKind.EaveLight, Height = In(30) },
                Opening("endwall2", OpeningKind.OverheadDoor, 60 + random.Next(100), 80, null),
            ],
        });

    private static SizingInput WithChoices(SizingInput job, Random random)
    {
        var lines = job.Insulation!.Select(line =>
        {
            if (Sometimes(random)) line = line with { BestRollWidth = true, RollWidth = null };
            else if (Sometimes(random))
                line = line with { LastStrip = (LastStrip)random.Next(3) };
            if (!line.Planes!.Contains("roof")) return line with { RoofLayout = null };
            if (Sometimes(random)) line = line with { RoofLayout = (RoofLayout)random.Next(3) };
            var breaks = job.Building!.Roof!.Form is RoofForm.Gambrel or RoofForm.DoublePitch;
            return line with
            {
                BreakLayout = line.RoofLayout == RoofLayout.OverRidge || !breaks
                    ? null
                    : (BreakLayout)random.Next(2),
            };
        });
        return job with
        {
            Insulation = [.. lines],
            Practice = job.Practice with
            {
                CornerWrap = In(random.Next(2) * 6),
                RakeWrap = In(random.Next(2) * 6),
                JambMargin = In(random.Next(2) * 2),
                MergeShortHeaders = random.Next(2) == 0,
                ShortHeader = In(40),
                DrapePercent = random.Next(2),
            },
        };
    }
}
