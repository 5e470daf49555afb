namespace PostFrame.Engine.Heat;

/// <summary>What an insulation is, for what it can reach at most.</summary>
public enum MaterialKind
{
    /// <summary>Faced glass-fibre blanket.</summary>
    Blanket,

    /// <summary>Glass-fibre or mineral-wool batt.</summary>
    Batt,

    /// <summary>Closed-cell spray foam.</summary>
    ClosedCellFoam,

    /// <summary>Open-cell spray foam.</summary>
    OpenCellFoam,

    /// <summary>Polyisocyanurate board.</summary>
    PolyisoBoard,

    /// <summary>Extruded polystyrene board.</summary>
    XpsBoard,

    /// <summary>Expanded polystyrene board.</summary>
    EpsBoard,

    /// <summary>Cellulose, blown or sprayed.</summary>
    Cellulose,

    /// <summary>Plastic bubble sheet with foil or film faces.</summary>
    BubbleSheet,

    /// <summary>A single foil or film without body.</summary>
    FoilSheet,
}
