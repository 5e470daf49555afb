using System.Globalization;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;

namespace PostFrame.Engine;

/// <summary>Tape, staples and nails that go with the pieces, by stated rates.</summary>
/// <remarks>Source: takeoff.md 4.3; rates are common practice, lengths derived.</remarks>
internal sealed class Accessories(Job job)
{
    private readonly Length stapleSpacing = Rate(job, 8, 200);
    private readonly Length nailSpacing = Rate(job, 12, 300);
    private readonly Length girtNailSpacing = Rate(job, 24, 600);
    private readonly Area patchTapePerRoll =
        job.Metric ? Area.FromSquareMetres(460) : Area.FromSquareFeet(5000);

    private IEnumerable<PlaneResult> Rolled => job.Planes.Where(p => p.Strips > 0);

    public IReadOnlyList<Accessory> All()
    {
        if (job.Pieces.Count == 0) return [];
        var joints = job.Units.Aggregate(Length.Zero, (sum, u) => sum + Joints(u));
        var extra = job.Practice.TapeExtraPercent;
        var cutOuts = CutOuts();
        return
        [
            Rolls("lapTape", "Lap tape matching the facing", joints.Times(1 + extra / 100),
                job.Practice.TapeRoll,
                $"{Say(joints)} of joints, each as long as its shorter neighbour, + {extra:0.#} %",
                "D"),
            .. cutOuts > Length.Zero
                ? [Rolls("cutOutTape", "Lap tape at openings cut out on site", cutOuts,
                    job.Practice.TapeRoll, "perimeters of openings and panels cut out on site",
                    "D")]
                : Array.Empty<Accessory>(),
            Rolls("doubleFacedTape", "Double-faced tape on purlins, struts and skirt boards",
                DoubleFaced(), job.Practice.DoubleFacedRoll,
                "twice the run of every roof slope and wall", "C"),
            Count("staples", $"Staples {(job.Metric ? "12 mm" : "½ in")}", joints / stapleSpacing,
                $"one per {stapleSpacing.Say(job.Metric)} of joint"),
            .. Nails() is > 0 and var nails
                ? [Count("capNails", "Plastic-cap nails at walls", nails,
                    $"one per {nailSpacing.Say(job.Metric)} at top and base, "
                        + $"{girtNailSpacing.Say(job.Metric)} at girts")]
                : Array.Empty<Accessory>(),
            PatchTape(),
        ];
    }

    /// <summary>Joints of a unit, each as long as the shorter of the strips it joins.</summary>
    private static Length Joints(UnitTakeOff take)
    {
        var sum = Length.Zero;
        foreach (var plane in take.Pieces.GroupBy(p => p.Draft.Plane.Id))
        {
            (StripPosition Strip, Length Cut, PieceLay Lay)[] strips =
                [.. plane.GroupBy(p => p.Strip).Select(s => (
                    s.Key, s.Aggregate(Length.Zero, (cut, p) => cut + p.Draft.Cut),
                    s.First().Draft.Lay))];
            for (var i = 1; i < strips.Length; i++)
                if (strips[i].Strip.Reach.From == strips[i - 1].Strip.Reach.To)
                    sum += strips[i].Lay == PieceLay.Across ? strips[i].Strip.Width
                        : strips[i - 1].Lay == PieceLay.Across ? strips[i - 1].Strip.Width
                        : Length.Min(strips[i].Cut, strips[i - 1].Cut);
        }
        return sum;
    }

    private Length CutOuts()
    {
        var sum = Length.Zero;
        foreach (var opening in job.Openings.Where(o => Rolled.Any(p => p.Plane == o.Plane)))
            sum += (opening.Width + opening.Top - opening.Bottom) * 2;
        foreach (var panel in Rolled.SelectMany(p => p.Panels))
            sum += (panel.To - panel.From + panel.Top - panel.Bottom) * 2;
        return sum;
    }

    /// <summary>A roof plane over the ridge counts as its two slopes.</summary>
    private Length DoubleFaced() => Rolled.Aggregate(
        Length.Zero,
        (sum, p) => sum + p.Run * (IsOverRidge(p) ? 4 : 2));

    private static bool IsOverRidge(PlaneResult plane) =>
        plane.Plane == "roof" && plane.Lines.Any(l => l.Kind == "ridge");

    private double Nails()
    {
        double nails = 0;
        var girts = Length.FromMillimetres(job.Building.WallFraming.SpacingMm);
        foreach (var wall in Rolled.Where(p => p.Kind != PlaneKind.Roof))
        {
            var height = job.Units.First(u => u.Unit.Plane.Id == wall.Plane).Unit.Plane is { } plane
                ? plane.Edge.LowestOn(Length.Zero, plane.Run) - plane.Base
                : Length.Zero;
            var rows = Math.Max(0, Math.Ceiling(height / girts) - 1);
            nails += 2 * (wall.Run / nailSpacing) + rows * (wall.Run / girtNailSpacing);
        }
        return nails;
    }

    private Accessory PatchTape()
    {
        var gross = job.Pieces.Aggregate(Area.Zero, (sum, p) => sum + Area.Of(p.Width, p.Cut));
        var rolls = gross.TotalSquareFeet / patchTapePerRoll.TotalSquareFeet;
        return new(
            "patchTape", "Patch tape for tears",
            Math.Round(job.Metric ? gross.TotalSquareMetres : gross.TotalSquareFeet, 1),
            job.Metric ? "m²" : "ft²", Whole(rolls), "rolls",
            job.Metric
                ? $"one roll per {patchTapePerRoll.TotalSquareMetres:0} m²"
                : $"one roll per {patchTapePerRoll.TotalSquareFeet:0} ft²", "C");
    }

    private Accessory Rolls(
        string id, string title, Length needed, Length roll, string how, string mark) => new(
        id, title,
        Math.Round(job.Metric ? needed.TotalMetres : needed.TotalFeet, 2),
        job.Metric ? "m" : "ft", Whole(needed / roll), "rolls",
        $"{how}; rolls of {roll.SayLong(job.Metric)}", mark);

    private static Accessory Count(string id, string title, double needed, string how) => new(
        id, title, Math.Round(needed, 1), "pieces", Whole(needed), "pieces", how, "C");

    private static Length Rate(Job job, double inches, double millimetres) =>
        job.Metric ? Length.FromMillimetres(millimetres) : Length.FromInches(inches);

    private static int Whole(double units) =>
        (int)Math.Min(int.MaxValue, Math.Ceiling(units - 1e-9));

    private string Say(Length length) => length.SayLong(job.Metric);
}
