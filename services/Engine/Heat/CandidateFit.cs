namespace PostFrame.Engine.Heat;

/// <summary>Whether a candidate can be built into a frame as it was described.</summary>
public static class CandidateFit
{
    private const double Tolerance = 1e-6;

    /// <summary>
    /// Everything that cannot be built, with pointers into the candidate as it was asked
    /// (<c>/thickness</c>, <c>/placement</c>, <c>/airSpaces/0/side</c>); empty when it fits. The
    /// bounds are plain geometry, that of a squeezed batt <see cref="CompressedBatt"/>.
    /// </summary>
    /// <param name="candidate">What is offered.</param>
    /// <param name="framing">The members it is put to; null where none cross the plane.</param>
    /// <param name="words">Units of values and bounds; metric where not said.</param>
    public static IReadOnlyList<Violation> Violations(
        Candidate candidate, Framing? framing, UnitWords? words = null)
    {
        ArgumentNullException.ThrowIfNull(candidate);
        words ??= UnitWords.Metric;
        return
        [
            .. Sheet(candidate, words),
            .. Over(candidate),
            .. Sides(candidate),
            .. framing is null ? [] : Depth(candidate, framing, words),
        ];
    }

    /// <summary>True for fibre, which gives way where it is squeezed.</summary>
    internal static bool IsFibre(MaterialKind kind) =>
        kind is MaterialKind.Blanket or MaterialKind.Batt;

    /// <summary>True where the members cross this space: it lies in their depth.</summary>
    internal static bool Crosses(Placement lies, SpaceSide side) => lies switch
    {
        Placement.OverFraming => side == SpaceSide.Room,
        Placement.UnderFraming => side == SpaceSide.Cladding,
        _ => true,
    };

    /// <summary>Depth of the members that the spaces between them leave [mm].</summary>
    internal static double DepthLeft(Candidate candidate, Framing framing) => framing.DepthMm
        - (candidate.Spaces ?? [])
            .Where(space => Crosses(candidate.Lies, space.Side))
            .Sum(space => space.ThicknessMm);

    private static IEnumerable<Violation> Sheet(Candidate candidate, UnitWords words)
    {
        if (MaterialBand.ThickestMm(candidate.Kind) is not { } most
            || candidate.ThicknessMm is not { } mm || mm <= most)
            yield break;
        yield return AtMost(
            "/thickness", mm, most, words,
            bound => $"A reflective sheet is at most {bound} thick; name several as layers of "
                + "their own.");
    }

    private static IEnumerable<Violation> Over(Candidate candidate)
    {
        if (candidate.Lies == Placement.OverFraming
            && candidate.Kind is (MaterialKind.ClosedCellFoam or MaterialKind.OpenCellFoam
                or MaterialKind.Cellulose))
            yield return new(
                "/placement", "not-buildable", "overFraming", null, null,
                "Foam and cellulose are put in when the cladding is on: they cannot lie between "
                    + "it and the framing. Say betweenFraming.");
    }

    private static IEnumerable<Violation> Sides(Candidate candidate)
    {
        var spaces = candidate.Spaces ?? [];
        for (var i = 1; i < spaces.Count; i++)
            if (spaces.Take(i).Any(other => other.Side == spaces[i].Side))
                yield return new(
                    $"/airSpaces/{i}/side", "either-or",
                    spaces[i].Side == SpaceSide.Room ? "room" : "cladding", null, null,
                    "One air space a side: a second on the same side does not look at the "
                        + "insulation's face.");
    }

    private static IEnumerable<Violation> Depth(
        Candidate candidate, Framing framing, UnitWords words)
    {
        var spaces = candidate.Spaces ?? [];
        var left = framing.DepthMm;
        if (candidate is { Lies: Placement.BetweenFraming, ThicknessMm: { } body }
            && candidate.Kind != MaterialKind.FoilSheet)
            left -= IsFibre(candidate.Kind)
                ? Math.Min(left, CompressedBatt.LeastShare * body)
                : Math.Min(left, body);
        for (var i = 0; i < spaces.Count; i++)
        {
            if (!Crosses(candidate.Lies, spaces[i].Side)) continue;
            var mm = spaces[i].ThicknessMm;
            if (mm > left + Tolerance)
                yield return AtMost(
                    $"/airSpaces/{i}/thickness", mm, left, words,
                    bound => $"In {words.Thickness(framing.DepthMm)} of framing there is room for "
                        + $"an air space of at most {bound} here.");
            left = Math.Max(0, left - mm);
        }
        if (candidate is not { Lies: Placement.BetweenFraming, ThicknessMm: { } thick }
            || !IsFibre(candidate.Kind)
            || framing.DepthMm >= CompressedBatt.LeastShare * thick - Tolerance)
            yield break;
        var most = framing.DepthMm / CompressedBatt.LeastShare;
        yield return AtMost(
            "/thickness", thick, most, words,
            bound => $"A batt squeezed into {words.Thickness(framing.DepthMm)} of framing is at "
                + $"most {bound} thick; squeezed below 40 % its resistance is not known.");
    }

    private static Violation AtMost(
        string path, double mm, double most, UnitWords words, Func<string, string> message)
    {
        var bound = words.Most(most);
        return new(
            path, "at-most", words.Thickness(mm), words.Number(bound), words.LengthUnit,
            message(words.Thickness(bound)));
    }
}
