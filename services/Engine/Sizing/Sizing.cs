using PostFrame.Engine.Buildings;
using PostFrame.Engine.TakeOff;

namespace PostFrame.Engine;

/// <summary>The one entry from a building to what has to be cut, bought and watched.</summary>
public static class Sizing
{
    /// <summary>
    /// Takes off a building. Pure: equal input gives an equal result, whatever the order of planes
    /// and openings. Never throws for what a person sent: everything wrong comes back as
    /// violations, all at once.
    /// </summary>
    public static SizingOutcome Size(SizingInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var findings = new Findings(input.Metric);
        var practice = Practice.Read(input.Practice, input.Metric, findings);
        var building = ReadBuilding(input, findings);
        if (building is not null)
        {
            practice.CheckSag(building.RoofFraming, findings);
            Practice.CheckVent(input.Practice, building, findings);
        }
        IReadOnlyList<Plane> walls = building is null ? [] : [.. WallPlanes.Of(building)];
        IReadOnlyList<Opening> openings = [];
        IReadOnlyList<Opening> beyond = [];
        if (building is not null)
            (openings, beyond, walls) = new OpeningReading(building, findings)
                .Read(input.Building!.Openings ?? [], walls);
        var assignments = new InsulationReading(
            input.Insulation, building, walls, input.Metric, findings).Read();
        if (findings.Any || building is null) return new(null, findings.All);
        var job = Job.Of(
            building, practice, walls, openings, assignments, input.Building!) with
        {
            OpeningsBeyond = beyond,
        };
        return new(Answer.Of(job, input.Prices), []);
    }

    private static Building? ReadBuilding(SizingInput input, Findings findings)
    {
        if (input.Building is { } given)
            return new BuildingReading(given, input.Metric, findings).Read();
        findings.Missing("/building", "The building");
        return null;
    }
}
