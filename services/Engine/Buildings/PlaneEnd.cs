namespace PostFrame.Engine.Buildings;

/// <summary>What a piece meets at its bottom or top; each asks for its own allowance.</summary>
internal enum PlaneEnd
{
    Eave,
    Ridge,
    VentedRidge,

    /// <summary>A lean-to's roof dies into the main roof or wall.</summary>
    Junction,

    /// <summary>A change of slope at which pieces are lapped.</summary>
    Break,
    WallTop,
    WallBase,

    /// <summary>Head, sill or underside of an opening.</summary>
    OpeningEdge,
}
