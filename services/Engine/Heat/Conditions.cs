using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>The surroundings an assembly is solved in.</summary>
public sealed record Conditions
{
    /// <summary>Room air.</summary>
    public required Temperature Room { get; init; }

    /// <summary>Outdoor air, or the sol-air temperature where the sun or the sky acts.</summary>
    public required Temperature Outside { get; init; }

    /// <summary>Season, for the outside film.</summary>
    public required Season Season { get; init; }

    /// <summary>The system to compute by.</summary>
    public CalculationBasis Basis { get; init; } = CalculationBasis.Ashrae;
}
