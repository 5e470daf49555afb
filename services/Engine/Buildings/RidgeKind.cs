namespace PostFrame.Engine.Buildings;

/// <summary>Whether the ridge lets air out.</summary>
public enum RidgeKind
{
    Closed,
    Vented,
}
