using PostFrame.LabellingWorker.Labels;
using PostFrame.LabellingWorker.Messages;
using PostFrame.Messaging;
using PostFrame.Problems;

namespace PostFrame.LabellingWorker;

/// <summary>Puts the labelling service into a host, its own or a shared one.</summary>
public static class Labelling
{
    /// <summary>Names its store, its queue and its API document.</summary>
    internal const string Name = "labelling";

    public static WebApplicationBuilder AddLabelling(this WebApplicationBuilder builder)
    {
        builder.Services.AddOpenApi(Name, options => ApiDocument.Introduce(
            options, "Labelling",
            "Labels and checklist of each order, as its newest plan cuts it."));
        builder.Services.AddPipelineBus(
            builder.Configuration, Name, typeof(Labelling).Assembly,
            pipeline => pipeline.Consumes<PrintLabels>()
                .Publishes<LabelsPrinted>().Publishes<LabelsFailed>());
        return builder;
    }

    public static WebApplication MapLabelling(this WebApplication app)
    {
        GetLabels.Map(app, app.Services.GetRequiredKeyedService<SqliteStore>(Name));
        return app;
    }
}
