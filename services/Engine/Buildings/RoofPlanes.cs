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
        var last = building.Roof.Profile.Points.Count - 1;
        var slopes = Slopes(building, 0, last);
        var lines = new List<PlaneLine>();
        var up = Length.Zero;
        for (var i = 0; i < slopes.Count - 1; i++)
        {
            up += slopes[i].Along;
            lines.AddRange(LinesAt(building, i + 1, up));
        }
        return Roof(building, "roof", "R", "Roof", slopes, PlaneEnd.Eave, PlaneEnd.Eave, lines);
    }

    /// <summary>Eave to ridge on one side.</summary>
    public static Plane OnSide(Building building, BuildingSide side)
    {
        var slopes = SlopesOn(building, side);
        var lines = new List<PlaneLine>();
        var up = Length.Zero;
        foreach (var slope in slopes.SkipLast(1))
        {
            up += slope.Along;
            lines.Add(new("break", Length.Zero, building.Length, up));
        }
        lines.AddRange(LinesAt(building, building.Roof.Ridge!.Value, up + slopes[^1].Along));
        return Roof(building, $"roof{side}", $"R{side}", $"Roof slope {side}", slopes,
            PlaneEnd.Eave, PlaneEnd.Ridge, lines);
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
        if (whole.Slopes.Count == 1) return [whole];
        return [.. whole.Slopes.Select((slope, i) =>
        {
            var isLast = i == whole.Slopes.Count - 1;
            IEnumerable<PlaneLine> lines = isLast
                ? topLines
                : [new("break", Length.Zero, building.Length, slope.Along)];
            return Roof(building, $"{whole.Id}{i + 1}", $"{whole.Code}{i + 1}",
                $"{whole.Title}, part {i + 1} from the eave", [slope],
                i == 0 ? whole.Bottom : PlaneEnd.Break,
                isLast ? whole.Top : PlaneEnd.Break, lines);
        })];
    }

    public static Plane OfLeanTo(Building building, LeanTo lean)
    {
        var along = lean.Width.Times(lean.Slope.Factor);
        return Roof(building, $"leanRoof{lean.Side}", $"LR{lean.Side}",
            $"Lean-to {lean.Side} roof", [new(lean.Width, lean.Slope, along)],
            PlaneEnd.Eave, PlaneEnd.Junction, []) with
        {
            Vent = null,
            Origin = lean.Along.From,
            Edge = Profile.Level(lean.Along.Size, along),
            Parts = !lean.Along.Overlaps(building.Insulated) ? [] :
            [
                new(Length.Max(building.Insulated.From, lean.Along.From) - lean.Along.From,
                    Length.Min(building.Insulated.To, lean.Along.To) - lean.Along.From),
            ],
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
            Edge = Profile.Level(
            building.Length, slopes.Aggregate(Length.Zero, (sum, s) => sum + s.Along)),
            Bottom = bottom,
            Top = top,
            Slopes = slopes,
            Vent = building.Vent,
            Parts = Parts(building, id),
            Lines = [.. lines],
            Framing = building.RoofFraming,
        };

    /// <summary>The insulated length, less the panels that split this plane's run.</summary>
    private static IReadOnlyList<Interval> Parts(Building building, string id)
    {
        var parts = new List<Interval>();
        var from = building.Insulated.From;
        foreach (var panel in building.Panels.Where(p => Splits(p, id)))
        {
            var gap = panel.Along.ClippedTo(building.Insulated);
            if (gap.From > from) parts.Add(new(from, gap.From));
            from = Length.Max(from, gap.To);
        }
        if (from < building.Insulated.To) parts.Add(new(from, building.Insulated.To));
        return parts;
    }

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
            yield return new("break", Length.Zero, building.Length, up);
            yield break;
        }
        yield return new("ridge", Length.Zero, building.Length, up);
        if (building.Vent is { } vent) yield return new("ridgeVent", vent.From, vent.To, up);
    }
}
