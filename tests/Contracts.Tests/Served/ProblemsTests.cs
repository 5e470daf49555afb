using System.Net;
using System.Text;
using PostFrame.Problems;

namespace PostFrame.ContractsTests.Served;

/// <summary>Code, catalogue and pages list the same problems.</summary>
public sealed class ProblemsTests(RunningHost host) : IClassFixture<RunningHost>
{
    public static TheoryData<string> Names => new(ProblemKind.All.Select(kind => kind.Name));

    [Fact]
    public void The_catalogue_is_the_list_in_code() =>
        ContractFile.Holds("problems.md", Catalogue());

    [Fact]
    public void A_name_and_a_title_stand_for_one_problem()
    {
        Assert.Equal(
            ProblemKind.All.Count, ProblemKind.All.Select(kind => kind.Name).Distinct().Count());
        Assert.All(ProblemKind.All, kind => Assert.Matches("^[a-z]+(-[a-z]+)*$", kind.Name));
    }

    [Fact]
    public void Every_kind_in_code_is_in_the_list() => Assert.Equal(
        typeof(ProblemKind).GetFields()
            .Where(field => field.FieldType == typeof(ProblemKind))
            .Select(field => ((ProblemKind)field.GetValue(null)!).Name).Order(),
        ProblemKind.All.Select(kind => kind.Name).Order());

    [Theory]
    [MemberData(nameof(Names))]
    public async Task The_type_leads_to_a_page_that_explains_it(string name)
    {
        using var client = host.CreateClient();
        var kind = ProblemKind.All.Single(known => known.Name == name);

        var page = WebUtility.HtmlDecode(await client.GetStringAsync(
            kind.Type, TestContext.Current.CancellationToken));

        Assert.Contains(kind.Title, page);
        Assert.Contains(kind.Remedy, page);
    }

    private static string Catalogue()
    {
        var text = new StringBuilder(
            """
            # Problems

            Every refusal is `application/problem+json` (RFC 9457) with `type`, `title`, `status`,
            `detail`, `traceId`, and for mistakes in a request `violations[]`: `pointer` (JSON
            Pointer into the request), `value`, `rule`, `bound`, `unit`, `message`. Up to 100
            violations are listed; `violationsLeftOut` counts the rest. This list is closed:
            anything else that fails is `about:blank`, status 500, with the trace id and nothing
            internal.
            The type is an address of the service that explains it.

            | type | status | title | cause | remedy |
            | --- | --- | --- | --- | --- |

            """);
        foreach (var kind in ProblemKind.All.OrderBy(kind => kind.Status).ThenBy(kind => kind.Name))
        {
            text.Append($"| `{kind.Type}` | {kind.Status} | {kind.Title} ");
            text.Append($"| {kind.Cause} | {kind.Remedy} |\n");
        }

        return text.ToString();
    }
}
