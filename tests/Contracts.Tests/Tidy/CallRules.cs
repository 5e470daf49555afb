using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace PostFrame.ContractsTests.Tidy;

/// <summary>Calls that make a run unrepeatable, and code that was never finished.</summary>
internal static partial class CallRules
{
    private static readonly string[] Everywhere =
    [
        "DateTime.Now", "DateTime.UtcNow", "DateTime.Today", "DateTimeOffset.Now",
        "DateTimeOffset.UtcNow", "Thread.Sleep", "Random.Shared", "GC.Collect",
    ];

    private static readonly string[] InPureRooms =
    [
        "File", "Directory", "Environment", "Console", "TimeProvider", "Stopwatch", "Task",
        "HttpClient", "ILogger", "JsonSerializer", "Guid",
    ];

    public static IEnumerable<Finding> Banned(SourceTree tree) =>
        from path in tree.CSharp
        from access in tree.All<MemberAccessExpressionSyntax>(path)
        let call = Short(access)
        where Everywhere.Contains(call) || (call == "Task.Delay" && IsTest(path))
        select Finding.At(path, access, call);

    /// <summary>A random number without a seed cannot be drawn again.</summary>
    public static IEnumerable<Finding> SeedlessRandom(SourceTree tree) =>
        from path in tree.CSharp
        from made in tree.All<ObjectCreationExpressionSyntax>(path)
        where made.Type is IdentifierNameSyntax { Identifier.Text: "Random" }
            && (made.ArgumentList?.Arguments.Count ?? 0) == 0
        select Finding.At(path, made, "Random without a seed");

    /// <summary>A caught error is acted on, or the reason not to is written there.</summary>
    public static IEnumerable<Finding> ForgottenErrors(SourceTree tree) =>
        from path in tree.CSharp
        from caught in tree.All<CatchClauseSyntax>(path)
        where caught.Block.Statements.Count == 0
            && !caught.Block.DescendantTrivia().Any(
                trivia => trivia.IsKind(SyntaxKind.SingleLineCommentTrivia))
        select Finding.At(path, caught, "caught and forgotten");

    public static IEnumerable<Finding> Unfinished(SourceTree tree) =>
        from path in tree.CSharp
        from line in tree.Lines(path).Select((text, index) => (text, number: index + 1))
        where UnfinishedWord().IsMatch(line.text)
        select new Finding(path, line.number, line.text.Trim());

    /// <summary>Engine and Planning compute: no clock, file, task, log or wire.</summary>
    public static IEnumerable<Finding> PureRooms(SourceTree tree) =>
        from path in tree.CSharp
        where IsPure(path)
        from node in tree.All<SyntaxNode>(path)
        let broken = Impure(node)
        where broken is not null
        select Finding.At(path, node, broken);

    /// <summary>Statements stand in stores, next to the methods that use them.</summary>
    public static IEnumerable<Finding> Statements(SourceTree tree) =>
        from path in tree.CSharp
        where path.StartsWith("services/") && !path.StartsWith("services/Messaging/")
            && !Path.GetFileName(path).EndsWith("Store.cs")
        from literal in tree.All<LiteralExpressionSyntax>(path)
        where Statement().IsMatch(literal.Token.ValueText)
        select Finding.At(path, literal, "a statement outside a store");

    private static bool IsTest(string path) =>
        path.StartsWith("tests/") && !path.StartsWith("tests/Benchmarks/");

    private static bool IsPure(string path) =>
        path.StartsWith("services/Engine/") || path.StartsWith("services/Cutting.Worker/Planning/");

    private static string? Impure(SyntaxNode node) => node switch
    {
        AwaitExpressionSyntax => "await",
        IdentifierNameSyntax name when InPureRooms.Contains(name.Identifier.Text)
            && (node.Parent as MemberAccessExpressionSyntax)?.Name != node => node.ToString(),
        _ => null,
    };

    private static string Short(MemberAccessExpressionSyntax access) =>
        access.Expression.ToString().Split('.')[^1] + "." + access.Name.Identifier.Text;

    [GeneratedRegex(
        @"\b(TO" + @"DO|FIX" + @"ME|HA" + @"CK|XX" + @"X)\b|NotImplemented" + "Exception")]
    private static partial Regex UnfinishedWord();

    [GeneratedRegex(@"^\s*(SELECT|INSERT INTO|UPDATE \w+ SET|DELETE FROM|CREATE TABLE)\b")]
    private static partial Regex Statement();
}
