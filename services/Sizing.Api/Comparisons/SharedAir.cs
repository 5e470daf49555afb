using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>The room air every line meets: at winter design, and month by month.</summary>
internal sealed record SharedAir(RoomAir Room, AirState Design, IReadOnlyList<AirState> Months)
{
    /// <summary>
    /// Outdoor air at winter design is taken at 80 % (own assumption; cold air holds little).
    /// </summary>
    private const double OutdoorRhAtDesign = 0.8;

    public static SharedAir Of(
        RoomAir room, Temperature outdoors, IReadOnlyList<OutdoorMonth>? months) => new(
        room,
        AirState.Of(room, new OutdoorMonth(
            1, outdoors, OutdoorRhAtDesign * Vapour.Saturation(outdoors))),
        [.. (months ?? []).Select(month => AirState.Of(room, month))]);
}

/// <summary>Room air in one state of the weather.</summary>
internal sealed record AirState(OutdoorMonth Outdoors, Temperature At, double Pa)
{
    /// <summary>0 to 1.</summary>
    public double Rh => Pa / Vapour.Saturation(At);

    /// <summary>Dew point, or frost point below freezing.</summary>
    public Temperature DewPoint => Vapour.DewPoint(Pa);

    public bool IsFrost => DewPoint.TotalCelsius < 0;

    public static AirState Of(RoomAir room, OutdoorMonth outdoors) =>
        new(outdoors, room.At(outdoors.Mean), room.VapourPa(outdoors));
}

/// <summary>What a heater without a flue gives to the room.</summary>
internal sealed record BurnerVapour(
    BurnerAsked Asked, Temperature Room, double WaterKgPerHour, double ComputedPa)
{
    /// <summary>The most a room air is reckoned with [Pa].</summary>
    public const double MostPa = 4000;

    public double ExcessPa => Math.Min(MostPa, ComputedPa);

    public double GramsPerMegajoule =>
        IndoorMoisture.BurnerWaterKgPerHour(Asked.Fuel, 1e6) * 1000 / 3600;

    public static BurnerVapour Of(BurnerAsked asked, Temperature room)
    {
        var water = IndoorMoisture.BurnerWaterKgPerHour(asked.Fuel, asked.InputW);
        return new(asked, room, water, IndoorMoisture.ExcessOfWaterPa(
            water, asked.AirChangesPerHour, asked.VolumeM3, room));
    }
}
