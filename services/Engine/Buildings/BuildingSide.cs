namespace PostFrame.Engine.Buildings;

/// <summary>The side of a building, named by its sidewall.</summary>
public enum BuildingSide
{
    A,
    B,
}
