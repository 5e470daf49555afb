namespace PostFrame.ContractsTests.Tidy;

/// <summary>Each rule finds the smallest tree that breaks it, and only what it is for.</summary>
public sealed class RulesCatchTests
{
    private const string Service = "services/Orders.Api/Orders/A.cs";
    private const string Pure = "services/Engine/Heat/A.cs";
    private const string Test = "tests/Engine.Tests/A.cs";

    private static readonly string Sixty =
        "{ " + string.Concat(Enumerable.Repeat("a(1); ", 13)) + "}";

    public static TheoryData<string, string, string> Broken => new()
    {
        { "file length", Service, string.Concat(Enumerable.Repeat("\n", 400)) + "//\n" },
        { "file length", "services/Orders.Api/Program.cs", new string('\n', 80) + "//\n" },
        { "method length", Service, $"class A {{ void B() {{{new string('\n', 70)}}} }}" },
        { "line width", Service, new string('/', 101) },
        { "folder depth", "services/Orders.Api/a/b/c/A.cs", "" },
        { "duplicated bodies", Service, $"class A {{ void B() {Sixty} void C() {Sixty} }}" },
        { "banned names", Service, "sealed class OrderManager;" },
        { "banned names", "services/Orders.Api/Helpers/A.cs", "" },
        { "interfaces", Service, "interface IOne; sealed class One : IOne;" },
        { "sealed types", Service, "public class A;" },
        { "sealed types", Service, "public record A;" },
        { "partial types", Service, "sealed partial class A;" },
        { "regions", Service, "#region a\n#endregion\n" },
        { "file-scoped namespaces", Service, "namespace A { }" },
        { "one public type", Service, "public sealed class A; public sealed class B;" },
        { "one public type", Pure, "public sealed record A; public sealed record B;" },
        { "tests are sentences", Test, "class A { [Fact] public void Works() { } }" },
        { "engine comments", Pure, "public static class A;" },
        { "banned calls", Service, "var a = System.DateTime.UtcNow;" },
        { "banned calls", Test, "await Task.Delay(1);" },
        { "seeded random", Service, "var a = new Random();" },
        { "forgotten errors", Service, "try { } catch (Exception) { }" },
        { "unfinished work", Service, "// TO" + "DO later" },
        { "pure rooms", Pure, "var a = File.ReadAllText(b);" },
        { "pure rooms", "services/Cutting.Worker/Planning/A.cs", "TimeProvider a = b;" },
        { "pure rooms", Pure, "await a;" },
        { "statements in stores", Service, "var a = \"SELECT 1\";" },
        { "top level", "src/A.cs", "" },
        { "rooms", "services/Orders.Api/Pricing/A.cs", "" },
        { "rooms", "services/Quotes.Api/A.cs", "" },
        { "references", "services/Orders.Api/Orders.Api.csproj", Reference("Sizing.Api") },
        { "references", "services/Engine/Engine.csproj", Reference("Messaging") },
        { "engine packages", "services/Engine/Engine.csproj",
            "<Project><PackageReference Include=\"A\" /></Project>" },
        { "solver room", Service, "using Google.OrTools.Sat;" },
        { "library rooms", Pure, "using System.Text.Json;" },
        { "message rooms", "services/Orders.Api/Messages/A.cs", "using PostFrame.Engine;" },
        { "message rooms", "services/Orders.Api/Messages/A.cs", "record A : B;" },
        { "registry hosts", "infra/a.sh", "curl https://api.nu" + "get.org/v3" },
        { "machine paths", "infra/a.sh", "cd /ho" + "me/someone/a" },
        { "machine paths", Service, "var a = \"/tm" + "p/a\";" },
        { "conflict marks", Service, "<<<<<<< HEAD" },
        { "line ends", Service, "a\r\n" },
        { "line ends", Service, "a" },
    };

    public static TheoryData<string, string, string> Kept => new()
    {
        { "interfaces", Service, "interface I; sealed class A : I; sealed class B : I;" },
        { "partial types", Service, "sealed partial class A { [GeneratedRegex(\"a\")] int B(); }" },
        { "one public type", Service, "public sealed record A; public sealed record B;" },
        { "seeded random", Service, "var a = new Random(7);" },
        { "forgotten errors", Service, "try { } catch (Exception) { Log(); }" },
        { "pure rooms", Pure, "var a = b.Task;" },
        { "statements in stores", "services/Orders.Api/Orders/OrderStore.cs", "a(\"SELECT 1\");" },
        { "references", "services/Orders.Api/Orders.Api.csproj", Reference("Messaging") },
        { "machine paths", Service, "a(\"/v1/work/tm" + "p\");" },
    };

    [Theory]
    [MemberData(nameof(Broken))]
    public void A_tree_that_breaks_the_rule_is_found(string rule, string path, string text) =>
        Assert.NotEmpty(TidyTests.Rules[rule](SourceTree.Of((path, text))));

    [Theory]
    [MemberData(nameof(Kept))]
    public void A_tree_that_keeps_the_rule_is_left_alone(string rule, string path, string text) =>
        Assert.Empty(TidyTests.Rules[rule](SourceTree.Of((path, text))));

    [Fact]
    public void No_rule_goes_without_a_tree_that_breaks_it() =>
        Assert.Empty(TidyTests.Rules.Keys.Except(Broken.Select(row => row.Data.Item1)));

    private static string Reference(string project) =>
        $"<Project><ProjectReference Include=\"../{project}/{project}.csproj\" /></Project>";
}
