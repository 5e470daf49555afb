namespace PostFrame.Engine.Heat;

/// <summary>The sections framing cuts an assembly into, and the two limits they give.</summary>
internal sealed class Sections
{
    private readonly Assembly assembly;
    private readonly double outside;
    private readonly double film;
    private readonly double filmAtFraming;
    private readonly double[] clear;

    public Sections(
        Assembly assembly,
        CalculationBasis basis,
        FlowDirection flow,
        double outside,
        IReadOnlyList<SolvedAirSpace> spaces)
    {
        this.assembly = assembly;
        this.outside = outside;
        film = Films.Inside(basis, flow, assembly.RoomEmittance).TotalSi;
        filmAtFraming = assembly.FramingFractions.Count == 0
            ? film
            : Films.Inside(
                basis, flow, assembly.RoomEmittanceAtFraming ?? assembly.RoomEmittance).TotalSi;
        var next = 0;
        clear = [.. assembly.Layers.Select(layer => layer.Clear is Slab.Solid solid
            ? solid.R.TotalSi
            : spaces[next++].Heat.R.TotalSi)];
    }

    /// <summary>Room film, layers, outside film of the section without framing [m²·K/W].</summary>
    public double[] Clear() => [film, .. clear, outside];

    /// <summary>R′: each section's own total, in parallel [m²·K/W].</summary>
    public double UpperLimit() => 1 / All().Sum(section => section.Share / section.R.TotalSi);

    /// <summary>R″: every layer's own parallel value, in series [m²·K/W].</summary>
    public double LowerLimit() => Planes().Sum(plane => plane.Value);

    /// <summary>Every section with its share, the one without framing first.</summary>
    public IReadOnlyList<HeatSection> All()
    {
        var fractions = assembly.FramingFractions;
        return [.. Enumerable.Range(0, 1 << fractions.Count).Select(section =>
        {
            var share = 1.0;
            for (var i = 0; i < fractions.Count; i++)
                share *= Has(section, i) ? fractions[i] : 1 - fractions[i];
            return new HeatSection(share, Parts(section));
        })];
    }

    /// <summary>Room film, layers, outside film, each in parallel over the framing.</summary>
    public IReadOnlyList<WorkingInput> Planes()
    {
        var fractions = assembly.FramingFractions;
        return
        [
            Part("room film",
                fractions.Count == 0 ? film : Parallel(fractions[0], film, filmAtFraming)),
            .. assembly.Layers.Select((layer, i) => Part(layer.Name, layer.AtFraming is null
                ? clear[i]
                : Parallel(fractions[layer.FramingIndex], clear[i], layer.AtFraming.R.TotalSi))),
            Part("outside film", outside),
        ];
    }

    private WorkingInput[] Parts(int section) =>
    [
        Part("room film", Has(section, 0) ? filmAtFraming : film),
        .. assembly.Layers.Select((layer, i) => Part(
            layer.Name,
            layer.AtFraming is not null && Has(section, layer.FramingIndex)
                ? layer.AtFraming.R.TotalSi
                : clear[i])),
        Part("outside film", outside),
    ];

    private static WorkingInput Part(string name, double r) => new(name, r, "m²·K/W");

    private static bool Has(int section, int framing) => (section >> framing & 1) == 1;

    private static double Parallel(double fraction, double clear, double framed) =>
        clear <= 0 || framed <= 0 ? 0 : 1 / ((1 - fraction) / clear + fraction / framed);
}
