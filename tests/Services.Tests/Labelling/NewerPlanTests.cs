using System.Net.Http.Json;
using System.Text.Json;
using PostFrame.LabellingWorker.Labels;
using PostFrame.LabellingWorker.Messages;
using PostFrame.ServicesTests.Messaging;
using UglyToad.PdfPig;
using Xunit;

namespace PostFrame.ServicesTests.Labelling;

/// <summary>
/// Labels follow the newest plan of a revision. Outside check: the words of
/// <c>cutting-planned.v1</c>, that the highest plan number holds whatever comes late.
/// </summary>
public sealed class NewerPlanTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    public static TheoryData<string> Arrivals => new(
        from order in Enumerable.Range(0, 4)
        from plans in new[] { "123", "132", "213", "231", "312", "321" }
        select plans.Insert(Math.Min(order, 3), "o"));

    [Theory]
    [MemberData(nameof(Arrivals))]
    public async Task In_whatever_order_plans_come_the_labels_follow_the_newest(string arrivals)
    {
        await using var host = await LabellingHost.StartAsync(_folder.Path);
        var (order, _) = LabellingHost.Example();
        foreach (var (count, item) in arrivals.Index())
        {
            await (item == 'o'
                ? host.PublishAsync(order, Guid.NewGuid())
                : host.PublishAsync(PlanNumbered(item - '0'), Guid.NewGuid()));
            await host.UntilTakenAsync(count + 1);
        }

        var answer = await AnswerAsync(host);
        Assert.Equal(3, answer.PlanNumber);
        Assert.Equal(PiecesOf(PlanNumbered(3)), answer.Labels.Select(label => label.PieceId));
    }

    [Fact]
    public async Task A_newer_plan_lays_the_same_labels_in_its_order_and_says_so()
    {
        await using var host = await LabellingHost.StartAsync(_folder.Path);
        await host.PublishAsync(LabellingHost.Example().Order, Guid.NewGuid());
        await host.PublishAsync(PlanNumbered(1), Guid.NewGuid());
        var first = await host.NextAsync();
        await host.PublishAsync(PlanNumbered(2), Guid.NewGuid());
        var second = await host.NextAsync();

        Assert.Equal((1, 2), (first.Data.PlanNumber, second.Data.PlanNumber));
        Assert.Equal(PiecesOf(PlanNumbered(1)).Order(), PiecesOf(PlanNumbered(2)).Order());
        using var labels = PdfDocument.Open(await host.Http.GetByteArrayAsync(
            "/v1/labels/PF-1001.pdf", TestContext.Current.CancellationToken));
        Assert.All(PiecesOf(PlanNumbered(2)).Index(), piece => Assert.Contains(
            piece.Item, labels.GetPage(piece.Index + 1).Text));
    }

    [Fact]
    public async Task A_newer_plan_that_cuts_in_the_same_order_leaves_the_printed_paper_alone()
    {
        await using var host = await LabellingHost.StartAsync(_folder.Path);
        await host.PublishAsync(LabellingHost.Example().Order, Guid.NewGuid());
        await host.PublishAsync(PlanNumbered(1), Guid.NewGuid());
        var first = await host.NextAsync();
        var same = PlanNumbered(1);
        await host.PublishAsync(
            same with { Data = same.Data with { PlanNumber = 2 } }, Guid.NewGuid());

        var second = await host.NextAsync();
        Assert.Equal(first.Data with { PlanNumber = 2 }, second.Data);
    }

    [Fact]
    public async Task Labels_that_cannot_be_drawn_say_so_and_are_drawn_once_they_can()
    {
        await using var host = await LabellingHost.StartAsync(_folder.Path);
        var (order, plan) = LabellingHost.Example();
        var broken = order.Data.Planes[0] with { Kind = "barrel" };
        await host.PublishAsync(plan, Guid.NewGuid());
        await host.PublishAsync(
            order with
            {
                Data = order.Data with { Planes = [broken, .. order.Data.Planes.Skip(1)] },
            },
            Guid.NewGuid());

        var failed = await host.NextFailedAsync();
        Assert.Equal(
            ("labels-failed.v1", "PF-1001/1", 1, "drawing-failed"),
            (failed.Type, failed.Subject, failed.Data.PlanNumber, failed.Data.Reasons[0].Code));
        Assert.Contains("3 times", await WhyNoneAsync(host));

        await host.PublishAsync(order, Guid.NewGuid());
        Assert.Equal(1, (await host.NextAsync()).Data.PlanNumber);
        Assert.Equal(46, (await AnswerAsync(host)).LabelCount);
    }

    [Fact]
    public async Task A_newer_plan_whose_labels_fail_keeps_the_older_set_to_be_fetched()
    {
        await using var host = await LabellingHost.StartAsync(_folder.Path);
        await host.PublishAsync(LabellingHost.Example().Order, Guid.NewGuid());
        await host.PublishAsync(PlanNumbered(1), Guid.NewGuid());
        await host.NextAsync();
        var plan = PlanNumbered(2);
        await host.PublishAsync(
            plan with { Data = plan.Data with { Plans = [.. plan.Data.Plans.Skip(1)] } },
            Guid.NewGuid());

        var failed = await host.NextFailedAsync();
        Assert.Equal(
            (2, "order-and-plan-differ"), (failed.Data.PlanNumber, failed.Data.Reasons[0].Code));
        Assert.Equal(1, (await AnswerAsync(host)).PlanNumber);
    }

    /// <summary>The example's cuts, its rolls turned by one more place for each plan.</summary>
    private static CuttingPlanned PlanNumbered(int number)
    {
        var plan = LabellingHost.Example().Plan;
        var group = plan.Data.Plans[0];
        var turned = group.Rolls.Skip(number).Concat(group.Rolls.Take(number))
            .Select((roll, index) => roll with { Roll = index + 1 });
        return plan with
        {
            Id = Guid.NewGuid(),
            Data = plan.Data with
            {
                PlanNumber = number,
                Plans = [group with { Rolls = [.. turned] }, .. plan.Data.Plans.Skip(1)],
            },
        };
    }

    private static List<string> PiecesOf(CuttingPlanned plan) =>
        [.. plan.Data.Plans.SelectMany(group => group.Rolls).SelectMany(roll => roll.Cuts)
            .Select(cut => cut.PieceId)];

    private static async Task<LabelsAnswer> AnswerAsync(LabellingHost host) =>
        (await host.Http.GetFromJsonAsync<LabelsAnswer>(
            "/v1/labels/PF-1001", TestContext.Current.CancellationToken))!;

    private static async Task<string> WhyNoneAsync(LabellingHost host)
    {
        using var answer = await host.Http.GetAsync(
            "/v1/labels/PF-1001", TestContext.Current.CancellationToken);
        Assert.Equal(404, (int)answer.StatusCode);
        return (await answer.Content.ReadFromJsonAsync<JsonElement>(
            TestContext.Current.CancellationToken)).GetProperty("detail").GetString()!;
    }
}
