using PostFrame.Messaging;
using PostFrame.OrdersApi;
using PostFrame.Problems;

var builder = WebApplication.CreateBuilder(args);
builder.AddOrders();
builder.Services.AddCors();

var app = builder.Build();
app.UseProblems();

// Apart, the board's page comes from another origin; it may ask here, other pages may not.
app.UseCors(cors => cors.WithOrigins(
    app.Configuration.GetSection("Board:Origin").Get<string[]>() ?? []));
app.MapOrders();
app.MapPipelineHealth();
app.MapApiPages(("orders", "Orders"));
app.Run();
