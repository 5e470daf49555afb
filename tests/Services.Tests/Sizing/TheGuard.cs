using System.Net;
using System.Text.Json;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using PostFrame.Problems;
using Xunit;

namespace PostFrame.ServicesTests.Sizing;

/// <summary>No refusal leaves a service without its reason, and no failure with ours.</summary>
public sealed class TheGuard : IAsyncLifetime
{
    private const string Secret = "Data Source=/var/secret/orders.db";

    private readonly HttpClient client = new();
    private WebApplication? app;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        var builder = WebApplication.CreateEmptyBuilder(new());
        builder.WebHost.UseKestrelCore().UseUrls("http://127.0.0.1:0");
        builder.Services.AddRouting();
        builder.Logging.ClearProviders();
        app = builder.Build();
        app.UseProblems();
        app.UseRouting();
        app.MapGet("/fails", string () => throw new InvalidOperationException(Secret));
        app.MapGet("/bare/{status:int}", (HttpContext context, int status) =>
        {
            context.Response.StatusCode = status;
        });
        app.MapGet("/late", async (HttpContext context) =>
        {
            await context.Response.WriteAsync("begun", Stop);
            throw new InvalidOperationException(Secret);
        });
        await app.StartAsync(Stop);
        client.BaseAddress = new Uri(app.Urls.Single());
    }

    [Fact]
    public async Task Turns_a_failure_into_a_500_with_a_trace_id_and_nothing_internal()
    {
        var answer = await client.GetAsync("/fails", Stop);
        var problem = await Problem(answer);

        Assert.Equal(HttpStatusCode.InternalServerError, answer.StatusCode);
        Assert.Equal("about:blank", problem.Type);
        Assert.NotEmpty(problem.TraceId!);
        Assert.DoesNotContain("secret", await answer.Content.ReadAsStringAsync(Stop));
    }

    [Theory]
    [InlineData(400)]
    [InlineData(401)]
    [InlineData(404)]
    [InlineData(405)]
    [InlineData(406)]
    [InlineData(409)]
    [InlineData(413)]
    [InlineData(415)]
    [InlineData(429)]
    [InlineData(500)]
    [InlineData(503)]
    public async Task Gives_a_bare_status_its_body(int status)
    {
        var answer = await client.GetAsync($"/bare/{status}", Stop);
        var problem = await Problem(answer);

        Assert.Equal(status, (int)answer.StatusCode);
        Assert.Equal(status, problem.Status);
        Assert.NotEmpty(problem.Title);
        Assert.NotEmpty(problem.Detail);
    }

    [Fact]
    public async Task Leaves_a_good_answer_alone()
    {
        var answer = await client.GetAsync("/bare/204", Stop);

        Assert.Equal(HttpStatusCode.NoContent, answer.StatusCode);
        Assert.Null(answer.Content.Headers.ContentType);
    }

    [Fact]
    public async Task Breaks_off_an_answer_that_fails_half_way_rather_than_lie() =>
        await Assert.ThrowsAsync<HttpRequestException>(
            () => client.GetStringAsync("/late", Stop));

    public async ValueTask DisposeAsync()
    {
        client.Dispose();
        if (app is not null)
        {
            await app.DisposeAsync();
        }
    }

    private static async Task<ProblemBody> Problem(HttpResponseMessage answer)
    {
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        return JsonSerializer.Deserialize<ProblemBody>(
            await answer.Content.ReadAsStringAsync(Stop), JsonSerializerOptions.Web)!;
    }
}
