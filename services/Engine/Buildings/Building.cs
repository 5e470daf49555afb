using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Buildings;

/// <summary>A building with every datum resolved and every check of its shape passed.</summary>
internal sealed record Building
{
    public required string? Name { get; init; }

    public required bool Metric { get; init; }

    public required RoofForm Form { get; init; }

    /// <summary>Out to out of sidewall girts.</summary>
    public required Length Width { get; init; }

    /// <summary>Out to out of endwall girts.</summary>
    public required Length Length { get; init; }

    public required RoofShape Roof { get; init; }

    public required HeightDatum Datum { get; init; }

    /// <summary>Top of a stem wall above the strip base: where wall strips start.</summary>
    public required Length StemWall { get; init; }

    /// <summary>Vented part of the ridge; null when closed.</summary>
    public required Interval? Vent { get; init; }

    /// <summary>Total horizontal width of the slot; null: the practice's set-back holds.</summary>
    public required Length? VentSlot { get; init; }

    /// <summary>Horizontal; zero unless blanket is to cover it.</summary>
    public required Length CoveredEaveOverhang { get; init; }

    /// <summary>Horizontal; zero unless blanket is to cover it.</summary>
    public required Length CoveredRakeOverhang { get; init; }

    public required IReadOnlyList<LeanTo> LeanTos { get; init; }

    /// <summary>The part along the length that is insulated.</summary>
    public required Interval Insulated { get; init; }

    /// <summary>Where a partition stands; null without one.</summary>
    public required Length? Partition { get; init; }

    public required IReadOnlyList<TranslucentPanel> Panels { get; init; }

    public required Framing RoofFraming { get; init; }

    public required Framing WallFraming { get; init; }

    public LeanTo? LeanToAt(BuildingSide side) => LeanTos.FirstOrDefault(l => l.Side == side);
}
