using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>Builds the assembly of a candidate in the plane every line shares.</summary>
public static class CandidateAssembly
{
    /// <summary>
    /// Of wood and of a liner's room face, which nobody speaks of: painted or bare. Source: ASHRAE
    /// HoF 2021 ch. 26 Table 2.
    /// </summary>
    private const double OrdinaryEmittance = 0.9;

    /// <summary>
    /// What has to be known before the candidate can be rebuilt: thickness, the face the room
    /// sees, and for foil and bubble both faces and the spaces.
    /// </summary>
    public static IReadOnlyList<MissingFact> Missing(Candidate candidate)
    {
        ArgumentNullException.ThrowIfNull(candidate);
        var missing = new List<MissingFact>();
        if (candidate is { KnownR: null, ThicknessMm: null, MaterialR: null })
            missing.Add(new("thickness", $"How thick is {candidate.Name}?"));
        if (candidate is { KnownR: null, ClaimedR: null, IsReflective: false })
            missing.Add(new("claimedR", $"Which R is stated for {candidate.Name}? None is put in "
                + "its place."));
        if (candidate.RoomEmittance is null)
            missing.Add(new("roomFace", $"What does the room see of {candidate.Name}: bright "
                + "foil, white facing, or bare?"));
        if (candidate.IsReflective && candidate.Spaces is null)
            missing.Add(new("airSpaces", $"Does {candidate.Name} have an enclosed air space beside "
                + "a bright face? On which side and how thick? Say none if it touches the steel."));
        var facesSpace = candidate.Spaces?.Any(s => s.Side == SpaceSide.Cladding) ?? false;
        if (facesSpace && candidate.CladdingEmittance is null)
            missing.Add(new("claddingFace", $"Which face of {candidate.Name} looks at the air "
                + "space towards the cladding?"));
        return missing;
    }

    /// <summary>
    /// What can be rebuilt without, but would count for more if it were said: the space beside a
    /// bright face of an insulation that has a body of its own.
    /// </summary>
    public static IReadOnlyList<MissingFact> Unsaid(Candidate candidate)
    {
        ArgumentNullException.ThrowIfNull(candidate);
        return candidate is { IsReflective: false, Spaces: null, CladdingEmittance: < 0.5 }
            ? [new("airSpaces", $"Is there an enclosed air space beside the bright face of "
                + $"{candidate.Name} towards the cladding, and how thick? It is counted as "
                + "touching, where the face is worth nothing.")]
            : [];
    }

    /// <summary>The assembly, room first; steel outside.</summary>
    /// <exception cref="InvalidOperationException">
    /// Something needed is missing, or it does not fit the frame.
    /// </exception>
    public static Assembly Build(Candidate candidate, PlaneSite site)
    {
        ArgumentNullException.ThrowIfNull(candidate);
        ArgumentNullException.ThrowIfNull(site);
        if (Missing(candidate) is [var first, ..])
            throw new InvalidOperationException($"Missing {first.Fact} of {candidate.Name}.");
        if (CandidateFit.Violations(candidate, site.Framing) is [var misfit, ..])
            throw new InvalidOperationException($"{misfit.Path} {misfit.Actual}: {misfit.Message}");

        var spaces = candidate.Spaces ?? [];
        var inner = spaces.Where(space => space.Side == SpaceSide.Room).ToList();
        var outer = spaces.Where(space => space.Side == SpaceSide.Cladding).ToList();
        var lined = inner.Count > 0;
        var layers = new List<Layer>();
        if (lined) layers.Add(Thin("liner", 0));
        foreach (var space in inner)
            layers.Add(Gap(space, space.FacingEmittance, candidate.RoomEmittance!.Value, site));
        layers.AddRange(StandingMembers(candidate, site));
        if (FacingSd(candidate) is > 0 and var sd) layers.Add(Thin("facing", sd));
        layers.AddRange(Body(candidate, site, outer.Count > 0));
        foreach (var space in outer)
            layers.Add(Gap(space, candidate.CladdingEmittance!.Value, space.FacingEmittance, site));
        layers.Add(Thin("steel", double.PositiveInfinity));

        var membersShow = !lined && candidate.Lies != Placement.UnderFraming;
        return new Assembly
        {
            SlopeDegrees = site.SlopeDegrees,
            Layers = layers,
            FramingFractions = site.Framing is { } framing ? [framing.Fraction] : [],
            RoomEmittance = lined ? OrdinaryEmittance : candidate.RoomEmittance!.Value,
            RoomEmittanceAtFraming =
                site.Framing is not null && membersShow ? OrdinaryEmittance : null,
        };
    }

    /// <summary>
    /// Members under a product that lies over them, as far as no air space takes their depth.
    /// </summary>
    private static IEnumerable<Layer> StandingMembers(Candidate candidate, PlaneSite site)
    {
        if (site.Framing is not { } framing || candidate.Lies != Placement.OverFraming
            || CandidateFit.DepthLeft(candidate, framing) is not (> 0 and var left))
            yield break;
        yield return new Layer
        {
            Name = "open between members",
            Clear = Slab.Solid.None,
            AtFraming = Slab.Solid.Of(left, framing.ConductivityWPerMK),
        };
    }

    private static IEnumerable<Layer> Body(Candidate candidate, PlaneSite site, bool spaceOutside)
    {
        var r = candidate.MaterialR!.Value;
        var framing = site.Framing;
        if (framing is null || candidate.Lies == Placement.UnderFraming)
        {
            yield return Insulation(candidate, new Slab.Solid(r), null);
            // Without an air space told of, what lies between the members counts for nothing.
            if (framing is not null && !spaceOutside)
                yield return Thin("uncounted cavity", 0);
            yield break;
        }
        if (candidate.Lies == Placement.BetweenFraming)
        {
            // The members are as deep as they are: what spaces between them take is not left here.
            // Fibre thicker than its cavity is squeezed into it; foam stands proud of the wood and
            // leaves its face bare.
            var left = CandidateFit.DepthLeft(candidate, framing);
            var clear = CandidateFit.IsFibre(candidate.Kind)
                && candidate.ThicknessMm is { } mm && mm > left
                    ? new Slab.Solid(CompressedBatt.R(r, mm, left)) { From = new(r, mm, left) }
                    : new Slab.Solid(r);
            yield return Insulation(
                candidate, clear, Slab.Solid.Of(left, framing.ConductivityWPerMK));
            yield break;
        }
        // Screws draw the cladding down on anything soft; a board keeps its thickness.
        yield return Insulation(
            candidate, new Slab.Solid(r),
            IsBoard(candidate.Kind)
                ? null
                : PlaneHeat.Squeezed(r, site.SqueezedThicknessMm));
    }

    private static bool IsBoard(MaterialKind kind) => kind
        is MaterialKind.PolyisoBoard or MaterialKind.XpsBoard or MaterialKind.EpsBoard;

    private static Layer Insulation(
        Candidate candidate, Slab.Solid clear, Slab.Solid? framed) => new()
        {
            Name = "insulation",
            Clear = clear,
            AtFraming = framed,
            VapourSdM = SdOf(candidate),
        };

    /// <summary>
    /// sd of the facing on the room side; foam and board carry theirs themselves. The permeance of
    /// a faced blanket or batt is its facing's (labels name that), the fibre comes to it; a sheet's
    /// is of the whole sheet.
    /// </summary>
    private static double FacingSd(Candidate candidate) =>
        NeedsPerm(candidate.Kind) && candidate.Perm is { } perm
            ? Math.Max(0, Vapour.SdOfPerm(perm) - (candidate.IsReflective ? BodySd(candidate) : 0))
            : 0;

    private static double SdOf(Candidate candidate) =>
        !NeedsPerm(candidate.Kind) && candidate.Perm is { } perm
            ? Vapour.SdOfPerm(perm)
            : BodySd(candidate);

    private static double BodySd(Candidate candidate) =>
        MaterialBand.Of(candidate.Kind).VapourFactor * (candidate.ThicknessMm ?? 0) / 1000;

    /// <summary>True where the facing, not the body, decides how much vapour passes.</summary>
    public static bool NeedsPerm(MaterialKind kind) =>
        kind is MaterialKind.Blanket or MaterialKind.Batt or MaterialKind.BubbleSheet
            or MaterialKind.FoilSheet;

    private static Layer Thin(string name, double sd) => new()
    {
        Name = name,
        Clear = Slab.Solid.None,
        VapourSdM = sd,
    };

    private static Layer Gap(CandidateSpace space, double inner, double outer, PlaneSite site) =>
        new()
        {
            Name = "air space",
            Clear = new Slab.Air(new AirSpace
            {
                ThicknessMm = space.ThicknessMm,
                InnerEmittance = inner,
                OuterEmittance = outer,
                OpeningsMm2 = space.OpeningsMm2,
            }),
            AtFraming = site.Framing is { } framing
                ? Slab.Solid.Of(space.ThicknessMm, framing.ConductivityWPerMK)
                : null,
            VapourSdM = space.ThicknessMm / 1000,
        };
}
