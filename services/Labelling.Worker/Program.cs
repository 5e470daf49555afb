using PostFrame.LabellingWorker;
using PostFrame.Messaging;
using PostFrame.Problems;

var builder = WebApplication.CreateBuilder(args);
builder.AddLabelling();

var app = builder.Build();
app.UseProblems();
app.MapPipelineHealth();
app.MapLabelling();
app.MapApiPages(("labelling", "Labelling"));
app.Run();
