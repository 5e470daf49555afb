using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>The short heat summary of a plane, for a take-off.</summary>
public static class PlaneHeat
{
    /// <summary>
    /// Blanket squeezed to a few millimetres, inside the usual 0.035 to 0.04 W/(m·K).
    /// </summary>
    private const double SqueezedConductivityWPerMK = 0.035;

    /// <summary>
    /// Resistance and U-factor of the plane in winter and in summer, heat flowing out and in.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its documented
    /// range.</exception>
    /// <remarks>
    /// Parallel path over two sections: between the members film + product + film, at a member
    /// film + wood + film, with what is left of a product that lies over it. Capped at the section
    /// between the members, because a member standing in the room is a fin and not insulation.
    /// Source: ASHRAE HoF 2021 ch. 27 (parallel path for wood); ISO 6946:2017 clause 6.7.2.
    /// </remarks>
    public static PlaneHeatSummary Summarise(PlaneConstruction plane)
    {
        ArgumentNullException.ThrowIfNull(plane);
        return new PlaneHeatSummary(
            plane.NominalR,
            InSeason(plane, Season.Winter),
            InSeason(plane, Season.Summer),
            plane.Basis,
            Films.TitleOf(plane.Basis));
    }

    private static SeasonHeat InSeason(PlaneConstruction plane, Season season)
    {
        var heat = AssemblySolver.Solve(AssemblyOf(plane), At(plane, season));
        return new SeasonHeat(heat.R, heat.U, heat.Direction, MethodOf(plane, heat));
    }

    private static Assembly AssemblyOf(PlaneConstruction plane)
    {
        Check(plane);
        var candidate = CandidateOf(plane);
        if (!Fits(plane))
            return new Assembly
            {
                SlopeDegrees = plane.SlopeDegrees,
                RoomEmittance = plane.RoomFaceEmittance,
                Layers = [new Layer { Name = "product", Clear = new Slab.Solid(plane.NominalR) }],
            };
        return CandidateAssembly.Build(candidate, new PlaneSite
        {
            SlopeDegrees = plane.SlopeDegrees,
            Framing = plane.Framing,
            Basis = plane.Basis,
            SqueezedThicknessMm = plane.SqueezedThicknessMm,
            Winter = At(plane, Season.Winter),
            Summer = At(plane, Season.Summer),
        });
    }

    private static Candidate CandidateOf(PlaneConstruction plane) => new()
    {
        Name = "product",
        Kind = plane.Kind,
        KnownR = plane.NominalR,
        ThicknessMm = plane.ThicknessMm,
        RoomEmittance = plane.RoomFaceEmittance,
        Spaces = [],
    };

    private static bool Fits(PlaneConstruction plane) =>
        CandidateFit.Violations(CandidateOf(plane), plane.Framing).Count == 0;

    private static Conditions At(PlaneConstruction plane, Season season) => new()
    {
        // No air space in it, so only the sign of the difference matters, not its size.
        Room = Temperature.FromCelsius(21),
        Outside = Temperature.FromCelsius(season == Season.Winter ? -10 : 45),
        Season = season,
        Basis = plane.Basis,
    };

    /// <summary>What is left of a product over a member; never more than the product.</summary>
    internal static Slab.Solid Squeezed(ThermalResistance product, double thicknessMm)
    {
        var left = Slab.Solid.Of(thicknessMm, SqueezedConductivityWPerMK);
        return left.R.CompareTo(product) < 0 ? left : new Slab.Solid(product);
    }

    private static string MethodOf(PlaneConstruction plane, AssemblyHeat heat)
    {
        var wood = plane.Framing is { } framing
            ? FormattableString.Invariant($"{framing.Fraction:0.0 %} of wood")
            : "";
        var squeezed = Length.FromMillimetres(plane.SqueezedThicknessMm)
            .SayAbout(plane.Words.IsMetric);
        var text = (plane.Framing, CandidateOf(plane).Lies) switch
        {
            (null, _) => "product with its films, no framing given",
            _ when !Fits(plane) =>
                "product with its films; too thick for its framing, which is not counted",
            (_, Placement.UnderFraming) => "product with its films, unbroken under the framing",
            (_, Placement.BetweenFraming) =>
                $"{AssemblyWorking.Words(heat)}, product between {wood}, with films",
            _ => $"{AssemblyWorking.Words(heat)}, product squeezed to {squeezed} over {wood}, "
                + "with films",
        };
        return (heat.Capped ? text + ", limited to the part between members" : text)
            + "; no air space counted";
    }

    private static void Check(PlaneConstruction plane)
    {
        Limits.Check(plane.NominalR.TotalRValue, 0, 100, "h·ft²·°F/Btu", "nominal R");
        Limits.Check(plane.ThicknessMm, 0.1, 1000, "mm", "thickness");
        Limits.Check(plane.SqueezedThicknessMm, 0, plane.ThicknessMm, "mm", "squeezed thickness");
        if (plane.Framing is not { } framing) return;
        Limits.Check(framing.SpacingMm, 1, 5000, "mm", "framing spacing");
        Limits.Check(framing.WidthMm, 0, framing.SpacingMm / 2, "mm", "framing width");
        Limits.Check(framing.DepthMm, 0, 500, "mm", "framing depth");
        Limits.Check(framing.ConductivityWPerMK, 0.05, 0.5, "W/(m·K), wood", "conductivity");
    }
}
