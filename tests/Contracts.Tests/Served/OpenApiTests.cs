using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using PostFrame.ContractsTests.Tidy;
using PostFrame.Problems;

namespace PostFrame.ContractsTests.Served;

/// <summary>The documents the product serves are the files in <c>contracts/</c>.</summary>
public sealed class OpenApiTests(RunningHost host) : IClassFixture<RunningHost>
{
    private static readonly JsonSerializerOptions Readable = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private static readonly string[] Methods = ["get", "post", "put", "delete", "patch"];

    public static TheoryData<string> Documents => new(RunningHost.Documents);

    [Theory]
    [MemberData(nameof(Documents))]
    public async Task The_served_document_is_the_file(string name) => ContractFile.Holds(
        $"{name}.openapi.json",
        (await host.DocumentAsync(name)).ToJsonString(Readable) + "\n");

    [Fact]
    public void There_is_a_file_for_each_document_and_no_other() => Assert.Equal(
        RunningHost.Documents,
        SourceTree.Tracked.Paths.Where(path => path.EndsWith(".openapi.json"))
            .Select(path => Path.GetFileName(path).Split('.')[0]).Order());

    [Theory]
    [MemberData(nameof(Documents))]
    public async Task Every_operation_has_a_name_a_summary_and_a_tag(string name) =>
        Assert.All(Operations(await host.DocumentAsync(name)), operation =>
        {
            Assert.NotEmpty((string?)operation.Body["operationId"] ?? "");
            Assert.NotEmpty((string?)operation.Body["summary"] ?? "");
            Assert.Single(operation.Body["tags"]?.AsArray() ?? []);
            Assert.StartsWith("/v1/", operation.Path);
        });

    [Theory]
    [MemberData(nameof(Documents))]
    public async Task Every_refusal_is_a_problem_of_the_catalogue(string name)
    {
        var statuses = ProblemKind.All.Select(kind => kind.Status).ToHashSet();
        var refusals = from operation in Operations(await host.DocumentAsync(name))
                       from response in operation.Body["responses"]!.AsObject()
                       where response.Key[0] is '4' or '5'
                       select (operation.Path, response);

        Assert.All(refusals, refusal =>
        {
            Assert.Contains(int.Parse(refusal.response.Key), statuses);
            Assert.Equal(
                "#/components/schemas/ProblemBody",
                (string)refusal.response.Value!["content"]!["application/problem+json"]!
                    ["schema"]!["$ref"]!);
        });
    }

    [Fact]
    public async Task An_operation_name_is_used_once_in_all_documents()
    {
        var names = new List<string>();
        foreach (var name in RunningHost.Documents)
        {
            names.AddRange(Operations(await host.DocumentAsync(name))
                .Select(operation => (string?)operation.Body["operationId"] ?? ""));
        }

        Assert.Equal(names.Distinct().Count(), names.Count);
        Assert.True(names.Count >= 10);
    }

    [Theory]
    [MemberData(nameof(Documents))]
    public async Task The_document_is_of_OpenApi_3_1(string name) => Assert.StartsWith(
        "3.1", (string)(await host.DocumentAsync(name))["openapi"]!);

    private static IEnumerable<(string Path, JsonObject Body)> Operations(JsonObject document) =>
        from path in document["paths"]!.AsObject()
        from operation in path.Value!.AsObject()
        where Methods.Contains(operation.Key)
        select (path.Key, operation.Value!.AsObject());
}
