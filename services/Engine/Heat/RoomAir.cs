using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>How the room is kept through the year.</summary>
public sealed record RoomAir
{
    /// <summary>What the heating keeps at least; null where nothing heats it.</summary>
    public Temperature? HeatedTo { get; init; }

    /// <summary>Excess vapour pressure at 0 °C outdoors and below [Pa], 0 to 4000.</summary>
    public required double ColdExcessPa { get; init; }

    /// <summary>Water of burners without a flue and the like, added as pressure [Pa].</summary>
    public double BurnerExcessPa { get; init; }

    /// <summary>
    /// Room air at an outdoor mean: the outdoor air, but never below the heating.
    /// </summary>
    public Temperature At(Temperature outdoors) =>
        HeatedTo is { } heated && heated.CompareTo(outdoors) > 0 ? heated : outdoors;

    /// <summary>Vapour pressure of the room air [Pa], at most saturation.</summary>
    public double VapourPa(OutdoorMonth month)
    {
        var burner = IndoorMoisture.ExcessPa(BurnerExcessPa, month.Mean);
        var excess = IndoorMoisture.ExcessPa(ColdExcessPa, month.Mean) + burner;
        return Math.Min(month.VapourPressurePa + excess, Vapour.Saturation(At(month.Mean)));
    }
}
