namespace PostFrame.Engine.TakeOff;

/// <summary>How a product is bought and taken off.</summary>
public enum ProductKind
{
    /// <summary>Faced glass-fibre blanket in rolls, cut to pieces.</summary>
    Blanket,

    /// <summary>Foil-faced bubble sheet in rolls, cut to pieces.</summary>
    BubbleSheet,

    /// <summary>Sprayed on site; taken off in board feet, or m³ where the job is metric.</summary>
    SprayFoam,

    /// <summary>Batts between framing; taken off in bags by coverage.</summary>
    Batt,

    /// <summary>Rigid board; taken off in sheets.</summary>
    Board,
}
