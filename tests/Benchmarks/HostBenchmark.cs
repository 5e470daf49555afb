using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Json;
using System.Text.Json.Nodes;

namespace PostFrame.Benchmarks;

/// <summary>
/// Measures the single host as its users meet it, over loopback: start to first page, idle memory,
/// sizing under eight callers, an order to its labels.
/// </summary>
internal static class HostBenchmark
{
    private const int Starts = 5;
    private const int Callers = 8;
    private const int WarmUpSeconds = 3;
    private const int MeasuredSeconds = 10;
    private const int Orders = 20;
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    public static int Run(string[] args)
    {
        var examples = args.Length == 1 ? args[0] : Path.Combine("contracts", "examples");
        if (!Directory.Exists(examples))
        {
            Console.Error.WriteLine($"No folder {examples}: run from the top of the project.");
            return 2;
        }

        RunAsync(examples).GetAwaiter().GetResult();
        return 0;
    }

    private static async Task RunAsync(string examples)
    {
        var load = new ForeignLoad();
        Say("measure", "median", "worst", "unit");
        var starts = new List<double>();
        for (var i = 0; i < Starts; i++)
        {
            await using var host = await RunningHost.StartAsync(Patience);
            starts.Add(host.StartedAfter.TotalMilliseconds);
        }

        Say("start to first page", starts, "ms");
        await using (var host = await RunningHost.StartAsync(Patience))
        {
            await Task.Delay(TimeSpan.FromSeconds(10));
            Say("idle memory 10 s after start", [host.ResidentMb], "MB");
            Say("sizing W2, 8 callers", await SizingAsync(host, examples), "ms");
            Say("order W1 to plan and labels", await OrdersAsync(host, examples), "ms");
            Say("memory after that", [host.ResidentMb], "MB");
        }

        Console.WriteLine($"other processes' load meanwhile: {load.Cores:0.00} cores of "
            + $"{Environment.ProcessorCount}");
    }

    private static async Task<List<double>> SizingAsync(RunningHost host, string examples)
    {
        var body = await File.ReadAllBytesAsync(
            Path.Combine(examples, "w2-overhead-door.sizing.json"));
        await CallAsync(host, body, WarmUpSeconds);
        return await CallAsync(host, body, MeasuredSeconds);
    }

    private static async Task<List<double>> CallAsync(RunningHost host, byte[] body, int seconds)
    {
        var until = Stopwatch.GetTimestamp() + seconds * Stopwatch.Frequency;
        var each = await Task.WhenAll(Enumerable.Range(0, Callers).Select(_ => Task.Run(async () =>
        {
            var times = new List<double>();
            while (Stopwatch.GetTimestamp() < until)
            {
                var began = Stopwatch.GetTimestamp();
                using var content = new ByteArrayContent(body);
                content.Headers.ContentType = new("application/json");
                using var answer = await host.Http.PostAsync("/v1/sizings", content);
                await answer.EnsureSuccessStatusCode().Content.ReadAsByteArrayAsync();
                times.Add(Stopwatch.GetElapsedTime(began).TotalMilliseconds);
            }

            return times;
        })));
        return [.. each.SelectMany(times => times)];
    }

    private static async Task<List<double>> OrdersAsync(RunningHost host, string examples)
    {
        var order = JsonNode.Parse(await File.ReadAllTextAsync(
            Path.Combine(examples, "w1-plain-gable.order.json")))!;
        var times = new List<double>();
        for (var i = 0; i < Orders; i++)
        {
            var number = $"BENCH-{i:000}";
            order["orderNumber"] = number;
            var began = Stopwatch.GetTimestamp();
            using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/orders")
            {
                Content = JsonContent.Create(order),
                Headers = { { "Idempotency-Key", number } },
            };
            using var answer = await host.Http.SendAsync(request);
            answer.EnsureSuccessStatusCode();
            await host.UntilAsync($"/v1/labels/{number}.pdf", Patience);
            times.Add(Stopwatch.GetElapsedTime(began).TotalMilliseconds);
        }

        return times;
    }

    private static void Say(string what, List<double> samples, string unit)
    {
        samples.Sort();
        Say(what, Shown(samples[samples.Count / 2]), Shown(samples[^1]),
            $"{unit} (n = {samples.Count})");
    }

    private static void Say(string what, string median, string worst, string unit) =>
        Console.WriteLine($"{what,-32} {median,10} {worst,10} {unit}");

    private static string Shown(double value) =>
        value.ToString("0.0", CultureInfo.InvariantCulture);
}
