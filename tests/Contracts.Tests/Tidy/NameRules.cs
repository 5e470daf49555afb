using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace PostFrame.ContractsTests.Tidy;

/// <summary>What types and tests are called, and how types are declared.</summary>
internal static partial class NameRules
{
    private static readonly string[] BannedFolders =
        ["Helpers", "Extensions", "Infrastructure", "Common", "Shared", "Utils"];

    private static readonly string[] GeneratorAttributes =
        ["GeneratedRegex", "LoggerMessage", "JsonSerializable"];

    public static IEnumerable<Finding> Banned(SourceTree tree) =>
        (from path in tree.CSharp
         from type in tree.All<BaseTypeDeclarationSyntax>(path)
         where BannedName().IsMatch(type.Identifier.Text)
         select Finding.At(path, type, $"{type.Identifier.Text} says nothing"))
        .Concat(
            from path in tree.Paths
            from folder in path.Split('/').SkipLast(1)
            where BannedFolders.Contains(folder)
            select new Finding(path, 0, $"the folder {folder} says nothing"));

    /// <summary>An interface of ours needs two implementations in production.</summary>
    public static IEnumerable<Finding> Interfaces(SourceTree tree)
    {
        var types = (from path in tree.CSharp
                     where path.StartsWith("services/")
                     from type in tree.All<TypeDeclarationSyntax>(path)
                     select (path, type)).ToList();
        var bases = types.SelectMany(pair => pair.type.BaseList?.Types.Select(
            item => item.Type.ToString().Split('<')[0].Split('.')[^1]) ?? []).ToList();
        return from pair in types
               where pair.type is InterfaceDeclarationSyntax
               let name = pair.type.Identifier.Text
               let uses = bases.Count(item => item == name)
               where uses < 2
               select Finding.At(
                   pair.path, pair.type, $"{name} has {uses} implementations, at least 2");
    }

    /// <summary>Sealed, unless another type of the same file goes on from it.</summary>
    public static IEnumerable<Finding> Sealed(SourceTree tree) =>
        from path in tree.CSharp
        let goneOnFrom = tree.All<BaseTypeSyntax>(path).Select(item => item.Type.ToString())
        from type in tree.All<TypeDeclarationSyntax>(path)
        where type is ClassDeclarationSyntax
            || (type is RecordDeclarationSyntax record
                && !record.ClassOrStructKeyword.IsKind(SyntaxKind.StructKeyword))
        let words = type.Modifiers.Select(word => word.Text).ToList()
        where !words.Contains("sealed") && !words.Contains("static")
            && !words.Contains("abstract") && !goneOnFrom.Contains(type.Identifier.Text)
        select Finding.At(path, type, $"{type.Identifier.Text} is not sealed");

    /// <summary>Only generated code completes a type.</summary>
    public static IEnumerable<Finding> Partials(SourceTree tree) =>
        from path in tree.CSharp
        from type in tree.All<TypeDeclarationSyntax>(path)
        where type.Modifiers.Any(SyntaxKind.PartialKeyword)
            && !type.DescendantNodes().OfType<AttributeSyntax>()
                .Any(item => GeneratorAttributes.Contains(item.Name.ToString()))
        select Finding.At(path, type, $"{type.Identifier.Text} is partial");

    public static IEnumerable<Finding> Regions(SourceTree tree) =>
        from path in tree.CSharp
        from node in tree.Syntax(path).DescendantNodes(descendIntoTrivia: true)
        where node is RegionDirectiveTriviaSyntax
        select Finding.At(path, node, "a region");

    public static IEnumerable<Finding> Namespaces(SourceTree tree) =>
        from path in tree.CSharp
        from node in tree.All<NamespaceDeclarationSyntax>(path)
        select Finding.At(path, node, "a namespace with braces");

    /// <summary>
    /// One public type a file; what a feature asks and answers may stand together.
    /// </summary>
    public static IEnumerable<Finding> PublicTypes(SourceTree tree) =>
        from path in tree.CSharp
        where path.StartsWith("services/")
        let types = TopLevel(tree.Syntax(path))
            .Where(type => type.Modifiers.Any(SyntaxKind.PublicKeyword)).ToList()
        let strict = path.StartsWith("services/Engine/")
            && !path.EndsWith("Input.cs") && !path.EndsWith("Result.cs")
        let counted = types.Where(type => strict || !IsData(type)).ToList()
        where counted.Count > 1
        select Finding.At(
            path, counted[1], $"{counted.Count} public types, at most 1");

    /// <summary>A test's name is a sentence stating the rule it holds.</summary>
    public static IEnumerable<Finding> TestSentences(SourceTree tree) =>
        from path in tree.CSharp
        where path.StartsWith("tests/")
        from method in tree.All<MethodDeclarationSyntax>(path)
        where Attributes(method).Any(name => name is "Fact" or "Theory")
            && method.Identifier.Text.Split('_').Length < 3
        select Finding.At(path, method, $"{method.Identifier.Text} is no sentence");

    /// <summary>A public member of the engine says what it computes.</summary>
    public static IEnumerable<Finding> EngineComments(SourceTree tree) =>
        from path in tree.CSharp
        where path.StartsWith("services/Engine/")
        from member in tree.All<MemberDeclarationSyntax>(path)
        where member is BaseTypeDeclarationSyntax or MethodDeclarationSyntax
                or PropertyDeclarationSyntax or FieldDeclarationSyntax
            && member.Modifiers.Any(SyntaxKind.PublicKeyword)
            && !member.Modifiers.Any(SyntaxKind.OverrideKeyword)
            && member is not MethodDeclarationSyntax { Identifier.Text: "CompareTo" or "Equals" }
            && member.Ancestors().OfType<BaseTypeDeclarationSyntax>()
                .All(type => type.Modifiers.Any(SyntaxKind.PublicKeyword))
            && !member.GetLeadingTrivia().Any(
                trivia => trivia.IsKind(SyntaxKind.SingleLineDocumentationCommentTrivia))
        select Finding.At(path, member, $"no comment: {FirstLine(member)}");

    public static IEnumerable<string> Attributes(MethodDeclarationSyntax method) =>
        method.AttributeLists.SelectMany(list => list.Attributes)
            .Select(attribute => attribute.Name.ToString());

    private static IEnumerable<BaseTypeDeclarationSyntax> TopLevel(SyntaxNode root) =>
        root.DescendantNodes(node => node is not BaseTypeDeclarationSyntax)
            .OfType<BaseTypeDeclarationSyntax>();

    private static bool IsData(BaseTypeDeclarationSyntax type) =>
        type is RecordDeclarationSyntax or EnumDeclarationSyntax;

    private static string FirstLine(SyntaxNode node) => node.ToString().Split('\n')[0].Trim();

    [GeneratedRegex(@"(Manager|Helper|Helpers|Utils?|Utility|Service|Dto|Impl|Base)$|^Common")]
    private static partial Regex BannedName();
}
