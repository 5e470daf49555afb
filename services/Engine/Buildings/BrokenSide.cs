namespace PostFrame.Engine.Buildings;

/// <summary>The side of a double-pitch roof that changes slope.</summary>
public enum BrokenSide
{
    A,
    B,
    Both,
}
