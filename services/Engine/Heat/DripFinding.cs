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

    /// <summary>Computes the finding; months and room may be unknown.</summary>
    public static DripFinding Of(
        Assembly assembly, PlaneSite site, IReadOnlyList<OutdoorMonth>? months, RoomAir? room)
    {
        ArgumentNullException.ThrowIfNull(assembly);
        ArgumentNullException.ThrowIfNull(site);
        var night = site.IsWall
            ? (double?)null
            : OnsetAt(assembly, site.Winter with
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
                .Select(month => (month.Month, Rh: FaceRh(assembly, site, month, room)))
                .OrderByDescending(x => x.Rh).ThenBy(x => x.Month)
                .Take(1)
                .ToArray();
        return new DripFinding(
            OnsetAt(assembly, site.Winter), night,
            worst.Length == 0 ? null : worst[0].Month,
            worst.Length == 0 ? null : worst[0].Rh);
    }

    private static double OnsetAt(Assembly assembly, Conditions conditions)
    {
        var heat = AssemblySolver.Solve(assembly, conditions);
        return Math.Min(
            1, Vapour.Saturation(heat.RoomFace) / Vapour.Saturation(conditions.Room));
    }

    private static double FaceRh(
        Assembly assembly, PlaneSite site, OutdoorMonth month, RoomAir room)
    {
        var heat = AssemblySolver.Solve(assembly, site.Winter with
        {
            Room = room.At(month.Mean),
            Outside = month.Mean,
        });
        return Math.Min(1, room.VapourPa(month) / Vapour.Saturation(heat.RoomFace));
    }
}
