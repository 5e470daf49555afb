using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>
/// An insulation as somebody offers it, ours or a rival's. What was not said is null and stays
/// null: it is asked for, never filled in.
/// </summary>
public sealed record Candidate
{
    /// <summary>What to call it.</summary>
    public required string Name { get; init; }

    /// <summary>What it is.</summary>
    public required MaterialKind Kind { get; init; }

    /// <summary>Its own resistance where product data give it.</summary>
    public ThermalResistance? KnownR { get; init; }

    /// <summary>The R that was claimed [h·ft²·°F/Btu].</summary>
    public double? ClaimedR { get; init; }

    /// <summary>The share of radiant heat it was claimed to cut [%].</summary>
    public double? ClaimedRadiantCutPercent { get; init; }

    /// <summary>Its thickness [mm].</summary>
    public double? ThicknessMm { get; init; }

    /// <summary>Emittance of the face towards the room.</summary>
    public double? RoomEmittance { get; init; }

    /// <summary>Emittance of the face towards the cladding.</summary>
    public double? CladdingEmittance { get; init; }

    /// <summary>Air spaces; null when nothing was said, empty when there are none.</summary>
    public IReadOnlyList<CandidateSpace>? Spaces { get; init; }

    /// <summary>Where it lies; null takes what is usual for its kind.</summary>
    public Placement? Placement { get; init; }

    /// <summary>Permeance of the facing, or of foam, board and sheet, dry cup [US perm].</summary>
    public double? Perm { get; init; }

    /// <summary>True for foil and bubble, whose worth hangs on faces and spaces.</summary>
    public bool IsReflective => Kind is MaterialKind.BubbleSheet or MaterialKind.FoilSheet;

    /// <summary>Where it lies, stated or usual.</summary>
    public Placement Lies => Placement ?? (Kind switch
    {
        MaterialKind.Blanket => Heat.Placement.OverFraming,
        MaterialKind.BubbleSheet or MaterialKind.FoilSheet =>
            Spaces is { Count: > 0 } && Spaces.Any(space => space.Side == SpaceSide.Cladding)
                ? Heat.Placement.UnderFraming
                : Heat.Placement.OverFraming,
        MaterialKind.PolyisoBoard or MaterialKind.XpsBoard or MaterialKind.EpsBoard =>
            Heat.Placement.UnderFraming,
        _ => Heat.Placement.BetweenFraming,
    });

    /// <summary>
    /// The resistance it is rebuilt with: known; else claimed, as far as the material reaches it. A
    /// reflective sheet of which nothing was claimed, or more than it reaches, is taken as such
    /// sheets are. Null where that hangs on what was not said.
    /// </summary>
    public ThermalResistance? MaterialR
    {
        get
        {
            if (KnownR is { } known) return known;
            if (MaterialBand.MostOf(Kind, ThicknessMm) is not { } most) return null;
            var within = ClaimedR <= most.TotalRValue + 0.05;
            if (within) return ThermalResistance.FromRValue(ClaimedR!.Value);
            if (IsReflective) return MaterialBand.UsualOf(Kind, ThicknessMm);
            return ClaimedR is null ? null : most;
        }
    }
}
