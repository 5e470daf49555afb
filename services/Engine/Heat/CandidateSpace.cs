namespace PostFrame.Engine.Heat;

/// <summary>An air space beside the insulation.</summary>
/// <param name="Side">Which side.</param>
/// <param name="ThicknessMm">How thick [mm].</param>
/// <param name="OpeningsMm2">Openings to outdoors [mm² per m or m²]; 0 is enclosed.</param>
/// <param name="FacingEmittance">Emittance of the face opposite the insulation.</param>
public sealed record CandidateSpace(
    SpaceSide Side, double ThicknessMm, double OpeningsMm2, double FacingEmittance = 0.9);
