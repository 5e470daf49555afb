namespace PostFrame.Engine.Heat;

/// <summary>
/// The relative humidity of the room at which condensation begins, in a steady state.
/// </summary>
/// <param name="RoomFaceRh">At the room face and all the room air reaches freely, 0 to 1.</param>
/// <param name="HiddenRh">
/// Inside the assembly, once the vapour has had its time, 0 to 1; null where nothing lies hidden.
/// </param>
/// <param name="HiddenPlace">Where that is.</param>
public sealed record Onset(double RoomFaceRh, double? HiddenRh, string? HiddenPlace)
{
    /// <summary>What <see cref="HiddenRh"/> follows from; empty where nothing is hidden.</summary>
    public IReadOnlyList<WorkingInput> HiddenInputs { get; init; } = [];

    /// <summary>
    /// Finds both from the solved profile. Below the onset pressure is straight over sd, so each
    /// place gives its own limit: p_room = p_out + (psat − p_out)·Sd/(Sd − sd).
    /// Source: ISO 13788:2012 clause 6, solved for the room pressure (own derivation).
    /// </summary>
    /// <param name="heat">The assembly, heat flowing outwards.</param>
    /// <param name="outdoorPa">Vapour pressure outdoors [Pa], 0.1 to 20 000.</param>
    /// <exception cref="ArgumentOutOfRangeException">The pressure outside its range.</exception>
    public static Onset Of(AssemblyHeat heat, double outdoorPa)
    {
        ArgumentNullException.ThrowIfNull(heat);
        Limits.Check(outdoorPa, 0.1, 20_000, "Pa", nameof(outdoorPa));
        var path = VapourPath.Through(heat.Profile, VapourPath.PartsOf(heat.Profile));
        var saturated = Vapour.Saturation(heat.Conditions.Room);
        var face = Math.Min(1, path.Saturation[0] / saturated);
        var last = path.Sd.Length - 1;
        var (least, at) = (double.PositiveInfinity, 0);
        for (var i = 1; i < last; i++)
        {
            var room = outdoorPa + (path.Saturation[i] - outdoorPa) * path.Sd[last]
                / (path.Sd[last] - path.Sd[i]);
            if (room >= least) continue;
            (least, at) = (room, i);
        }
        if (at == 0) return new Onset(face, null, null);
        var rh = Math.Clamp(least / saturated, 0, 1);
        return new Onset(face, rh, path.Points[path.ColdestPoint[at]].Name)
        {
            HiddenInputs =
            [
                new("p_out", outdoorPa, "Pa"), new("psat", path.Saturation[at], "Pa"),
                new("sd", path.Sd[at], "m"), new("Sd", path.Sd[last], "m"),
                new("psat(t_room)", saturated, "Pa"),
            ],
        };
    }
}
