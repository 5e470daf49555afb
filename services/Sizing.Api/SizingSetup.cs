using System.Text.Json.Serialization;
using PostFrame.SizingApi.ApiPages;
using PostFrame.SizingApi.Climate;
using PostFrame.SizingApi.Comparisons;
using PostFrame.SizingApi.Desk;
using PostFrame.SizingApi.Prices;
using PostFrame.SizingApi.Products;
using PostFrame.SizingApi.Sizings;

namespace PostFrame.SizingApi;

/// <summary>The sizing service: what its own host and the single host both call.</summary>
public static class SizingSetup
{
    public static WebApplicationBuilder AddSizing(this WebApplicationBuilder builder)
    {
        builder.Services.AddSingleton<ShopPrices>();
        // Without it the API page would say that numbers may come as text too.
        builder.Services.ConfigureHttpJsonOptions(json =>
            json.SerializerOptions.NumberHandling = JsonNumberHandling.Strict);
        builder.Services.AddOpenApi("sizing", SizingDocument.Configure);
        return builder;
    }

    public static WebApplication MapSizing(this WebApplication app)
    {
        _ = app.Services.GetRequiredService<ShopPrices>();
        app.MapSizings();
        app.MapProducts();
        app.MapClimate();
        app.MapComparisons();
        app.MapDesk();
        return app;
    }
}
