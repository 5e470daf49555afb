using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;

namespace PostFrame.Engine;

/// <summary>
/// What is asked of <see cref="Sizing.Size"/>: the members of a sizing request, one by one, so that
/// a violation can point at the member it speaks of. Everything may be null; what a form needs and
/// lacks becomes a violation.
/// </summary>
public sealed record SizingInput
{
    /// <summary>/building</summary>
    public BuildingInput? Building { get; init; }

    /// <summary>/insulation, each line one product on some planes.</summary>
    public IReadOnlyList<InsulationInput>? Insulation { get; init; }

    /// <summary>/practice: the shop's allowances where they differ from the usual ones.</summary>
    public PracticeInput Practice { get; init; } = new();

    /// <summary>
    /// True when the building was given in metric units: metric defaults and words.
    /// </summary>
    public bool Metric { get; init; }

    /// <summary>The shop's own prices; null when no price is wanted.</summary>
    public PriceList? Prices { get; init; }
}

/// <summary>/insulation/n</summary>
public sealed record InsulationInput
{
    /// <summary>Plane ids; <c>roof</c> stands for every slope of the main roof.</summary>
    public IReadOnlyList<string>? Planes { get; init; }

    /// <summary>Code of a product in <see cref="ProductCatalogue"/>.</summary>
    public string? Product { get; init; }

    /// <summary>Nominal width; null with <see cref="BestRollWidth"/> or an area product.</summary>
    public Length? RollWidth { get; init; }

    /// <summary>True for <c>"rollWidth": "best"</c>: the widths are chosen to buy least.</summary>
    public bool BestRollWidth { get; init; }

    /// <summary>Default automatic.</summary>
    public RoofLayout? RoofLayout { get; init; }

    /// <summary>
    /// One piece over a break (gambrel, double pitch) or one each. Default continuous.
    /// </summary>
    public BreakLayout? BreakLayout { get; init; }

    /// <summary>Wall strips start this far above the strip base: wainscot, "above 8 ft".</summary>
    public Length? StartHeight { get; init; }

    /// <summary>What to do with a last strip that covers under 6 in. Default make it.</summary>
    public LastStrip? LastStrip { get; init; }

    /// <summary>Spray foam: thickness to spray. Other products have their own.</summary>
    public Length? Thickness { get; init; }
}
