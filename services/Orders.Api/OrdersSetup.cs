using System.Text.Json.Nodes;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Http.Resilience;
using Microsoft.OpenApi;
using PostFrame.Messaging;
using PostFrame.OrdersApi.Messages;
using PostFrame.OrdersApi.Orders;
using PostFrame.OrdersApi.TakeOffs;
using PostFrame.Problems;

namespace PostFrame.OrdersApi;

/// <summary>The orders service: what its own host and the single host both call.</summary>
public static class OrdersSetup
{
    internal const string Service = "orders";
    private const string Json = "application/json";

    /// <summary>Register <see cref="AskForTakeOff"/> before, where sizing is in the same
    /// process; otherwise it is asked at <c>Sizing:Address</c>.</summary>
    public static WebApplicationBuilder AddOrders(this WebApplicationBuilder builder)
    {
        builder.Services.AddPipelineBus(
            builder.Configuration, Service, typeof(OrdersSetup).Assembly,
            parts => parts.Consumes<HearProgress>().Publishes<OrderConfirmed>());
        if (builder.Services.All(added => added.ServiceType != typeof(AskForTakeOff)))
        {
            AddSizingClient(builder);
        }

        builder.Services.AddOptions<ReconcilerOptions>().BindConfiguration("Reconciler")
            .ValidateDataAnnotations().ValidateOnStart();
        builder.Services.AddSingleton<ProcessRun>();
        builder.Services.AddSingleton<SubmitOrder>();
        builder.Services.AddSingleton<ReadOrders>();
        builder.Services.AddSingleton<RetryOrder>();
        builder.Services.AddHostedService<Reconciler>();
        builder.Services.AddOpenApi(Service, Describe);
        return builder;
    }

    public static WebApplication MapOrders(this WebApplication app)
    {
        var orders = app.MapGroup("/v1/orders").WithGroupName(Service).WithTags("Orders");
        orders.MapPost("", (HttpContext context, SubmitOrder submit) => submit.HandleAsync(context))
            .WithName("submitOrder").WithSummary("Order a building's insulation")
            .WithDescription("Needs an Idempotency-Key header: your own, new for each new order, "
                + "the same for each repetition. A repetition gets the first answer, byte for "
                + "byte. 202 means that the order is on disk and will be planned and labelled.")
            .Accepts<OrderPage>(Json).Produces<AcceptedOrder>(202, Json)
            .MapRefusals(
                ProblemKind.MalformedJson, ProblemKind.IdempotencyKeyMissing,
                ProblemKind.OrderNumberTaken, ProblemKind.BodyTooLarge,
                ProblemKind.UnsupportedMediaType, ProblemKind.InvalidRequest,
                ProblemKind.IdempotencyKeyReused, ProblemKind.SizingUnavailable,
                ProblemKind.StoreUnavailable);
        orders.MapGet("", (HttpRequest request, ReadOrders read) => read.Many(request))
            .WithName("listOrders").WithSummary("Orders, newest first")
            .WithDescription("Query: limit (1 to 500), state, before (as in next); or changedAfter "
                + "for all orders changed since, in the order they changed.")
            .Produces<OrderList>(200, Json).MapRefusals(ProblemKind.InvalidRequest);
        orders.MapGet("/{orderNumber}", (string orderNumber, ReadOrders read) =>
                read.One(orderNumber))
            .WithName("getOrder").WithSummary("One order: state, history, plan and labels")
            .Produces<OrderLine>(200, Json).MapRefusals(ProblemKind.OrderNotFound);
        orders.MapPost("/{orderNumber}/retry",
                (string orderNumber, RetryOrder retry, CancellationToken cancel) =>
                    retry.HandleAsync(orderNumber, cancel))
            .WithName("retryOrder").WithSummary("Take a parked order up again")
            .Produces(202).MapRefusals(ProblemKind.OrderNotFound, ProblemKind.StateConflict);
        return app;
    }

    private static void AddSizingClient(WebApplicationBuilder builder)
    {
        builder.Services.AddHttpClient<SizingClient>(http => http.BaseAddress = new Uri(
                builder.Configuration["Sizing:Address"] ?? "http://127.0.0.1:8081"))
            .AddStandardResilienceHandler(resilience =>
            {
                resilience.AttemptTimeout.Timeout = TimeSpan.FromSeconds(8);
                resilience.TotalRequestTimeout.Timeout = TimeSpan.FromSeconds(20);
            });
        builder.Services.AddTransient<AskForTakeOff>(services =>
            services.GetRequiredService<SizingClient>().AskAsync);
    }

    private static void Describe(Microsoft.AspNetCore.OpenApi.OpenApiOptions options)
    {
        ApiDocument.Introduce(
            options, "Orders", "Orders in; each with its frozen take-off, its state and history.");
        options.AddOperationTransformer((operation, _, _) =>
        {
            if (operation.OperationId == "submitOrder")
            {
                OrderPage.Describe(operation);
            }

            return Task.CompletedTask;
        });
    }
}
