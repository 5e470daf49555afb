namespace PostFrame.Engine.Heat;

/// <summary>
/// A plane air space between two parallel, smooth faces. The ribs of profiled cladding are not one
/// (ASHRAE HoF 2021 ch. 26, note to Table 3), nor is a bay that the wind blows through.
/// </summary>
public sealed record AirSpace
{
    /// <summary>Distance between the faces [mm]; 1 to 300 (ISO), 12.5 to 150 (ASHRAE).</summary>
    public required double ThicknessMm { get; init; }

    /// <summary>Emittance of the face nearer the room, 0.01 to 1.</summary>
    public required double InnerEmittance { get; init; }

    /// <summary>Emittance of the face nearer outdoors, 0.01 to 1.</summary>
    public required double OuterEmittance { get; init; }

    /// <summary>
    /// Openings to outdoors [mm² per metre of length of an upright space, per m² of a flat one].
    /// Up to 500 the space counts as unventilated, from 1500 as well ventilated.
    /// Source: ISO 6946:2017 clause 6.9 (from memory).
    /// </summary>
    public double OpeningsMm2 { get; init; }

    /// <summary>The emittance of both faces together, for radiation across the space.</summary>
    public double EffectiveEmittance => Effective(InnerEmittance, OuterEmittance);

    /// <summary>
    /// E = 1/(1/ε₁ + 1/ε₂ − 1): two large parallel grey faces.
    /// Source: ASHRAE HoF 2021 ch. 26 Table 3 note e; ISO 6946:2017 equation D.5.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">An emittance outside 0.01 to 1.</exception>
    public static double Effective(double first, double second)
    {
        Limits.Check(first, 0.01, 1, "(emittance)", nameof(first));
        Limits.Check(second, 0.01, 1, "(emittance)", nameof(second));
        return 1 / (1 / first + 1 / second - 1);
    }
}
