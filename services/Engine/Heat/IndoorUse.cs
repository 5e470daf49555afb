namespace PostFrame.Engine.Heat;

/// <summary>What goes on inside, for the moisture it gives to the air.</summary>
public enum IndoorUse
{
    /// <summary>Dry goods, no people, no wet floor.</summary>
    DryStorage,

    /// <summary>People at work, a vehicle now and then.</summary>
    Workshop,

    /// <summary>People living there.</summary>
    Dwelling,

    /// <summary>Animals.</summary>
    Livestock,

    /// <summary>Washing vehicles or floors.</summary>
    WashBay,
}
