namespace PostFrame.Engine.Heat;

/// <summary>Long-wave emittance of faces. Paint colour does not matter here.</summary>
/// <param name="Value">The emittance, 0 to 1.</param>
/// <param name="Mark">R read, M from memory.</param>
/// <param name="Source">Where it is from.</param>
public sealed record Emittance(double Value, string Mark, string Source)
{
    private const string Table = "ASHRAE HoF 2021 ch. 26 Table 2";

    /// <summary>The emittance of a finish.</summary>
    public static Emittance Of(SurfaceFinish finish) => finish switch
    {
        SurfaceFinish.BrightFoil => new(0.05, "R", Table + ", aluminium foil, bright"),
        SurfaceFinish.MetallizedFilm => new(0.10, "M", "metallized film 0.05 to 0.1"),
        SurfaceFinish.DampFoil => new(0.30, "R", Table + ", condensate just visible"),
        SurfaceFinish.WetFoil => new(0.70, "R", Table + ", condensate clearly visible"),
        SurfaceFinish.DustyFoil => new(
            0.70, "M", "dust raises emittance; no table value, taken as for wet foil"),
        SurfaceFinish.GalvanizedSteel => new(0.25, "R", Table + ", galvanized, bright"),
        SurfaceFinish.PaintedSteel => new(0.90, "M", "coil-coated steel 0.85 to 0.90"),
        SurfaceFinish.WhiteFacing => new(0.90, "M", "film facing 0.85 to 0.9"),
        SurfaceFinish.Bare => new(0.90, "R", Table + ", nonmetallic"),
        SurfaceFinish.Wood => new(0.90, "R", Table + ", wood"),
        _ => throw new ArgumentOutOfRangeException(nameof(finish), finish, "Unknown finish."),
    };
}
