using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>The short heat summary of a plane, for a take-off.</summary>
public static class PlaneHeat
{
    /// <summary>
    /// Resistance and U-factor of the plane in winter and in summer, heat flowing out and in.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its documented range.</exception>
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
        var flow = Films.FlowThrough(plane.SlopeDegrees, season);
        var outside = Films.Outside(plane.Basis, season).TotalSi;
        var inside = Films.Inside(plane.Basis, flow, plane.RoomFaceEmittance).TotalSi;
        var clear = outside + plane.NominalR.TotalSi + inside;
        var r = ThermalResistance.FromSi(clear);
        return new SeasonHeat(r, r.ToTransmittance(), flow, "films and product, no framing");
    }
}
