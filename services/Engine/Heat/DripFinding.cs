using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>
/// Whether room air condenses on the face it touches. It hangs on temperature alone, not on how
/// tight a facing is. Source: ISO 13788:2012 clause 5.
/// </summary>
/// <param name="OnsetRh">Room humidity at which it starts at winter design, 0 to 1.</param>
/// <param name="ClearNightRh">The same under a clear night sky; null for a wall.</param>
/// <param name="WorstMonth">
/// The month with the dampest face, of the heated ones in a heated room; null where not known.
/// </param>
/// <param name="WorstFaceRh">Humidity at the face then, 1 where it drips.</param>
public sealed record DripFinding(
    double OnsetRh, double? ClearNightRh, int? WorstMonth, double? WorstFaceRh)
{
    /// <summary>Mould grows on a face above this humidity. Source: ISO 13788:2012.</summary>
    public const double MouldRh = 0.8;

    /// <summary>The room face at winter design.</summary>
    public required Temperature DesignFace { get; init; }

    /// <summary>The room face under a clear night sky; null for a wall.</summary>
    public Temperature? ClearNightFace { get; init; }

    /// <summary>The room face in the worst month.</summary>
    public Temperature? WorstFace { get; init; }

    /// <summary>Vapour pressure of the room air in the worst month [Pa].</summary>
    public double? WorstRoomPa { get; init; }

    /// <summary>Computes the finding; months and room may be unknown.</summary>
    public static DripFinding Of(
        Assembly assembly, PlaneSite site, IReadOnlyList<OutdoorMonth>? months, RoomAir? room)
    {
        ArgumentNullException.ThrowIfNull(assembly);
        ArgumentNullException.ThrowIfNull(site);
        var design = FaceAt(assembly, site.Winter);
        var night = site.IsWall
            ? (Temperature?)null
            : FaceAt(assembly, site.Winter with
            {
                Outside = site.Winter.Outside.PlusKelvins(-SolAir.ClearNightKelvins),
            });
        var worst = months is null || room is null
            ? []
            : months
                // In a heated room the months without heating tell nothing of the insulation; an
                // unheated one is as cold as outdoors all year and damper by its use.
                .Where(month => room.HeatedTo is null
                    || room.At(month.Mean).KelvinsAbove(month.Mean) > 1)
                .Select(month => (month.Month, Pa: room.VapourPa(month), Face: FaceAt(
                    assembly,
                    site.Winter with { Room = room.At(month.Mean), Outside = month.Mean })))
                .OrderByDescending(x => Rh(x.Pa, x.Face)).ThenBy(x => x.Month)
                .Take(1)
                .ToArray();
        var found = worst.Length > 0;
        return new DripFinding(
            Onset(design, site.Winter.Room),
            night is { } face ? Onset(face, site.Winter.Room) : null,
            found ? worst[0].Month : null,
            found ? Rh(worst[0].Pa, worst[0].Face) : null)
        {
            DesignFace = design,
            ClearNightFace = night,
            WorstFace = found ? worst[0].Face : null,
            WorstRoomPa = found ? worst[0].Pa : null,
        };
    }

    private static Temperature FaceAt(Assembly assembly, Conditions conditions) =>
        AssemblySolver.Solve(assembly, conditions).RoomFace;

    private static double Onset(Temperature face, Temperature room) =>
        Math.Min(1, Vapour.Saturation(face) / Vapour.Saturation(room));

    private static double Rh(double roomPa, Temperature face) =>
        Math.Min(1, roomPa / Vapour.Saturation(face));
}
