namespace PostFrame.Engine.Heat;

/// <summary>On which side of the insulation an air space lies.</summary>
public enum SpaceSide
{
    /// <summary>Towards the room, closed off by a liner.</summary>
    Room,

    /// <summary>Towards the cladding.</summary>
    Cladding,
}
