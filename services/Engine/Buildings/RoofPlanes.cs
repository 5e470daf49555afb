using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Buildings;

/// <summary>
/// The roof as planes: over the ridge, one per side, or one per slope segment. A roof of a single
/// slope has only the plane <c>roof</c>.
/// </summary>
/// <remarks>Source: takeoff.md 2.3 (slope length is a sum over segments) and 2.4.</remarks>
internal static class RoofPlanes
{
    /// <summary>Eave over the ridge to eave, or the one slope of a monoslope.</summary>
    public static Plane Over(Building building)
    {
        var slopes = Slopes(building, 0, building.Roof.Profile.Points.Count - 1);
        var below = Overhang(building, BuildingSide.A, slopes[0]);
        var above = Overhang(building, BuildingSide.B, slopes[^1]);
        var lines = new List<PlaneLine>();
        var up = Along(below);
        for (var i = 0; i < slopes.Count - 1; i++)
        {
            up += slopes[i].Along;
            lines.AddRange(LinesAt(building, i + 1, up));
        }
        return Roof(building, "roof", "R", "Roof",
            [.. below, .. slopes, .. above], PlaneEnd.Eave, PlaneEnd.Eave, lines) with
        {
            Cutbacks =
            [
                .. from along in CarriedOn(building, BuildingSide.A, below)
                   select new Cutback(along, Along(below), Length.Zero),
                .. from along in CarriedOn(building, BuildingSide.B, above)
                   select new Cutback(along, Length.Zero, Along(above)),
            ],
        };
    }

    /// <summary>True when the slope changes between an eave and the ridge.</summary>
    public static bool HasBreak(Building building) =>
        building.Roof.Profile.Points.Count > (building.Roof.Ridge is null ? 2 : 3);

    /// <summary>Eave to ridge on one side.</summary>
    public static Plane OnSide(Building building, BuildingSide side)
    {
        var slopes = SlopesOn(building, side);
        var below = Overhang(building, side, slopes[0]);
        var lines = new List<PlaneLine>();
        var up = Along(below);
        foreach (var slope in slopes.SkipLast(1))
        {
            up += slope.Along;
            lines.Add(Break(building, up));
        }
        lines.AddRange(LinesAt(building, building.Roof.Ridge!.Value, up + slopes[^1].Along));
        return Roof(building, $"roof{side}", $"R{side}", $"Roof slope {side}",
            [.. below, .. slopes], PlaneEnd.Eave, PlaneEnd.Ridge, lines) with
        {
            Cutbacks =
            [
                .. from along in CarriedOn(building, side, below)
                   select new Cutback(along, Along(below), Length.Zero),
            ],
        };
    }

    /// <summary>One plane per segment of a side, counted from the eave.</summary>
    public static IReadOnlyList<Plane> Segments(Building building, BuildingSide side) =>
        Segments(
            building, OnSide(building, side),
            LinesAt(building, building.Roof.Ridge!.Value,
                SlopesOn(building, side)[^1].Along));

    /// <summary>One plane per segment of a roof without a ridge, from the low eave.</summary>
    public static IReadOnlyList<Plane> Segments(Building building) =>
        Segments(building, Over(building), []);

    private static IReadOnlyList<Plane> Segments(
        Building building, Plane whole, IEnumerable<PlaneLine> topLines)
    {
        var parts = WithTheirOverhangs(whole.Slopes);
        if (parts.Count == 1) return [whole];
        return [.. parts.Select((slopes, i) =>
        {
            var isLast = i == parts.Count - 1;
            var lines = isLast ? topLines : [Break(building, Along(slopes))];
            return Roof(building, $"{whole.Id}{i + 1}", $"{whole.Code}{i + 1}",
                $"{whole.Title}, part {i + 1} from the eave", slopes,
                i == 0 ? whole.Bottom : PlaneEnd.Break,
                isLast ? whole.Top : PlaneEnd.Break, lines) with
            {
                Cutbacks =
                [
                    .. whole.Cutbacks.Select(c => new Cutback(
                        c.Along, i == 0 ? c.AtBottom : Length.Zero,
                        isLast ? c.AtTop : Length.Zero))
                        .Where(c => c.AtBottom + c.AtTop > Length.Zero),
                ],
            };
        })];
    }

    private static List<List<SlopePart>> WithTheirOverhangs(IReadOnlyList<SlopePart> slopes)
    {
        var parts = new List<List<SlopePart>>();
        foreach (var slope in slopes)
            if (parts.Count > 0 && (slope.IsOverhang || parts[^1].All(s => s.IsOverhang)))
                parts[^1].Add(slope);
            else
                parts.Add([slope]);
        return parts;
    }

    public static Plane OfLeanTo(Building building, LeanTo lean)
    {
        var rake = building.CoveredRakeOverhang;
        SlopePart slope = new(lean.Width, lean.Slope, lean.Width.Times(lean.Slope.Factor));
        SlopePart[] slopes = [.. Overhang(building.CoveredEaveOverhang, slope), slope];
        return Roof(building, $"leanRoof{lean.Side}", $"LR{lean.Side}",
            $"Lean-to {lean.Side} roof", slopes, PlaneEnd.Eave, PlaneEnd.Junction, []) with
        {
            Vent = null,
            Origin = lean.Along.From - rake,
            Edge = Profile.Level(lean.Along.Size + rake * 2, Along(slopes)),
            Parts = lean.Along.Overlaps(building.Insulated)
                ? [Onto(building.Insulated.ClippedTo(lean.Along), lean.Along, rake)]
                : [],
        };
    }

    private static Plane Roof(
        Building building, string id, string code, string title, IReadOnlyList<SlopePart> slopes,
        PlaneEnd bottom, PlaneEnd top, IEnumerable<PlaneLine> lines) => new()
        {
            Id = id,
            Code = code,
            Title = title,
            Kind = PlaneKind.Roof,
            Origin = -building.CoveredRakeOverhang,
            Edge = Profile.Level(RunOf(building), Along(slopes)),
            Bottom = bottom,
            Top = top,
            Slopes = slopes,
            Vent = building.Vent is { } vent ? Onto(building, vent) : null,
            Parts = Parts(building, id),
            Lines = [.. lines],
            Framing = building.RoofFraming,
        };

    /// <summary>The insulated length, less the panels that split this plane's run.</summary>
    private static IReadOnlyList<Interval> Parts(Building building, string id)
    {
        var parts = new List<Interval>();
        var whole = Onto(building, building.Insulated);
        var from = whole.From;
        foreach (var panel in building.Panels.Where(p => Splits(p, id)))
        {
            var gap = Onto(building, panel.Along).ClippedTo(whole);
            if (gap.From > from) parts.Add(new(from, gap.From));
            from = Length.Max(from, gap.To);
        }
        if (from < whole.To) parts.Add(new(from, whole.To));
        return parts;
    }

    private static Length RunOf(Building building) =>
        building.Length + building.CoveredRakeOverhang * 2;

    private static Interval Onto(Building building, Interval along) =>
        Onto(along, new(Length.Zero, building.Length), building.CoveredRakeOverhang);

    /// <summary>
    /// A stretch of the building on a roof plane, which starts one covered rake overhang before it;
    /// what reaches an endwall reaches over the overhang.
    /// </summary>
    private static Interval Onto(Interval along, Interval whole, Length rake) => new(
        along.From == whole.From ? Length.Zero : along.From - whole.From + rake,
        along.To == whole.To ? whole.Size + rake * 2 : along.To - whole.From + rake);

    /// <summary>
    /// The covered overhang at an eave; none where a flush lean-to carries the roof on.
    /// </summary>
    private static SlopePart[] Overhang(Building building, BuildingSide side, SlopePart eave) =>
        building.LeanToAt(side) is { IsWholeLength: true } lean && lean.Drop == Length.Zero
            ? []
            : Overhang(building.CoveredEaveOverhang, eave);

    /// <summary>
    /// Where a flush lean-to along part of an eave with a covered overhang carries the roof on.
    /// </summary>
    private static Interval[] CarriedOn(
        Building building, BuildingSide side, SlopePart[] overhang) =>
        overhang.Length > 0 && building.LeanToAt(side) is { } lean && lean.Drop == Length.Zero
            ? [Onto(building, lean.Along)]
            : [];

    /// <remarks>Source: takeoff.md 2.4, o·k per overhang o.</remarks>
    private static SlopePart[] Overhang(Length run, SlopePart eave) => run == Length.Zero
        ? []
        : [new(run, eave.Slope, run.Times(eave.Slope.Factor), IsOverhang: true)];

    private static Length Along(IEnumerable<SlopePart> slopes) =>
        slopes.Aggregate(Length.Zero, (sum, s) => sum + s.Along);

    private static PlaneLine Break(Building building, Length up) =>
        new("break", Length.Zero, RunOf(building), up);

    private static bool Splits(TranslucentPanel panel, string id) =>
        panel.Treatment == TranslucentTreatment.SplitRun
        && (id == "roof" || (id.StartsWith("roof", StringComparison.Ordinal)
            && (panel.Plane == "roof" || id.StartsWith(panel.Plane, StringComparison.Ordinal))));

    private static IReadOnlyList<SlopePart> SlopesOn(Building building, BuildingSide side)
    {
        var ridge = building.Roof.Ridge!.Value;
        return side == BuildingSide.A
            ? Slopes(building, 0, ridge)
            : [.. Slopes(building, ridge, building.Roof.Profile.Points.Count - 1).Reverse()];
    }

    private static IReadOnlyList<SlopePart> Slopes(Building building, int from, int to)
    {
        var profile = building.Roof.Profile;
        return [.. Enumerable.Range(from + 1, to - from).Select(i => new SlopePart(
            profile.Points[i].Across - profile.Points[i - 1].Across,
            Slope.FromRatio(Math.Abs(profile.SlopeBefore(i).RiseOverRun)),
            profile.EdgeLength(i - 1, i)))];
    }

    private static IEnumerable<PlaneLine> LinesAt(Building building, int vertex, Length up)
    {
        if (vertex != building.Roof.Ridge)
        {
            yield return Break(building, up);
            yield break;
        }
        yield return new("ridge", Length.Zero, RunOf(building), up);
        if (building.Vent is not { } vent) yield break;
        var along = Onto(building, vent);
        yield return new("ridgeVent", along.From, along.To, up);
    }
}
