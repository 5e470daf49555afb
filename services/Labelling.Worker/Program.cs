using PostFrame.LabellingWorker;
using PostFrame.Messaging;
using PostFrame.Problems;

var builder = WebApplication.CreateBuilder(args);
builder.AddLabelling();

var app = builder.Build();
app.UseProblems();
app.MapOpenApi();
app.MapPipelineHealth();
app.MapLabelling();
app.Run();
