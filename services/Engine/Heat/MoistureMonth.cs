using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>One month of the year from the first wet month on.</summary>
/// <param name="Month">1 to 12.</param>
/// <param name="Outdoors">Mean outdoor air.</param>
/// <param name="Room">Room air.</param>
/// <param name="RoomRh">Relative humidity of the room air, 0 to 1; 1 where it was cut.</param>
/// <param name="RoomFaceRh">Relative humidity at the room face; mould needs about 0.8.</param>
/// <param name="ChangeGPerM2">Condensed, negative dried, in the month [g/m²].</param>
/// <param name="HeldGPerM2">Held at the month's end [g/m²].</param>
public sealed record MoistureMonth(
    int Month,
    Temperature Outdoors,
    Temperature Room,
    double RoomRh,
    double RoomFaceRh,
    double ChangeGPerM2,
    double HeldGPerM2)
{
    /// <summary>Vapour pressure of the room air [Pa].</summary>
    public required double RoomPa { get; init; }

    /// <summary>Vapour pressure outdoors [Pa].</summary>
    public required double OutdoorPa { get; init; }

    /// <summary>Temperature of the room face.</summary>
    public required Temperature RoomFace { get; init; }

    /// <summary>Vapour from the room in the month [g/m²]; negative where it came back.</summary>
    public required double FromRoomGPerM2 { get; init; }

    /// <summary>Vapour that reached outdoors in the month [g/m²].</summary>
    public required double ToOutdoorsGPerM2 { get; init; }

    /// <summary>
    /// The parts of the month, each until a place has dried; empty where nothing holds vapour back.
    /// </summary>
    public required IReadOnlyList<VapourSpell> Spells { get; init; }
}
