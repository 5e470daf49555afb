namespace PostFrame.Engine.Heat;

/// <summary>What a face is made of and the state it is in.</summary>
public enum SurfaceFinish
{
    /// <summary>Bright aluminium foil, clean and dry.</summary>
    BrightFoil,

    /// <summary>Metallized film.</summary>
    MetallizedFilm,

    /// <summary>Foil on which condensate is just visible (above 0.5 g/m²).</summary>
    DampFoil,

    /// <summary>Foil clearly wet (above 2 g/m²).</summary>
    WetFoil,

    /// <summary>Foil under dust.</summary>
    DustyFoil,

    /// <summary>Galvanized steel, bright.</summary>
    GalvanizedSteel,

    /// <summary>Painted steel of any colour.</summary>
    PaintedSteel,

    /// <summary>White or coloured film facing.</summary>
    WhiteFacing,

    /// <summary>No facing: bare fibre or foam.</summary>
    Bare,

    /// <summary>Wood, paper, gypsum.</summary>
    Wood,
}
