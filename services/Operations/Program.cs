using PostFrame.Messaging;
using PostFrame.Operations;
using PostFrame.Problems;

var builder = WebApplication.CreateBuilder(args);
builder.AddOperations();

var app = builder.Build();
app.UseProblems();
app.MapOperations();
app.MapPipelineHealth();
app.MapApiPages(("operations", "Operations"));
app.Run();
