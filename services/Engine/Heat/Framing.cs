namespace PostFrame.Engine.Heat;

/// <summary>Evenly spaced wood members that cross a plane: purlins, girts or studs.</summary>
public sealed record Framing
{
    /// <summary>Width of a member along the plane [mm]; above 0 and below the spacing.</summary>
    public required double WidthMm { get; init; }

    /// <summary>Centre-to-centre spacing [mm]; above the width, at most 5000.</summary>
    public required double SpacingMm { get; init; }

    /// <summary>Depth of a member across the plane [mm]; 0 to 500.</summary>
    public required double DepthMm { get; init; }

    /// <summary>
    /// Thermal conductivity of the member [W/(m·K)]; the default 0.12 is a fair value for
    /// spruce-pine-fir. Source: ASHRAE HoF 2021 ch. 26 Table 1, 0.11–0.13.
    /// </summary>
    public double ConductivityWPerMK { get; init; } = 0.12;

    /// <summary>Share of the plane that lies over a member, 0 to 1.</summary>
    public double Fraction => WidthMm / SpacingMm;
}
