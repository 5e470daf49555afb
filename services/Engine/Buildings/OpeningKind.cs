namespace PostFrame.Engine.Buildings;

/// <summary>Kinds of opening; the kind decides whether strips inside it are deducted.</summary>
public enum OpeningKind
{
    WalkDoor,
    OverheadDoor,
    SlidingDoor,
    BifoldDoor,

    /// <summary>Any other wide framed opening.</summary>
    FramedOpening,
    Window,
    Louvre,

    /// <summary>A band of translucent panel under the eave.</summary>
    EaveLight,
}
