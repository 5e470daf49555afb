using Dapper;
using Microsoft.Data.Sqlite;
using PostFrame.ServicesTests.Messaging;
using PostFrame.ServicesTests.Orders;
using Xunit;

namespace PostFrame.ServicesTests.SingleHost;

/// <summary>A checker that finds nothing proves nothing: each kind of damage must be seen. Also
/// what a finished run looks like from outside.</summary>
public sealed class CheckerRules(FinishedRun run) : IClassFixture<FinishedRun>
{
    [Fact]
    public void A_finished_run_has_nothing_wrong() =>
        Assert.Empty(PipelineCheck.Violations(run.Folder));

    [Theory]
    [InlineData("labelling", "DELETE FROM label_set WHERE order_number = 'PF-1'", "no labels")]
    [InlineData("labelling", "UPDATE label_set SET label_count = 1", "1 labels for")]
    [InlineData("labelling",
        "INSERT INTO label_set SELECT order_number, 2, label_count, printed_at, summary, "
        + "labels_pdf, checklist_pdf, plan FROM label_set", "2 label sets")]
    [InlineData("labelling", "UPDATE label_set SET plan = 7", "labels of plan 7")]
    [InlineData("cutting",
        "UPDATE piece SET sequence = 100 - sequence", "do not lie in its cutting order")]
    [InlineData("cutting", "UPDATE cutting_order SET state = 'waiting'", "no plan")]
    [InlineData("cutting", "UPDATE roll SET roll_length_nm = 1000", "more than it has")]
    [InlineData("cutting", "UPDATE piece SET roll_id = NULL, sequence = NULL", "on no roll")]
    [InlineData("orders", "UPDATE orders SET state = 'planned'", "neither done nor parked")]
    [InlineData(
        "orders", "UPDATE orders SET order_number = 'PF-X' WHERE seq = 1", "never accepted")]
    [InlineData("orders",
        "INSERT INTO history (order_seq, revision, at, event, text) "
        + "VALUES (1, 1, 0, 'labelled', '')", "2 times")]
    public void Damage_of_each_kind_is_seen(string service, string damage, string seen)
    {
        using var copy = new TemporaryFolder();
        foreach (var file in Directory.EnumerateFiles(run.Folder, "*.db*")
            .Where(file => !file.EndsWith(".lock", StringComparison.Ordinal)))
        {
            File.Copy(file, Path.Combine(copy.Path, Path.GetFileName(file)));
        }

        using (var store = new SqliteConnection(
            $"Data Source={Path.Combine(copy.Path, service + ".db")};Pooling=False"))
        {
            store.Open();
            Assert.True(store.Execute("PRAGMA foreign_keys = OFF; " + damage) > 0);
        }

        Assert.Contains(
            PipelineCheck.Violations(copy.Path),
            found => found.Contains(seen, StringComparison.Ordinal));
    }

    [Fact]
    public void The_console_says_where_everything_is_and_nothing_more()
    {
        Assert.Contains("/board/", run.Output);
        Assert.Contains("/docs", run.Output);
        Assert.InRange(run.Output.Split('\n').Length, 5, 16);
    }

    [Fact]
    public void A_stop_by_signal_ends_well() => Assert.Equal(0, run.ExitCode);
}
