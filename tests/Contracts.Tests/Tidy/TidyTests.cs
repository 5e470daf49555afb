namespace PostFrame.ContractsTests.Tidy;

/// <summary>
/// Holds the tree to the house's limits. A place that cannot keep a rule yet stands in
/// <see cref="Exceptions"/> as (rule, path); an exception that is no longer needed fails too, so
/// the list only ever shrinks.
/// </summary>
public sealed class TidyTests
{
    private static readonly (string Rule, string Path)[] Exceptions = [];

    internal static readonly Dictionary<string, Func<SourceTree, IEnumerable<Finding>>> Rules =
        new()
        {
            ["file length"] = SizeRules.Files,
            ["method length"] = SizeRules.Methods,
            ["line width"] = SizeRules.Columns,
            ["folder depth"] = SizeRules.Depth,
            ["duplicated bodies"] = SizeRules.Duplicates,
            ["banned names"] = NameRules.Banned,
            ["interfaces"] = NameRules.Interfaces,
            ["sealed types"] = NameRules.Sealed,
            ["partial types"] = NameRules.Partials,
            ["regions"] = NameRules.Regions,
            ["file-scoped namespaces"] = NameRules.Namespaces,
            ["one public type"] = NameRules.PublicTypes,
            ["tests are sentences"] = NameRules.TestSentences,
            ["engine comments"] = NameRules.EngineComments,
            ["banned calls"] = CallRules.Banned,
            ["seeded random"] = CallRules.SeedlessRandom,
            ["forgotten errors"] = CallRules.ForgottenErrors,
            ["unfinished work"] = CallRules.Unfinished,
            ["pure rooms"] = CallRules.PureRooms,
            ["statements in stores"] = CallRules.Statements,
            ["top level"] = RoomRules.TopLevelEntries,
            ["rooms"] = RoomRules.ProjectRooms,
            ["references"] = RoomRules.References,
            ["engine packages"] = RoomRules.EnginePackages,
            ["solver room"] = RoomRules.SolverRoom,
            ["library rooms"] = RoomRules.LibraryRooms,
            ["message rooms"] = RoomRules.MessageRooms,
            ["registry hosts"] = TextRules.RegistryHosts,
            ["machine paths"] = TextRules.MachinePaths,
            ["conflict marks"] = TextRules.ConflictMarks,
            ["line ends"] = TextRules.LineEnds,
        };

    public static TheoryData<string> Names => new(Rules.Keys);

    [Theory]
    [MemberData(nameof(Names))]
    public void The_tree_keeps_the_rule(string name)
    {
        var broken = Rules[name](SourceTree.Tracked)
            .Where(finding => !Exceptions.Contains((name, finding.Path)))
            .Select(finding => finding.ToString()).ToList();

        Assert.True(broken.Count == 0, name + "\n" + string.Join('\n', broken));
    }

    [Fact]
    public void Every_exception_is_still_needed()
    {
        var idle = Exceptions.Where(exception => !Rules[exception.Rule](SourceTree.Tracked)
            .Any(finding => finding.Path == exception.Path));

        Assert.Empty(idle);
    }

    [Fact]
    public void The_tree_that_is_checked_is_the_whole_project()
    {
        Assert.Contains("services/SingleHost/Program.cs", SourceTree.Tracked.Paths);
        Assert.Contains("tests/Contracts.Tests/Tidy/TidyTests.cs", SourceTree.Tracked.Paths);
    }
}
