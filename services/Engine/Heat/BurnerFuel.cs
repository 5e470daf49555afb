namespace PostFrame.Engine.Heat;

/// <summary>Fuels burnt in heaters without a flue.</summary>
public enum BurnerFuel
{
    /// <summary>Natural gas, taken as methane.</summary>
    NaturalGas,

    /// <summary>Propane.</summary>
    Propane,

    /// <summary>Kerosene.</summary>
    Kerosene,
}
