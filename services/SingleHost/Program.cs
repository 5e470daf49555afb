using PostFrame.CuttingWorker;
using PostFrame.LabellingWorker;
using PostFrame.Messaging;
using PostFrame.Operations;
using PostFrame.OrdersApi;
using PostFrame.Problems;
using PostFrame.SingleHost;
using PostFrame.SizingApi;

// Every service in one process, on one port, with one data folder. Composition only.
var builder = WebApplication.CreateBuilder(args);
builder.AddDefaults();
builder.AddDirectCalls();
builder.AddSizing();
builder.AddOrders();
builder.AddCutting();
builder.AddLabelling();
builder.AddOperations();

try
{
    var app = builder.Build();
    app.UseProblems();
    app.MapSizing();
    app.MapOrders();
    app.MapCutting();
    app.MapLabelling();
    app.MapOperations();
    app.MapPipelineHealth();
    app.MapApiPages(
        ("sizing", "Sizing"), ("orders", "Orders"), ("cutting", "Cutting"),
        ("labelling", "Labelling"), ("operations", "Operations"));
    app.MapWelcome();
    app.Run();
    return 0;
}
catch (IOException reason)
{
    return Welcome.SayWhyNotStarted(reason);
}
