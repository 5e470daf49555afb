using System.Net;
using Dapper;
using Microsoft.Data.Sqlite;
using PostFrame.ServicesTests.Messaging;
using PostFrame.ServicesTests.Orders;
using Xunit;

namespace PostFrame.ServicesTests.SingleHost;

/// <summary>The real program when its bus repeats everything, and when a message cannot be
/// digested. Triggers in the stores make the trouble; the program knows nothing of it.</summary>
public sealed class BadDeliveryRules : IDisposable
{
    private const string SendThrice =
        """
        CREATE TABLE sent (id TEXT PRIMARY KEY, times INTEGER NOT NULL);
        CREATE TRIGGER send_thrice AFTER DELETE ON outbox BEGIN
          INSERT INTO sent (id, times) VALUES (OLD.id, 1)
            ON CONFLICT (id) DO UPDATE SET times = times + 1;
          INSERT INTO outbox (id, type, body, created_at, available_at)
            SELECT OLD.id, OLD.type, OLD.body, OLD.created_at, OLD.available_at
            FROM sent WHERE id = OLD.id AND times < 3;
        END
        """;

    private const string PoisonPf2 =
        """
        CREATE TRIGGER poison AFTER INSERT ON outbox WHEN NEW.body LIKE '%"subject":"PF-2/1"%' BEGIN
          UPDATE outbox SET body = json_set(NEW.body, '$.data.revision', 0)
          WHERE id = NEW.id;
        END
        """;

    /// <summary>Labelling cannot draw a plane of this kind; nobody else looks at it.</summary>
    private const string UndrawablePf2 =
        """
        CREATE TRIGGER undrawable AFTER INSERT ON outbox
        WHEN NEW.body LIKE '%"subject":"PF-2/1"%' BEGIN
          UPDATE outbox SET body = json_set(NEW.body, '$.data.planes[0].kind', 'barrel')
          WHERE id = NEW.id;
        END
        """;

    private static readonly Dictionary<string, string> Impatient = new()
    {
        ["Reconciler:Grace"] = "00:00:01",
        ["Reconciler:LongestGrace"] = "00:00:01",
        ["Reconciler:MostAnnouncements"] = "3",
    };

    private readonly TemporaryFolder _folder = new();
    private HostProcess _host = null!;

    public void Dispose()
    {
        _host.Dispose();
        _folder.Dispose();
    }

    [Fact]
    public async Task Every_message_sent_three_times_has_the_effect_of_one()
    {
        await RestartAsync();
        await RestartAsync("orders cutting labelling", SendThrice);
        using var poster = Poster();
        await PostAsync(poster, 5);
        await poster.UntilAsync("labelled", 5, TimeSpan.FromMinutes(1));
        await UntilOutboxesAreEmptyAsync();
        Assert.Equal(0, await _host.StopAsync());

        Assert.Empty(PipelineCheck.Violations(_folder.Path));
        Assert.Equal([3L], Query<long>("cutting", "SELECT DISTINCT times FROM sent"));
        Assert.True(Query<long>("orders", "SELECT count(*) FROM sent")[0] >= 5);
    }

    [Fact]
    public async Task A_message_that_cannot_be_digested_parks_its_order_and_holds_up_no_other()
    {
        await RestartAsync();
        await RestartAsync("orders", PoisonPf2);
        using var poster = Poster();
        await PostAsync(poster, 3);
        await poster.UntilAsync("labelled", 2, TimeSpan.FromMinutes(1));
        await poster.UntilAsync("parked", 1, TimeSpan.FromMinutes(1));

        await RestartAsync("orders", "DROP TRIGGER poison");
        Assert.Equal(HttpStatusCode.Accepted, await RetryAsync("PF-2"));
        Assert.Equal(HttpStatusCode.Conflict, await RetryAsync("PF-2"));
        await poster.UntilAsync("labelled", 3, TimeSpan.FromMinutes(1));
        Assert.Equal(0, await _host.StopAsync());
        Assert.Empty(PipelineCheck.Violations(_folder.Path));
    }

    [Fact]
    public async Task Labels_that_cannot_be_drawn_park_their_order_at_once_with_the_reason()
    {
        await RestartAsync();
        await RestartAsync("orders", UndrawablePf2);
        using var poster = Poster();
        await PostAsync(poster, 3);
        await poster.UntilAsync("labelled", 2, TimeSpan.FromMinutes(1));
        await poster.UntilAsync("parked", 1, TimeSpan.FromMinutes(1));
        Assert.Contains(
            "drawing-failed",
            Query<string>("orders", "SELECT park_reasons FROM orders WHERE state = 'parked'")[0]);

        await RestartAsync("orders", "DROP TRIGGER undrawable");
        Assert.Equal(HttpStatusCode.Accepted, await RetryAsync("PF-2"));
        await poster.UntilAsync("labelled", 3, TimeSpan.FromMinutes(1));
        await UntilOutboxesAreEmptyAsync();
        Assert.Equal(0, await _host.StopAsync());
        Assert.Empty(PipelineCheck.Violations(_folder.Path));
    }

    private OrderPoster Poster() => new() { Address = () => _host.Address };

    private static async Task PostAsync(OrderPoster poster, int count)
    {
        for (var n = 1; n <= count; n++)
        {
            await poster.PostAsync(OrderRequests.Shed($"PF-{n}"), $"k{n}");
        }
    }

    private async Task<HttpStatusCode> RetryAsync(string orderNumber)
    {
        using var http = new HttpClient();
        using var answer = await http.PostAsync(
            new Uri(_host.Address, $"/v1/orders/{orderNumber}/retry"), null,
            TestContext.Current.CancellationToken);
        return answer.StatusCode;
    }

    /// <summary>Starts it; again after a change to the stores, if any.</summary>
    private async Task RestartAsync(string services = "", string change = "")
    {
        if (services.Length > 0)
        {
            Assert.Equal(0, await _host.StopAsync());
            _host.Dispose();
        }

        foreach (var service in services.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            using var store = Open(service);
            store.Execute(change);
        }

        _host = HostProcess.Start("PostFrame.SingleHost", _folder.Path, settings: Impatient);
        await _host.UntilUpAsync();
    }

    private async Task UntilOutboxesAreEmptyAsync()
    {
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(100));
        for (var n = 0; n < 600; n++)
        {
            if (new[] { "orders", "cutting", "labelling" }.All(
                service => Query<long>(service, "SELECT count(*) FROM outbox")[0] == 0))
            {
                return;
            }

            await tick.WaitForNextTickAsync(TestContext.Current.CancellationToken);
        }
    }

    private List<T> Query<T>(string service, string sql)
    {
        using var store = Open(service);
        return store.Query<T>(sql).AsList();
    }

    private SqliteConnection Open(string service)
    {
        var store = new SqliteConnection(
            $"Data Source={Path.Combine(_folder.Path, service + ".db")};Pooling=False");
        store.Open();
        return store;
    }
}
