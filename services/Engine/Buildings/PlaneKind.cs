namespace PostFrame.Engine.Buildings;

/// <summary>What a plane is to the crew; decides its band on labels and map.</summary>
public enum PlaneKind
{
    Roof,
    Sidewall,
    Endwall,
}
