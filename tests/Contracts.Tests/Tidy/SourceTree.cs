using System.Diagnostics;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Text;

namespace PostFrame.ContractsTests.Tidy;

/// <summary>The tracked files of the project, or a made-up tree that breaks one rule.</summary>
internal sealed class SourceTree
{
    private static readonly Lazy<SourceTree> LazyTracked = new(ReadTracked);

    private readonly Dictionary<string, Func<string>> _texts;
    private readonly Dictionary<string, SyntaxNode> _syntax = [];
    private readonly Lock _lock = new();

    private SourceTree(Dictionary<string, Func<string>> texts) => _texts = texts;

    /// <summary>What git tracks, and what it would track next.</summary>
    public static SourceTree Tracked => LazyTracked.Value;

    /// <summary>The folder that holds the solution.</summary>
    public static string Root { get; } = FindRoot();

    public IEnumerable<string> Paths => _texts.Keys.Order(StringComparer.Ordinal);

    public IEnumerable<string> CSharp => Paths.Where(path => path.EndsWith(".cs"));

    public static SourceTree Of(params (string Path, string Text)[] files) =>
        new(files.ToDictionary(file => file.Path, file => (Func<string>)(() => file.Text)));

    public string Text(string path) => _texts[path]();

    public string[] Lines(string path) => Text(path).TrimEnd('\n').Split('\n');

    public SyntaxNode Syntax(string path)
    {
        lock (_lock)
        {
            if (!_syntax.TryGetValue(path, out var root))
            {
                root = CSharpSyntaxTree.ParseText(SourceText.From(Text(path))).GetRoot();
                _syntax[path] = root;
            }

            return root;
        }
    }

    public IEnumerable<T> All<T>(string path)
        where T : SyntaxNode => Syntax(path).DescendantNodes().OfType<T>();

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "PostFrameServices.sln")))
        {
            folder = folder.Parent ?? throw new InvalidOperationException(
                "The tests run outside the project's folder.");
        }

        return folder.FullName;
    }

    private static SourceTree ReadTracked()
    {
        using var git = Process.Start(new ProcessStartInfo(
            "git", ["ls-files", "-z", "--cached", "--others", "--exclude-standard"])
        {
            WorkingDirectory = Root,
            RedirectStandardOutput = true,
        })!;
        var listed = git.StandardOutput.ReadToEnd();
        git.WaitForExit();
        if (git.ExitCode != 0)
        {
            throw new InvalidOperationException($"git ls-files ended with {git.ExitCode}.");
        }

        return new SourceTree(listed.Split('\0', StringSplitOptions.RemoveEmptyEntries)
            .Where(path => File.Exists(Path.Combine(Root, path)))
            .ToDictionary(path => path, path => (Func<string>)(
                () => File.ReadAllText(Path.Combine(Root, path)))));
    }
}
