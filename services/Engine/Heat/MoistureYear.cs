using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>
/// Month-by-month condensation and drying inside an assembly.
/// Source: ISO 13788:2012 clause 6. The year starts, dry, at the first month that condenses after
/// one that does not; a wet place stays at saturation until it has dried, within the month too.
/// </summary>
public sealed record MoistureYear
{
    /// <summary>Below this a year counts as dry [g/m²]: less than is weighed (own).</summary>
    internal const double NothingGPerM2 = 0.1;

    /// <summary>
    /// Up to this carried over the year nearly dries [g/m²]: a hundredth of a millimetre of
    /// water, below what monthly diffusion can tell (own).
    /// </summary>
    internal const double LittleGPerM2 = 10;

    /// <summary>Twelve months in order from the first wet one.</summary>
    public required IReadOnlyList<MoistureMonth> Months { get; init; }

    /// <summary>Where the most water gathers; null when none does.</summary>
    public required string? Place { get; init; }

    /// <summary>Most water held at a month's end [g/m²].</summary>
    public double PeakGPerM2 => Months.Max(month => month.HeldGPerM2);

    /// <summary>Water left after twelve months [g/m²].</summary>
    public double CarriedOverGPerM2 => Months[^1].HeldGPerM2;

    /// <summary>What the year amounts to.</summary>
    public MoistureVerdict Verdict => PeakGPerM2 < NothingGPerM2 ? MoistureVerdict.Dry
        : CarriedOverGPerM2 < NothingGPerM2 ? MoistureVerdict.WetsAndDries
        : CarriedOverGPerM2 < LittleGPerM2 ? MoistureVerdict.NearlyDries
        : MoistureVerdict.Accumulates;

    /// <summary>Runs the year.</summary>
    /// <param name="assembly">What is built.</param>
    /// <param name="basis">The system for its films and spaces.</param>
    /// <param name="year">Twelve months outdoors.</param>
    /// <param name="room">How the room is kept.</param>
    /// <param name="skyKelvins">Mean cooling of the outside by the sky [K], 0 to 12.</param>
    /// <exception cref="ArgumentException">Not exactly the months 1 to 12.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static MoistureYear Of(
        Assembly assembly, CalculationBasis basis, IReadOnlyList<OutdoorMonth> year,
        RoomAir room, double skyKelvins = 0)
    {
        ArgumentNullException.ThrowIfNull(room);
        return ThermalYear.Of(assembly, basis, year, room, skyKelvins).Wetted(room);
    }
}
