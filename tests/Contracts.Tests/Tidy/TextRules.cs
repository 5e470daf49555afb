using System.Text.RegularExpressions;

namespace PostFrame.ContractsTests.Tidy;

/// <summary>What no tracked file may contain, in any language.</summary>
internal static partial class TextRules
{
    private static readonly string[] Binary =
        [".png", ".jpg", ".ico", ".pdf", ".ttf", ".woff2", ".gz", ".zip", ".bin", ".db"];

    private const string GeneratedLock = "packages.lock.json";

    /// <summary>Where packages come from is the machine's business, not the tree's.</summary>
    public static IEnumerable<Finding> RegistryHosts(SourceTree tree) =>
        Matching(tree, RegistryHost(), "names a registry's host");

    public static IEnumerable<Finding> MachinePaths(SourceTree tree) =>
        Matching(tree, MachinePath(), "names a path of one machine");

    public static IEnumerable<Finding> ConflictMarks(SourceTree tree) =>
        Matching(tree, ConflictMark(), "a merge that was not finished");

    /// <summary>Carriage returns and a last line without end differ on each machine.</summary>
    public static IEnumerable<Finding> LineEnds(SourceTree tree) =>
        from path in Readable(tree)
        where Path.GetFileName(path) != GeneratedLock
        let text = tree.Text(path)
        where text.Contains('\r') || (text.Length > 0 && !text.EndsWith('\n'))
        select new Finding(path, 0, "carriage returns, or no line end at the end");

    private static IEnumerable<Finding> Matching(SourceTree tree, Regex pattern, string what) =>
        from path in Readable(tree)
        from line in tree.Lines(path).Select((text, index) => (text, number: index + 1))
        let match = pattern.Match(line.text)
        where match.Success
        select new Finding(path, line.number, $"{what}: {match.Value}");

    private static IEnumerable<string> Readable(SourceTree tree) =>
        tree.Paths.Where(path => !Binary.Contains(Path.GetExtension(path)));

    // Written in parts so that this file keeps the rule it states.
    [GeneratedRegex(
        @"https?://[^/\s""']*(nuget|npmjs|pypi|artifact|registry|packages|mirror|proxy)[^/\s""']*"
        + @"|\b(api\.nuget|nuget\.or" + @"g|registry\.npm|npmjs\.or" + @"g|pypi\.or" + @"g"
        + @"|mcr\.micro" + @"soft|ghcr\.i" + @"o|quay\.i" + @"o|docker\.i" + @"o|gcr\.i" + @"o)\b",
        RegexOptions.IgnoreCase)]
    private static partial Regex RegistryHost();

    [GeneratedRegex(
        @"(?<![\w.~$}])/(work|tm" + @"p|root|home/\w+|Users/\w+|mnt/\w+)(/|\b)"
        + @"|\b[A-Z]:\\(Users|work|tem" + @"p)\b")]
    private static partial Regex MachinePath();

    [GeneratedRegex(@"^(<{7}|>{7}|={7})( |$)")]
    private static partial Regex ConflictMark();
}
