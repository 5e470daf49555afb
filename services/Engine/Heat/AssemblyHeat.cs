using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>What an assembly does under stated conditions.</summary>
public sealed record AssemblyHeat
{
    /// <summary>Resistance air to air, framing included; never above the clear field.</summary>
    public required ThermalResistance R { get; init; }

    /// <summary>The section without framing, air to air.</summary>
    public required ThermalResistance ClearField { get; init; }

    /// <summary>Upper limit R′ (parallel path).</summary>
    public required ThermalResistance UpperLimit { get; init; }

    /// <summary>Lower limit R″ (isothermal planes).</summary>
    public required ThermalResistance LowerLimit { get; init; }

    /// <summary>The method R was taken by.</summary>
    public required BridgeMethod Method { get; init; }

    /// <summary>True where R was cut down to the clear field.</summary>
    public required bool Capped { get; init; }

    /// <summary>The way the heat flows.</summary>
    public required FlowDirection Direction { get; init; }

    /// <summary>Heat through the assembly [W/m²], positive from room to outdoors.</summary>
    public required double FluxWPerM2 { get; init; }

    /// <summary>
    /// The clear section from room air to outdoor air: every node and the resistance to the next.
    /// </summary>
    public required IReadOnlyList<ProfileNode> Profile { get; init; }

    /// <summary>The air spaces as they came out, in layer order.</summary>
    public required IReadOnlyList<SolvedAirSpace> AirSpaces { get; init; }

    /// <summary>The sections framing cuts it into, the one without framing first.</summary>
    public required IReadOnlyList<HeatSection> Sections { get; init; }

    /// <summary>Each film's and layer's own parallel value [m²·K/W], the parts of R″.</summary>
    public required IReadOnlyList<WorkingInput> Planes { get; init; }

    /// <summary>What it was mixed from; null where no space is slightly ventilated.</summary>
    public VentedMix? Mix { get; init; }

    /// <summary>The conditions it was solved in.</summary>
    public required Conditions Conditions { get; init; }

    /// <summary>The U-factor, 1/R.</summary>
    public ThermalTransmittance U => R.ToTransmittance();

    /// <summary>Temperature of the room face between the members.</summary>
    public Temperature RoomFace => Profile[1].Temperature;

    /// <summary>Emittance of the room face between the members.</summary>
    public required double RoomEmittance { get; init; }

    /// <summary>The share of the heat that reaches or leaves the room face as radiation.</summary>
    public double RoomFaceRadiantShare =>
        Films.RadiantInside(Conditions.Basis, RoomEmittance) * Profile[0].ToNext.TotalSi;
}
