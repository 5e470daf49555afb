namespace PostFrame.Engine.Heat;

/// <summary>What heat is bought as.</summary>
public enum HeatingFuel
{
    /// <summary>Natural gas, by the therm (100 000 Btu).</summary>
    NaturalGas,

    /// <summary>Propane, by the US gallon (91 330 Btu).</summary>
    Propane,

    /// <summary>No. 2 heating oil, by the US gallon (138 690 Btu).</summary>
    HeatingOil,

    /// <summary>Electricity turned into heat, by the kilowatt-hour.</summary>
    Electricity,

    /// <summary>Electricity that drives a heat pump, by the kilowatt-hour.</summary>
    HeatPump,
}
