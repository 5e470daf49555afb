using Microsoft.OpenApi;
using PostFrame.Messaging;
using PostFrame.Operations.Pipeline;
using PostFrame.Problems;

namespace PostFrame.Operations;

/// <summary>The operations service: what its own host and the single host both call.</summary>
public static class OperationsSetup
{
    /// <summary>Names its store, its queue and its API document.</summary>
    internal const string Name = "operations";

    /// <summary>Register <see cref="AskForOrders"/> where Orders is in the same process; otherwise
    /// it is asked at <c>Orders:Address</c>, and not at all when that is not set.</summary>
    public static WebApplicationBuilder AddOperations(this WebApplicationBuilder builder)
    {
        builder.Services.AddPipelineBus(
            builder.Configuration, Name, typeof(OperationsSetup).Assembly,
            parts => parts.Consumes<TrackOrders>());
        builder.Services.AddOptions<LinkOptions>().BindConfiguration("Links")
            .Validate(
                links => links.AreOrigins,
                "Links:* must be empty or an origin such as http://127.0.0.1:8082.")
            .ValidateOnStart();
        builder.Services.AddOptions<StreamOptions>().BindConfiguration("Stream")
            .ValidateDataAnnotations().ValidateOnStart();
        builder.Services.AddSingleton<DescribeOrders>();
        builder.Services.AddSingleton<StreamPipeline>();
        builder.Services.AddSingleton<ChangeFeed>();
        builder.Services.AddHostedService(services => services.GetRequiredService<ChangeFeed>());
        builder.Services.AddHostedService<HearOrders>();
        if (builder.Configuration["Orders:Address"] is { Length: > 0 } address)
        {
            AddOrdersClient(builder.Services, new Uri(address));
        }

        builder.Services.AddOpenApi(Name, options => ApiDocument.Introduce(
            options, "Operations", "Where every order stands, at once and as it changes."));
        return builder;
    }

    private static void AddOrdersClient(IServiceCollection services, Uri address)
    {
        services.AddHttpClient(Name, http =>
        {
            http.BaseAddress = address;
            http.Timeout = TimeSpan.FromSeconds(10);
        });
        services.AddSingleton<AskForOrders>(provider => (change, cancel) =>
            provider.GetRequiredService<IHttpClientFactory>().CreateClient(Name)
                .GetByteArrayAsync($"/v1/orders?changedAfter={change}&limit=500", cancel));
    }

    public static WebApplication MapOperations(this WebApplication app)
    {
        app.MapPipeline();
        StreamPipeline.MapStream(app);
        app.MapBoard();
        return app;
    }
}
