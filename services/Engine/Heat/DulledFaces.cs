namespace PostFrame.Engine.Heat;

/// <summary>
/// What is left of an assembly whose bright faces are no longer clean and dry: the same assembly
/// with their emittance raised.
/// </summary>
/// <param name="State">The state of the faces.</param>
/// <param name="Emittance">Their emittance then.</param>
/// <param name="Winter">The winter with it.</param>
/// <param name="Summer">The summer with it.</param>
public sealed record DulledFaces(
    SurfaceFinish State, double Emittance, AssemblyHeat Winter, AssemblyHeat Summer)
{
    /// <summary>A face below this counts as bright: foil with dew just visible has it.</summary>
    public const double BrightBelow = 0.3;

    private static readonly SurfaceFinish[] States =
        [SurfaceFinish.DampFoil, SurfaceFinish.WetFoil];

    /// <summary>
    /// Damp (dew just visible, ε 0.30) and wet (clearly visible, ε 0.70; dust is taken alike); none
    /// where no bright face looks at air. Source: ASHRAE HoF 2021 ch. 26 Table 2.
    /// </summary>
    public static IReadOnlyList<DulledFaces> Of(
        Assembly assembly, Conditions winter, Conditions summer)
    {
        ArgumentNullException.ThrowIfNull(assembly);
        if (assembly.LeastEmittance >= BrightBelow) return [];
        return
        [
            .. States.Select(state =>
            {
                var emittance = Heat.Emittance.Of(state).Value;
                var dulled = assembly.WithFacesOfAtLeast(emittance);
                return new DulledFaces(
                    state, emittance, AssemblySolver.Solve(dulled, winter),
                    AssemblySolver.Solve(dulled, summer));
            }),
        ];
    }
}
