namespace PostFrame.Engine.Buildings;

/// <summary>The forms a roof can be given in; each becomes a profile polyline.</summary>
public enum RoofForm
{
    Gable,
    OffsetRidge,

    /// <summary>One slope; sidewall A is the low eave.</summary>
    Monoslope,
    Gambrel,

    /// <summary>One or both sides change slope between eave and ridge.</summary>
    DoublePitch,

    /// <summary>A cross-section given point by point.</summary>
    Profile,
}
