using PostFrame.CuttingWorker;
using PostFrame.Messaging;
using PostFrame.Problems;

var builder = WebApplication.CreateBuilder(args);
builder.AddCutting();
builder.Services.AddCors();

var app = builder.Build();
app.UseProblems();

// Apart, the board's page comes from another origin; it may ask here, other pages may not.
app.UseCors(cors => cors.WithOrigins(
        app.Configuration.GetSection("Board:Origin").Get<string[]>() ?? [])
    .WithMethods("GET", "POST").WithHeaders("Content-Type", "Idempotency-Key"));
app.MapCutting();
app.MapPipelineHealth();
app.MapApiPages(("cutting", "Cutting"));
app.Run();
