using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>
/// What a building loses per kelvin between room and outdoors. Areas add as U·A, never as R.
/// </summary>
/// <param name="TransmissionWPerK">Through roof, walls, doors [W/K].</param>
/// <param name="AirWPerK">By air exchange [W/K].</param>
/// <param name="SlabEdgeWPerK">Through the slab edge [W/K].</param>
public sealed record BuildingLoss(
    double TransmissionWPerK, double AirWPerK, double SlabEdgeWPerK)
{
    /// <summary>
    /// Heat capacity of the air exchanged [W/K per m³/h]: 1.2 W/K per L/s, 1.08 Btu/h·°F per CFM.
    /// Source: ASHRAE HoF 2021 ch. 18.
    /// </summary>
    private const double AirWPerKPerM3PerHour = 1.2 / 3.6;

    /// <summary>All of it [W/K].</summary>
    public double TotalWPerK => TransmissionWPerK + AirWPerK + SlabEdgeWPerK;

    /// <summary>All of it [Btu/(h·°F)].</summary>
    public double TotalBtuPerHourF => TotalWPerK / 0.29307107 / 1.8;

    /// <summary>Adds up a building.</summary>
    /// <param name="elements">Areas with their U-factors.</param>
    /// <param name="airM3PerHour">Air exchanged with outdoors [m³/h], an assumption to
    /// state.</param>
    /// <param name="slabEdgeM">Length of the slab edge [m].</param>
    /// <param name="slabEdgeWPerMK">
    /// Loss of the edge [W/(m·K)]; 1.4 uninsulated. Source: ASHRAE HoF 2021 (read).
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static BuildingLoss Of(
        IEnumerable<LossElement> elements, double airM3PerHour, double slabEdgeM = 0,
        double slabEdgeWPerMK = 1.4)
    {
        ArgumentNullException.ThrowIfNull(elements);
        Limits.Check(airM3PerHour, 0, 1e8, "m³/h", nameof(airM3PerHour));
        Limits.Check(slabEdgeM, 0, 1e5, "m", nameof(slabEdgeM));
        Limits.Check(slabEdgeWPerMK, 0, 5, "W/(m·K)", nameof(slabEdgeWPerMK));
        var transmission = 0.0;
        foreach (var element in elements)
        {
            Limits.Check(element.AreaM2, 0, 1e7, "m²", element.Name);
            transmission += element.AreaM2 * element.U.TotalSi;
        }
        return new BuildingLoss(
            transmission, airM3PerHour * AirWPerKPerM3PerHour, slabEdgeM * slabEdgeWPerMK);
    }

    /// <summary>
    /// Heat needed at the design temperature [W]; zero when it is warmer outdoors.
    /// </summary>
    public double DesignLoadW(Temperature room, Temperature outdoors) =>
        Math.Max(0, TotalWPerK * room.KelvinsAbove(outdoors));
}
