using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>The short heat summary of a plane, for a take-off.</summary>
public static class PlaneHeat
{
    /// <summary>Wood. Source: ASHRAE HoF 2021 ch. 26 Table 2.</summary>
    private const double WoodEmittance = 0.9;

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
    /// film + squeezed product + wood + film. Capped at the section between the members, because
    /// a member standing in the room is a fin and not insulation.
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
        // No air space in it, so only the sign of the difference matters, not its size.
        var heat = AssemblySolver.Solve(AssemblyOf(plane), new Conditions
        {
            Room = Temperature.FromCelsius(21),
            Outside = Temperature.FromCelsius(season == Season.Winter ? -10 : 45),
            Season = season,
            Basis = plane.Basis,
        });
        return new SeasonHeat(heat.R, heat.U, heat.Direction, MethodOf(plane, heat));
    }

    private static Assembly AssemblyOf(PlaneConstruction plane)
    {
        Check(plane);
        var squeezed = Squeezed(plane.NominalR, plane.SqueezedThicknessMm);
        var framing = plane.Framing;
        return new Assembly
        {
            SlopeDegrees = plane.SlopeDegrees,
            RoomEmittance = plane.RoomFaceEmittance,
            RoomEmittanceAtFraming = framing is null ? null : WoodEmittance,
            FramingFractions = framing is null ? [] : [framing.Fraction],
            Layers = framing is null
                ? [Product(plane, null)]
                :
                [
                    new Layer
                    {
                        Name = "open between members",
                        Clear = Slab.Solid.None,
                        AtFraming = Slab.Solid.Of(framing.DepthMm, framing.ConductivityWPerMK),
                    },
                    Product(plane, squeezed),
                ],
        };
    }

    /// <summary>What is left of a product over a member; never more than the product.</summary>
    internal static Slab.Solid Squeezed(ThermalResistance product, double thicknessMm)
    {
        var left = Slab.Solid.Of(thicknessMm, SqueezedConductivityWPerMK);
        return left.R.CompareTo(product) < 0 ? left : new Slab.Solid(product);
    }

    private static Layer Product(PlaneConstruction plane, Slab.Solid? atFraming) => new()
    {
        Name = "product",
        Clear = new Slab.Solid(plane.NominalR),
        AtFraming = atFraming,
    };

    private static string MethodOf(PlaneConstruction plane, AssemblyHeat heat)
    {
        var text = plane.Framing is null
            ? "product with its films, no framing given"
            : FormattableString.Invariant(
                $"{AssemblyWorking.Words(heat)}, product squeezed to ")
                + FormattableString.Invariant($"{plane.SqueezedThicknessMm:0.#} mm ")
                + FormattableString.Invariant(
                    $"over {plane.Framing.Fraction:0.0 %} of wood, with films");
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
