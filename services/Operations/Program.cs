using PostFrame.Messaging;
using PostFrame.Operations;
using PostFrame.Problems;

var builder = WebApplication.CreateBuilder(args);
builder.AddOperations();

var app = builder.Build();
app.UseProblems();
app.MapOperations();
app.MapPipelineHealth();
app.MapOpenApi("/openapi/{documentName}.json");
app.UseSwaggerUI(page =>
{
    page.RoutePrefix = "docs";
    page.SwaggerEndpoint("/openapi/operations.json", "Operations");
});
app.Run();
