using System.ComponentModel;

namespace PostFrame.CuttingWorker.Plans;

/// <summary>What cutting orders together would save over cutting each by itself.</summary>
public sealed record ShiftBody
{
    [Description("The orders compared, in the order they are needed.")]
    public required IReadOnlyList<string> Orders { get; init; }

    public required int Pieces { get; init; }

    [Description("New rolls when each order is cut by itself, its left-over unused.")]
    public required int RollsSeparately { get; init; }

    [Description("New rolls when all are cut together.")]
    public required int RollsTogether { get; init; }

    public required int RollsSaved { get; init; }

    public required double SavedFt { get; init; }

    [Description("No plan of all together can do with fewer rolls.")]
    public required int LowerBoundRolls { get; init; }

    [Description("The price of having few orders open at the bench, in material: every size of "
        + "group worth choosing, the larger the less material. POST one as ordersTogether.")]
    public required IReadOnlyList<ShiftWindowBody> Windows { get; init; }

    [Description("The price of strictly finishing one plane before the next, each order by itself: "
        + "the roll on the stand goes on with the next plane, what other rolls leave is put away. "
        + "POST it as onePlaneAtATime; every other plan brings the pieces of a plane together as "
        + "far as that takes no more material.")]
    public required ShiftPlanesBody OnePlaneAtATime { get; init; }
}

/// <summary>Each plane planned by itself, one after another.</summary>
public sealed record ShiftPlanesBody
{
    public required int Rolls { get; init; }

    public required double BoughtFt { get; init; }

    [Description("What it costs in roll length above the size of group that takes least.")]
    public required double MoreThanLeastFt { get; init; }

    [Description("Length bought and not cut into pieces, in percent of what was bought.")]
    public required double WastePercent { get; init; }
}

/// <summary>So many orders planned together at a time, in the order they are needed.</summary>
public sealed record ShiftWindowBody
{
    public required int OrdersTogether { get; init; }

    [Description("Orders of which some pieces are cut and some are not, at most.")]
    public required int MostOpen { get; init; }

    public required int Rolls { get; init; }

    public required double BoughtFt { get; init; }

    [Description("What it costs in roll length above the choice that takes least.")]
    public required double MoreThanLeastFt { get; init; }

    [Description("Length bought and not cut into pieces, in percent of what was bought; of that "
        + "what is long enough comes back as offcuts.")]
    public required double WastePercent { get; init; }
}

/// <summary>The orders of a shift, all that are not begun when left out, and how to cut them.
/// </summary>
public sealed record ShiftWish(
    [property: Description("1 to 500 order numbers.")] IReadOnlyList<string>? Orders = null,
    [property: Description("Plan so many together at a time, in the order they are needed, 1 to "
        + "500. All together when left out; 1 plans each by itself again.")]
    int? OrdersTogether = null,
    [property: Description("Plan each order by itself and finish each of its planes before the "
        + "next. It holds for later plans of these orders too, until they are pooled otherwise.")]
    bool? OnePlaneAtATime = null);

/// <summary>Orders that are planned so from here on.</summary>
public sealed record PooledBody(
    IReadOnlyList<string> Orders,
    [property: Description("Always waiting.")] string State,
    [property: Description("Which are planned with which.")]
    IReadOnlyList<IReadOnlyList<string>> Groups);
