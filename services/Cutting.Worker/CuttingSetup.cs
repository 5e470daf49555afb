using Microsoft.OpenApi;
using PostFrame.CuttingWorker.Messages;
using PostFrame.CuttingWorker.Plans;
using PostFrame.CuttingWorker.Queue;
using PostFrame.CuttingWorker.Stock;
using PostFrame.Messaging;
using PostFrame.Problems;

namespace PostFrame.CuttingWorker;

/// <summary>The cutting service: what its own host and the single host both call.</summary>
public static class CuttingSetup
{
    internal const string Service = "cutting";

    public static WebApplicationBuilder AddCutting(this WebApplicationBuilder builder)
    {
        builder.Services.AddOptions<CuttingOptions>().BindConfiguration("Cutting")
            .ValidateDataAnnotations().ValidateOnStart();
        builder.Services.AddPipelineBus(
            builder.Configuration, Service, typeof(CuttingSetup).Assembly,
            parts => parts.Consumes<TakeOrder>()
                .Publishes<CuttingPlanned>().Publishes<CuttingRejected>());
        builder.Services.AddSingleton<PlanCutting>();
        builder.Services.AddSingleton<Shift>();
        builder.Services.AddHostedService(services => services.GetRequiredService<PlanCutting>());
        builder.Services.AddOpenApi(Service, options =>
        {
            ApiDocument.Introduce(
                options, "Cutting", "The cutting queue, the plan of each order, and the rack.");
            options.AddOperationTransformer((operation, context, _) =>
            {
                if (context.Description.ActionDescriptor.EndpointMetadata
                    .OfType<BenchRequest.KeyHeader>().Any())
                {
                    (operation.Parameters ??= []).Add(BenchRequest.KeyParameter);
                }

                return Task.CompletedTask;
            });
        });
        return builder;
    }

    public static WebApplication MapCutting(this WebApplication app)
    {
        app.MapQueue();
        app.MapRetry();
        app.MapShift();
        app.MapPlans();
        app.MapMarkCut();
        app.MapSpoilPiece();
        app.MapShortenRoll();
        app.MapRack();
        return app;
    }
}
