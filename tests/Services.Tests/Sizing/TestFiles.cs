namespace PostFrame.ServicesTests.Sizing;

/// <summary>Files the tests read where they lie in the tree.</summary>
internal static class TestFiles
{
    /// <summary>The folder that holds the solution.</summary>
    public static string Root { get; } = Above(AppContext.BaseDirectory);

    public static string Read(string name) => File.ReadAllText(
        Path.Combine(Root, "tests", "Services.Tests", "Sizing", name));

    public static string Example(string name) => File.ReadAllText(
        Path.Combine(Root, "contracts", "examples", $"{name}.sizing.json"));

    public static IEnumerable<string> Examples() => Directory
        .EnumerateFiles(Path.Combine(Root, "contracts", "examples"), "*.sizing.json")
        .Select(path => Path.GetFileName(path)[..^".sizing.json".Length])
        .Order(StringComparer.Ordinal);

    private static string Above(string folder)
    {
        while (!File.Exists(Path.Combine(folder, "PostFrameServices.sln")))
        {
            folder = Path.GetDirectoryName(folder)
                ?? throw new InvalidOperationException("The tests run outside the tree.");
        }

        return folder;
    }
}
