using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>An air space with the mean temperature and difference it was found to have.</summary>
public sealed record SolvedAirSpace(
    string Name,
    AirSpace Space,
    Temperature Mean,
    double DifferenceKelvins,
    AirSpaceHeat Heat);
