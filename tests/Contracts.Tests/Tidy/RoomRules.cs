using System.Text.RegularExpressions;
using System.Xml.Linq;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace PostFrame.ContractsTests.Tidy;

/// <summary>Which folders exist, and which project may know which.</summary>
internal static partial class RoomRules
{
    private static readonly string[] TopLevel =
    [
        ".ci", ".config", ".dockerignore", ".editorconfig", ".gitattributes", ".github",
        ".gitignore", "DEVELOPERS.md", "Directory.Build.props", "Directory.Packages.props",
        "LICENSE", "PostFrameServices.sln", "README.md", "contracts", "docker-compose.yml",
        "global.json", "infra", "services", "tests",
    ];

    private static readonly string[] Libraries = ["Engine", "Documents", "Messaging", "Problems"];

    private static readonly Dictionary<string, string[]> Rooms = new()
    {
        ["Engine"] = ["Quantities", "Buildings", "TakeOff", "Heat", "Sizing"],
        ["Documents"] = ["BarCodes", "Checklists", "Drawing", "Labels", "Maps"],
        ["Messaging"] = [],
        ["Problems"] = [],
        ["Sizing.Api"] =
        [
            "ApiPages", "Claims", "Climate", "Comparisons", "Desk", "Drawings", "Prices",
            "Products", "Quotes", "Sizings", "wwwroot",
        ],
        ["Orders.Api"] = ["Messages", "Orders", "TakeOffs"],
        ["Cutting.Worker"] = ["Messages", "Planning", "Plans", "Queue", "Stock"],
        ["Labelling.Worker"] = ["Messages", "Labels", "CheckOff"],
        ["Operations"] = ["Messages", "Pipeline", "wwwroot"],
        ["SingleHost"] = [],
    };

    private static readonly string[] Services =
        ["Sizing.Api", "Orders.Api", "Cutting.Worker", "Labelling.Worker", "Operations"];

    /// <summary>What those know that are no service; a service may know the libraries.</summary>
    private static readonly Dictionary<string, string[]> Known = new()
    {
        ["Engine"] = [],
        ["Documents"] = [],
        ["Messaging"] = [],
        ["Problems"] = ["Engine"],
        ["SingleHost"] = Services,
    };

    public static IEnumerable<Finding> TopLevelEntries(SourceTree tree) =>
        from path in tree.Paths
        let entry = path.Split('/')[0]
        where !TopLevel.Contains(entry)
        select new Finding(path, 0, $"{entry} is no entry of the top level");

    /// <summary>Every project's folders are the rooms it was given.</summary>
    public static IEnumerable<Finding> ProjectRooms(SourceTree tree) =>
        from path in tree.Paths
        let parts = path.Split('/')
        where parts[0] == "services" && parts.Length > 2
        let found = !Rooms.TryGetValue(parts[1], out var rooms) ? $"no project {parts[1]}"
            : parts.Length > 3 && parts[2] != "Properties" && !rooms.Contains(parts[2])
                ? $"no room {parts[2]} in {parts[1]}" : null
        where found is not null
        select new Finding(path, 0, found);

    /// <summary>A service knows libraries only; the single host knows services only.</summary>
    public static IEnumerable<Finding> References(SourceTree tree) =>
        from path in tree.Paths
        where path.StartsWith("services/") && path.EndsWith(".csproj")
        let name = path.Split('/')[1]
        from reference in XDocument.Parse(tree.Text(path)).Descendants("ProjectReference")
        let other = Path.GetFileNameWithoutExtension((string)reference.Attribute("Include")!)
        where !Known.GetValueOrDefault(name, Libraries).Contains(other)
        select new Finding(path, 0, $"{name} may not know {other}");

    public static IEnumerable<Finding> EnginePackages(SourceTree tree) =>
        from path in tree.Paths
        where path.StartsWith("services/Engine/") && path.EndsWith(".csproj")
        from reference in XDocument.Parse(tree.Text(path)).Descendants()
        where reference.Name.LocalName is "PackageReference" or "FrameworkReference" or "Reference"
        select new Finding(path, 0, $"the engine needs {reference.Attribute("Include")?.Value}");

    /// <summary>The solver is used in Planning and nowhere else in production.</summary>
    public static IEnumerable<Finding> SolverRoom(SourceTree tree) =>
        from path in tree.CSharp
        where path.StartsWith("services/") && !path.StartsWith("services/Cutting.Worker/Planning/")
        from used in tree.All<UsingDirectiveSyntax>(path)
        where used.Name?.ToString().StartsWith("Google.OrTools") == true
        select Finding.At(path, used, "the solver outside Planning");

    /// <summary>Libraries with a business of their own stay out of each other's.</summary>
    public static IEnumerable<Finding> LibraryRooms(SourceTree tree) =>
        from path in tree.CSharp
        let project = path.Split('/')[1]
        where path.StartsWith("services/") && Libraries.Contains(project)
        from used in tree.All<UsingDirectiveSyntax>(path)
        let name = used.Name?.ToString() ?? ""
        where (project is "Engine" && Outside().IsMatch(name))
            || (project is "Documents" && (name.StartsWith("Microsoft.AspNetCore")
                || name.StartsWith("MassTransit") || name.StartsWith("Dapper")))
        select Finding.At(path, used, $"{project} uses {name}");

    /// <summary>A message is data: records without engine types or inheritance.</summary>
    public static IEnumerable<Finding> MessageRooms(SourceTree tree) =>
        from path in tree.CSharp
        where path.StartsWith("services/") && path.Contains("/Messages/")
        from node in tree.Syntax(path).DescendantNodes()
        let what = node switch
        {
            UsingDirectiveSyntax used when used.Name?.ToString()
                .StartsWith("PostFrame.Engine") == true => "an engine type in a message",
            BaseListSyntax => "inheritance in a message",
            MethodDeclarationSyntax => "behaviour in a message",
            _ => null,
        }
        where what is not null
        select Finding.At(path, node, what);

    [GeneratedRegex(
        @"^(System\.(IO|Net|Text\.Json|Threading)|Microsoft|Dapper|MassTransit|Google)")]
    private static partial Regex Outside();
}
