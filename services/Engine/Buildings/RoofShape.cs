namespace PostFrame.Engine.Buildings;

/// <summary>The main roof as a profile from eave line to eave line.</summary>
/// <param name="Profile">Heights above the strip base, across from sidewall A.</param>
/// <param name="Ridge">Vertex of the ridge; null when one slope runs from wall to wall.</param>
internal sealed record RoofShape(Profile Profile, int? Ridge);
