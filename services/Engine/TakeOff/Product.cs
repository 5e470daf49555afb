using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.TakeOff;

/// <summary>
/// A kind of insulation the shop can take off. Figures are defaults a shop replaces by its own
/// product data; each says where it comes from.
/// </summary>
public sealed record Product
{
    /// <summary>Our own neutral code, such as <c>blanket-3-white</c>.</summary>
    public required string Code { get; init; }

    /// <summary>In words, for people, sizes in inches.</summary>
    public required string Title { get; init; }

    /// <summary>The same with sizes in whole millimetres; null where it tells no size.</summary>
    public string? MetricTitle { get; init; }

    /// <summary>How it is bought and taken off.</summary>
    public required ProductKind Kind { get; init; }

    /// <summary>The facing in words; null when there is none.</summary>
    public string? Facing { get; init; }

    /// <summary>Nominal thickness; of spray foam the usual pass, editable per request.</summary>
    public required Marked<Length> Thickness { get; init; }

    /// <summary>
    /// Resistance of the product alone at <see cref="Thickness"/>, before installation.
    /// </summary>
    public required Marked<ThermalResistance> NominalR { get; init; }

    /// <summary>What the nominal width means.</summary>
    public required Marked<StripConstruction> Construction { get; init; }

    /// <summary>Tab of facing beyond the fibre, per tab; zero when none.</summary>
    public Length Tab { get; init; }

    /// <summary>Part of the nominal width that laps under the neighbour; zero when none.</summary>
    public Length LapInsideWidth { get; init; }

    /// <summary>Stock rolls; empty for area goods.</summary>
    public IReadOnlyList<RollSize> Rolls { get; init; } = [];

    /// <summary>Where the roll sizes come from.</summary>
    public string RollsMark { get; init; } = "M";

    /// <summary>Mass with facing [lb/ft²].</summary>
    public required Marked<double> PoundsPerSquareFoot { get; init; }

    /// <summary>Water-vapour permeance of the product as faced [US perm].</summary>
    public required Marked<double> Perm { get; init; }

    /// <summary>Emittance of the face towards the room [1].</summary>
    public required Marked<double> RoomFaceEmittance { get; init; }

    /// <summary>Emittance of the face towards the cladding [1].</summary>
    public required Marked<double> CladdingFaceEmittance { get; init; }

    /// <summary>Thickness when coiled for shipping; null for area goods.</summary>
    public Marked<Length>? CoiledThickness { get; init; }

    /// <summary>Area one bag (batts) or sheet (board) covers [ft²]; null otherwise.</summary>
    public Marked<double>? UnitCoverageFt2 { get; init; }

    /// <summary>True for strips cut from rolls.</summary>
    public bool IsCutFromRolls => Construction.Value != StripConstruction.None;

    /// <summary>In the words of a job in metric units, or of one in inches.</summary>
    public string TitleIn(bool metric) => metric ? MetricTitle ?? Title : Title;

    /// <summary>What one strip of a nominal width covers of the run.</summary>
    public Length CoverageOf(Length width) =>
        Construction.Value == StripConstruction.LapInside ? width - LapInsideWidth : width;

    /// <summary>Width of facing, tabs included: what a piece weighs and is bought by.</summary>
    public Length FacingWidthOf(Length width) => Construction.Value switch
    {
        StripConstruction.TabOutside or StripConstruction.FlangeOutside => width + Tab,
        StripConstruction.TwoTabs => width + Tab * 2,
        _ => width,
    };
}
