using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>
/// A boundary between two layers in one steady state: how warm it is and how cold it would have to
/// be to sweat or freeze over.
/// </summary>
/// <param name="Place">Where it lies.</param>
/// <param name="At">Its temperature.</param>
/// <param name="FromRoom">Resistance from the room air to it.</param>
/// <param name="SaturationPa">Saturation pressure at its temperature [Pa].</param>
/// <param name="PressurePa">Vapour pressure there [Pa], at most saturation but in the room.</param>
public sealed record InterfaceState(
    string Place, Temperature At, ThermalResistance FromRoom, double SaturationPa,
    double PressurePa)
{
    /// <summary>The point of the vapour profile it is.</summary>
    public required VapourPoint Point { get; init; }

    /// <summary>
    /// The air it is the end towards, whose vapour pressure [Pa] it takes; null between.
    /// </summary>
    public required double? AirPa { get; init; }

    /// <summary>Dew point of the vapour there, or frost point below 0 °C.</summary>
    public Temperature DewPoint => Vapour.DewPoint(PressurePa);

    /// <summary>True where it would come down as frost.</summary>
    public bool IsFrost => DewPoint.TotalCelsius < 0;

    /// <summary>
    /// Every boundary from room air to outdoor air. Source: ISO 13788:2012 clause 6, saturation
    /// over water and over ice by its equations E.7 to E.10.
    /// </summary>
    /// <param name="heat">The solved assembly.</param>
    /// <param name="roomPa">Vapour pressure of the room air [Pa], 1 to 20 000.</param>
    /// <param name="outdoorPa">Vapour pressure outdoors [Pa], 1 to 20 000.</param>
    /// <exception cref="ArgumentOutOfRangeException">A pressure outside its range.</exception>
    public static IReadOnlyList<InterfaceState> Of(
        AssemblyHeat heat, double roomPa, double outdoorPa)
    {
        ArgumentNullException.ThrowIfNull(heat);
        var parts = VapourPath.PartsOf(heat.Profile);
        var points = Diffusion.Steady(heat.Profile, roomPa, outdoorPa).Points;
        var states = new List<InterfaceState>();
        var (point, r) = (0, 0.0);
        for (var node = 0; node < heat.Profile.Count; node++)
        {
            var at = points[point];
            // A layer that holds back neither heat nor vapour has one state on both sides.
            if (node == 0 || heat.Profile[node - 1] is not
                { ToNext.TotalSi: 0, SdToNextM: 0 })
                states.Add(new(
                    at.Place, at.Temperature, ThermalResistance.FromSi(r), at.SaturationPa,
                    at.PressurePa)
                {
                    Point = at,
                    AirPa = at.SdM == 0 ? roomPa
                        : at.SdM == points[^1].SdM ? outdoorPa
                        : null,
                });
            r += heat.Profile[node].ToNext.TotalSi;
            point += parts[node];
        }
        return states;
    }
}
