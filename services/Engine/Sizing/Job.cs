using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;

namespace PostFrame.Engine;

/// <summary>A building taken off, before it is written up.</summary>
internal sealed record Job
{
    public required Building Building { get; init; }

    public required BuildingInput Given { get; init; }

    public required Practice Practice { get; init; }

    public required IReadOnlyList<Opening> Openings { get; init; }

    /// <summary>Openings in the cold part beyond a partition, which take no part.</summary>
    public IReadOnlyList<Opening> OpeningsBeyond { get; init; } = [];

    public required IReadOnlyList<Assignment> Assignments { get; init; }

    public required CoverPlan Plan { get; init; }

    public required PieceRule Rule { get; init; }

    public required IReadOnlyList<UnitTakeOff> Units { get; init; }

    /// <summary>In canonical order.</summary>
    public required IReadOnlyList<Piece> Pieces { get; init; }

    public required IReadOnlyList<PlaneResult> Planes { get; init; }

    public required IReadOnlyList<LastStripChoice> Choices { get; init; }

    public required IReadOnlyList<PossibleSaving> Savings { get; init; }

    public bool Metric => Building.Metric;

    public static Job Of(
        Building building, Practice practice, IReadOnlyList<Plane> walls,
        IReadOnlyList<Opening> openings, IReadOnlyList<Assignment> assignments,
        BuildingInput given)
    {
        var plan = CoverPlan.Of(building, practice, walls, assignments);
        var rule = new PieceRule(building, practice, openings);
        var taker = new UnitTaker(building, practice, rule);
        UnitTakeOff[] units = [.. plan.Units.Select(taker.Take)];
        IReadOnlyList<Piece> pieces = [.. new PieceList(practice, rule).Of(units)];
        return new()
        {
            Building = building,
            Given = given,
            Practice = practice,
            Openings = openings,
            Assignments = assignments,
            Plan = plan,
            Rule = rule,
            Units = units,
            Pieces = pieces,
            Planes = new PlaneResults(building, openings, pieces, practice).Of(plan, units),
            Choices = [.. units.SelectMany(
                new LastStripChoices(taker, rule, practice).Of)],
            Savings = [.. new PossibleSavings(building, practice).Of(openings, units)],
        };
    }

    public Product ProductOf(string code) => ProductCatalogue.Find(code)!;

    public string Say(Length length) => length.Say(Metric);
}
