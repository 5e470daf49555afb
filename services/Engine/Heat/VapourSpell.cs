namespace PostFrame.Engine.Heat;

/// <summary>A part of a month in which the same places are wet.</summary>
/// <param name="Days">How long it lasts.</param>
/// <param name="In">From the room to the first place at saturation, or all the way.</param>
/// <param name="Out">From the last such place to outdoors, or all the way.</param>
public sealed record VapourSpell(double Days, VapourLeg In, VapourLeg Out);
