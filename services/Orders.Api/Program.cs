using PostFrame.Messaging;
using PostFrame.OrdersApi;
using PostFrame.Problems;

var builder = WebApplication.CreateBuilder(args);
builder.AddOrders();

var app = builder.Build();
app.UseProblems();
app.MapOrders();
app.MapPipelineHealth();
app.MapOpenApi("/openapi/{documentName}.json");
app.UseSwaggerUI(page =>
{
    page.RoutePrefix = "docs";
    page.SwaggerEndpoint("/openapi/orders.json", "Orders");
});
app.Run();
