using PostFrame.Problems;
using PostFrame.SizingApi;

var builder = WebApplication.CreateSlimBuilder(args);
builder.AddSizing();

var app = builder.Build();
app.UseProblems();
app.MapSizing();
app.MapApiPages(("sizing", "Sizing"));
app.MapGet("/health/live", () => "alive").ExcludeFromDescription();
app.MapGet("/health/ready", () => "ready").ExcludeFromDescription();
app.Run();
