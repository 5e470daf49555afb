using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using PostFrame.LabellingWorker.Labels;
using UglyToad.PdfPig;
using Xunit;

namespace PostFrame.ServicesTests.Labelling;

/// <summary>
/// The labelling service from message to download. The messages are the published examples: the
/// worked take-off W1, 46 pieces on 8 rolls.
/// </summary>
public sealed class PrintLabelsTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("postframe-labels");

    public void Dispose() => folder.Delete(recursive: true);

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Labels_are_printed_whichever_message_comes_first(bool isOrderFirst)
    {
        await using var host = await LabellingHost.StartAsync(folder.FullName);
        var (order, plan) = LabellingHost.Example();
        await (isOrderFirst
            ? host.PublishAsync(order, order.Id)
            : host.PublishAsync(plan, plan.Id));
        await (isOrderFirst
            ? host.PublishAsync(plan, plan.Id)
            : host.PublishAsync(order, order.Id));
        var printed = await host.NextAsync();
        Assert.Equal(
            ("/labelling", "labels-printed.v1", "PF-1001/1", 46),
            (printed.Source, printed.Type, printed.Subject, printed.Data.LabelCount));
        using var labels = await PdfAsync(host, "/v1/labels/PF-1001.pdf");
        Assert.Equal(46, labels.NumberOfPages);
        using var checklist = await PdfAsync(host, "/v1/labels/PF-1001/checklist.pdf");
        Assert.Contains("PACKING LIST", checklist.GetPage(1).Text);
    }

    [Fact]
    public async Task Labels_lie_in_cutting_order_and_show_the_planned_lengths()
    {
        await using var host = await LabellingHost.StartAsync(folder.FullName);
        var (order, plan) = LabellingHost.Example();
        await PrintAsync(host, "PF-1001");
        var cuts = plan.Data.Plans.SelectMany(group => group.Rolls.OrderBy(roll => roll.Roll))
            .SelectMany(roll => roll.Cuts.OrderBy(cut => cut.Sequence)).ToList();
        using var labels = await PdfAsync(host, "/v1/labels/PF-1001.pdf");
        for (var i = 0; i < cuts.Count; i++)
        {
            var piece = order.Data.Pieces.Single(p => p.PieceId == cuts[i].PieceId);
            var text = labels.GetPage(i + 1).Text;
            Assert.Contains(piece.PieceId, text);
            Assert.Contains(piece.CutText, text);
            Assert.Contains($"{piece.CutNm / 25_400_000} in", text);
            Assert.Contains($"Piece {i + 1} of 46", text);
        }
    }

    [Fact]
    public async Task Summary_lists_the_labels_as_they_lie_in_the_file()
    {
        await using var host = await LabellingHost.StartAsync(folder.FullName);
        await PrintAsync(host, "PF-1001");
        var answer = await AnswerAsync(host, "PF-1001");
        Assert.Equal(("PF-1001", 1, 46), (answer.OrderNumber, answer.Revision, answer.LabelCount));
        Assert.Equal(Enumerable.Range(1, 46), answer.Labels.Select(label => label.Number));
        using var labels = await PdfAsync(host, answer.LabelsPdf);
        Assert.All(answer.Labels, label => Assert.Contains(
            label.PieceId, labels.GetPage(label.Number).Text));
        using var checklist = await PdfAsync(host, answer.ChecklistPdf);
        Assert.True(checklist.NumberOfPages > 5);
    }

    [Fact]
    public async Task A_message_delivered_three_times_prints_one_set()
    {
        await using var host = await LabellingHost.StartAsync(folder.FullName);
        var (order, plan) = LabellingHost.Example();
        for (var i = 0; i < 3; i++)
        {
            await host.PublishAsync(order, order.Id);
            await host.PublishAsync(plan, plan.Id);
        }

        var first = await host.NextAsync();
        var others = await host.SettleAsync();
        Assert.All(others, other => Assert.Equal(first.Data, other.Data));
        Assert.True(others.Count <= 1, $"announced {others.Count + 1} times");
    }

    [Fact]
    public async Task A_revision_announced_again_is_answered_again_and_not_printed_again()
    {
        await using var host = await LabellingHost.StartAsync(folder.FullName);
        var first = await PrintAsync(host, "PF-1001");
        var (order, _) = LabellingHost.Example();
        await host.PublishAsync(order, Guid.NewGuid());
        var second = await host.NextAsync();
        Assert.NotEqual(first.Id, second.Id);
        Assert.Equal(first.Data, second.Data);
    }

    [Fact]
    public async Task Half_a_set_cannot_be_fetched()
    {
        await using var host = await LabellingHost.StartAsync(folder.FullName);
        var (order, _) = LabellingHost.Example();
        await host.PublishAsync(order, order.Id);
        Assert.Empty(await host.SettleAsync());
        await AssertNotFoundAsync(host, "PF-1001");
    }

    [Theory]
    [InlineData("missing")]
    [InlineData("doubled")]
    [InlineData("unknown")]
    public async Task A_plan_that_does_not_hold_the_ordered_pieces_prints_nothing(string wrong)
    {
        await using var host = await LabellingHost.StartAsync(folder.FullName);
        var (order, plan) = LabellingHost.Example();
        var group = plan.Data.Plans[0];
        var cuts = group.Rolls[0].Cuts;
        var changed = wrong switch
        {
            "missing" => cuts.Skip(1),
            "doubled" => cuts.Append(cuts[0]),
            _ => cuts.Append(cuts[0] with { PieceId = "99-999Z" }),
        };
        var roll = group.Rolls[0] with { Cuts = [.. changed] };
        var rolls = group with { Rolls = [roll, .. group.Rolls.Skip(1)] };
        await host.PublishAsync(order, order.Id);
        await host.PublishAsync(
            plan with { Data = plan.Data with { Plans = [rolls] } }, plan.Id);
        Assert.Empty(await host.SettleAsync());
        await AssertNotFoundAsync(host, "PF-1001");
    }

    /// <summary>Both halves of each order at once, so that they meet in the service.</summary>
    [Fact]
    public async Task Halves_that_come_at_the_same_moment_still_print()
    {
        await using var host = await LabellingHost.StartAsync(folder.FullName);
        string[] numbers = [.. Enumerable.Range(1, 12).Select(n => $"PF-{n}")];
        await Task.WhenAll(numbers.SelectMany(number =>
        {
            var (order, plan) = LabellingHost.Example(number);
            return new[]
            {
                host.PublishAsync(order, Guid.NewGuid()), host.PublishAsync(plan, Guid.NewGuid()),
            };
        }));
        var printed = new List<string>();
        while (printed.Count < numbers.Length)
        {
            printed.Add((await host.NextAsync()).Data.OrderNumber);
        }

        Assert.Equal(numbers.Order(), printed.Order());
    }

    [Fact]
    public async Task A_half_kept_before_a_restart_is_printed_after_it()
    {
        var (order, plan) = LabellingHost.Example();
        await using (var before = await LabellingHost.StartAsync(folder.FullName))
        {
            await before.PublishAsync(order, order.Id);
            await before.SettleAsync();
        }

        await using var after = await LabellingHost.StartAsync(folder.FullName);
        await after.PublishAsync(plan, plan.Id);
        Assert.Equal("PF-1001/1", (await after.NextAsync()).Subject);
    }

    [Fact]
    public async Task The_newest_printed_revision_is_handed_out()
    {
        await using var host = await LabellingHost.StartAsync(folder.FullName);
        await PrintAsync(host, "PF-1001", revision: 2);
        await PrintAsync(host, "PF-1001", revision: 1);
        Assert.Equal(2, (await AnswerAsync(host, "PF-1001")).Revision);
        using var labels = await PdfAsync(host, "/v1/labels/PF-1001.pdf");
        Assert.Contains("revision 2", labels.GetPage(1).Text);
    }

    [Fact]
    public async Task An_order_number_with_dots_finds_its_files()
    {
        await using var host = await LabellingHost.StartAsync(folder.FullName);
        await PrintAsync(host, "A.1-b_2.c");
        using var labels = await PdfAsync(host, "/v1/labels/A.1-b_2.c.pdf");
        Assert.Equal(46, labels.NumberOfPages);
        Assert.Equal("A.1-b_2.c", (await AnswerAsync(host, "A.1-b_2.c")).OrderNumber);
    }

    private static async Task<PostFrame.LabellingWorker.Messages.LabelsPrinted> PrintAsync(
        LabellingHost host, string orderNumber, int revision = 1)
    {
        var (order, plan) = LabellingHost.Example(orderNumber, revision);
        await host.PublishAsync(order, Guid.NewGuid());
        await host.PublishAsync(plan, Guid.NewGuid());
        return await host.NextAsync();
    }

    private static async Task<LabelsAnswer> AnswerAsync(LabellingHost host, string orderNumber) =>
        (await host.Http.GetFromJsonAsync<LabelsAnswer>(
            $"/v1/labels/{orderNumber}", TestContext.Current.CancellationToken))!;

    private static async Task<PdfDocument> PdfAsync(LabellingHost host, string address)
    {
        var answer = await host.Http.GetAsync(address, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("application/pdf", answer.Content.Headers.ContentType?.MediaType);
        return PdfDocument.Open(
            await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));
    }

    private static async Task AssertNotFoundAsync(LabellingHost host, string orderNumber)
    {
        foreach (var tail in new[] { "", ".pdf", "/checklist.pdf" })
        {
            var answer = await host.Http.GetAsync(
                $"/v1/labels/{orderNumber}{tail}", TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
            Assert.Equal(
                "application/problem+json", answer.Content.Headers.ContentType?.MediaType);
            var problem = await answer.Content.ReadFromJsonAsync<JsonElement>(
                TestContext.Current.CancellationToken);
            Assert.Equal(
                "/problems/labels-not-found", problem.GetProperty("type").GetString());
        }
    }
}
