using Microsoft.CodeAnalysis;

namespace PostFrame.ContractsTests.Tidy;

/// <summary>A place that breaks a rule; line 0 is the file as a whole.</summary>
internal sealed record Finding(string Path, int Line, string What)
{
    public static Finding At(string path, SyntaxNode node, string what) => new(
        path, node.GetLocation().GetLineSpan().StartLinePosition.Line + 1, what);

    public override string ToString() => $"{Path}:{Line} {What}";
}
