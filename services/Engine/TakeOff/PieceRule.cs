using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.TakeOff;

/// <summary>
/// The one rule for the pieces of a strip: from the base to the highest point the strip covers,
/// plus what each end asks for, less the openings that hold the whole strip; rounded up once.
/// </summary>
/// <remarks>Source: takeoff.md 2.3, 2.4, 2.5, 2.8 and 3.</remarks>
internal sealed class PieceRule(
    Building building, Practice practice, IReadOnlyList<Opening> openings)
{
    private readonly ILookup<string, Opening> placed =
        openings.Where(o => o.Along is not null).ToLookup(o => o.Plane);

    public bool HasOpenings(Plane plane) => placed.Contains(plane.Id);

    public EndAllowances Ends { get; } = new(building, practice);

    /// <summary>The pieces of one strip of a plane.</summary>
    /// <param name="plane">Where it stands.</param>
    /// <param name="covers">Its coverage, clipped to the plane.</param>
    /// <param name="coverage">Of a strip: a window wider than two of it is wide.</param>
    /// <remarks>
    /// A window is left out only where header and sill together buy less than the full strip:
    /// under a low sill or a coarse rounding step they would buy more, so it is covered and cut.
    /// </remarks>
    public IReadOnlyList<Draft> Of(Plane plane, Interval covers, Length coverage)
    {
        Opening[] inside = [.. Deducted(plane, covers, coverage)];
        var drafts = Around(plane, covers, inside);
        if (inside.All(o => o.IsWide)) return drafts;
        var covered = Around(plane, covers, inside.Where(o => o.IsWide));
        return CutOf(drafts) < CutOf(covered) ? drafts : covered;
    }

    private static Length CutOf(IEnumerable<Draft> drafts) =>
        drafts.Aggregate(Length.Zero, (sum, d) => sum + d.Cut);

    private List<Draft> Around(Plane plane, Interval covers, IEnumerable<Opening> inside)
    {
        var highest = plane.TopOn(covers);
        var drafts = new List<Draft>(1);
        var from = plane.BottomOn(covers);
        var fromEnd = plane.Bottom;
        Opening? below = null;
        foreach (var opening in inside)
        {
            if (opening.Bottom - from > practice.Tolerance)
                drafts.Add(Make(
                    plane, PieceRole.Sill, covers, from, new(covers.From, opening.Bottom), fromEnd,
                    PlaneEnd.OpeningEdge, opening));
            if (opening.Top <= from) continue;
            from = opening.Top;
            fromEnd = PlaneEnd.OpeningEdge;
            below = opening;
        }
        if (highest.Up - from > practice.Tolerance)
            drafts.Add(Make(
                plane, below is null ? PieceRole.Full : PieceRole.Header, covers, from, highest,
                fromEnd, TopEnd(plane, covers), below));
        return drafts;
    }

    /// <summary>A piece whose length lies along the plane: a band, or headers made one.</summary>
    /// <param name="plane">Where it lies.</param>
    /// <param name="role">What it is there for.</param>
    /// <param name="along">The stretch it covers.</param>
    /// <param name="lap">Added where it laps the next piece; zero for none.</param>
    /// <param name="upright">From where to where it stands.</param>
    /// <param name="opening">The opening it lies above, if any.</param>
    public Draft Along(
        Plane plane, PieceRole role, Interval along, Length lap, Interval upright,
        Opening? opening = null) => new()
        {
            Plane = plane,
            Role = role,
            Covers = along.ClippedTo(new(Length.Zero, plane.Run)),
            Bottom = upright.From,
            Top = new(along.From, upright.To),
            BottomEnd = plane.Bottom,
            TopEnd = plane.Top,
            Opening = opening,
            Stretch = along,
            JointLap = lap,
            Exact = along.Size + lap,
            Cut = (along.Size + lap).RoundedUpTo(practice.RoundUpTo, practice.Tolerance),
        };

    /// <summary>
    /// Openings that hold the strip from jamb to jamb, an edge on the jamb included, from the
    /// lowest up.
    /// </summary>
    private IEnumerable<Opening> Deducted(Plane plane, Interval covers, Length coverage)
    {
        if (!placed.Contains(plane.Id)) return [];
        return placed[plane.Id]
            .Where(o => o.Deducts(coverage) && Shrunk(o).Holds(covers) && o.Top > plane.Base)
            .OrderBy(o => o.Bottom);
    }

    private Interval Shrunk(Opening opening) => new(
        opening.Along!.Value.From + practice.JambMargin,
        opening.Along.Value.To - practice.JambMargin);

    private static PlaneEnd TopEnd(Plane plane, Interval covers) =>
        plane.Top == PlaneEnd.Ridge && plane.IsVentedAt(covers)
            ? PlaneEnd.VentedRidge
            : plane.Top;

    private Draft Make(
        Plane plane, PieceRole role, Interval covers, Length bottom, PlanePoint top,
        PlaneEnd bottomEnd, PlaneEnd topEnd, Opening? opening)
    {
        var exact = top.Up - bottom + DrapeOf(plane, top.Up - bottom)
            + Sum(Ends.AtBottom(plane, bottomEnd)) + Sum(Ends.AtTop(plane, topEnd));
        return new()
        {
            Plane = plane,
            Role = role,
            Covers = covers,
            Bottom = bottom,
            Top = top,
            BottomEnd = bottomEnd,
            TopEnd = topEnd,
            Opening = opening,
            Exact = exact,
            Cut = exact.RoundedUpTo(practice.RoundUpTo, practice.Tolerance),
        };
    }

    /// <summary>What sag adds to a slope: its percentage, or 8s²/(3m) in each space of m.</summary>
    /// <remarks>Source: takeoff.md 2.4, drape.</remarks>
    public Length DrapeOf(Plane plane, Length along)
    {
        if (plane.IsWall) return Length.Zero;
        var perSpace = practice.DrapeSag / Length.FromMillimetres(plane.Framing.SpacingMm);
        return along.Times(practice.DrapePercent / 100 + 8 * perSpace * perSpace / 3);
    }

    private static Length Sum(IEnumerable<Allowance> allowances) =>
        allowances.Aggregate(Length.Zero, (sum, a) => sum + a.Value);
}
