using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace PostFrame.ContractsTests.Tidy;

/// <summary>Nothing grows until it cannot be read in one go.</summary>
internal static class SizeRules
{
    private const int LongestFile = 400;
    private const int LongestMethod = 70;
    private const int LongestProgram = 80;
    private const int WidestLine = 100;
    private const int DeepestFolder = 2;
    private const int ShortestDuplicate = 60;

    private static readonly string[] HandWritten =
        [".cs", ".js", ".css", ".html", ".sh", ".sql", ".py"];

    public static IEnumerable<Finding> Files(SourceTree tree) =>
        from path in tree.Paths
        where HandWritten.Contains(Path.GetExtension(path))
        let lines = tree.Lines(path).Length
        let most = IsProgram(path) ? LongestProgram : LongestFile
        where lines > most
        select new Finding(path, 0, $"{lines} lines, at most {most}");

    public static IEnumerable<Finding> Methods(SourceTree tree) =>
        from path in tree.CSharp
        from node in tree.All<SyntaxNode>(path)
        where node is BaseMethodDeclarationSyntax or LocalFunctionStatementSyntax
            or AccessorDeclarationSyntax
        let lines = LinesOf(node) - node.ChildNodes().OfType<AttributeListSyntax>().Sum(LinesOf)
        where lines > LongestMethod
        select Finding.At(path, node, $"a method of {lines} lines, at most {LongestMethod}");

    public static IEnumerable<Finding> Columns(SourceTree tree) =>
        from path in tree.CSharp
        from line in tree.Lines(path).Select((text, index) => (text, number: index + 1))
        where line.text.Length > WidestLine
        select new Finding(
            path, line.number, $"{line.text.Length} columns, at most {WidestLine}");

    public static IEnumerable<Finding> Depth(SourceTree tree) =>
        from path in tree.Paths
        let parts = path.Split('/')
        where parts[0] is "services" or "tests" && parts.Length - 3 > DeepestFolder
        select new Finding(path, 0, $"{parts.Length - 3} folders deep, at most {DeepestFolder}");

    /// <summary>The same body of 60 tokens or more stands once.</summary>
    public static IEnumerable<Finding> Duplicates(SourceTree tree) =>
        from body in
            from path in tree.CSharp
            from node in tree.All<SyntaxNode>(path)
            where node is BlockSyntax or ArrowExpressionClauseSyntax
                && node.Parent is BaseMethodDeclarationSyntax or LocalFunctionStatementSyntax
            let tokens = node.DescendantTokens().Select(token => token.Text).ToList()
            where tokens.Count >= ShortestDuplicate
            select (path, node, text: string.Join(' ', tokens))
        group body by body.text into same
        where same.Count() > 1
        from copy in same.Skip(1)
        select Finding.At(
            copy.path, copy.node, $"the body of {same.First().path} a second time");

    private static bool IsProgram(string path) =>
        path.StartsWith("services/") && Path.GetFileName(path) == "Program.cs";

    private static int LinesOf(SyntaxNode node)
    {
        var span = node.GetLocation().GetLineSpan();
        return span.EndLinePosition.Line - span.StartLinePosition.Line + 1;
    }
}
