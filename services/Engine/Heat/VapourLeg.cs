namespace PostFrame.Engine.Heat;

/// <summary>A stretch of the path of vapour on which its pressure is straight over sd.</summary>
/// <param name="FromPa">Vapour pressure at its inner end [Pa].</param>
/// <param name="FromSdM">sd from the room to there [m].</param>
/// <param name="ToPa">Vapour pressure at its outer end [Pa].</param>
/// <param name="ToSdM">sd from the room to there [m].</param>
public sealed record VapourLeg(double FromPa, double FromSdM, double ToPa, double ToSdM)
{
    /// <summary>Vapour that passes [kg/(m²·s)], outwards positive: δ₀·Δp/Δsd.</summary>
    public double Flow =>
        Vapour.StillAirPermeability * (FromPa - ToPa) / (ToSdM - FromSdM);
}
