using PostFrame.CuttingWorker;
using PostFrame.Messaging;
using PostFrame.Problems;

var builder = WebApplication.CreateBuilder(args);
builder.AddCutting();

var app = builder.Build();
app.UseProblems();
app.MapCutting();
app.MapPipelineHealth();
app.MapOpenApi("/openapi/{documentName}.json");
app.UseSwaggerUI(page =>
{
    page.RoutePrefix = "docs";
    page.SwaggerEndpoint("/openapi/cutting.json", "Cutting");
});
app.Run();
