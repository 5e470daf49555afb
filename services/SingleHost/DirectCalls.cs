using PostFrame.Operations;
using PostFrame.OrdersApi.Orders;
using PostFrame.OrdersApi.TakeOffs;
using PostFrame.SizingApi.Prices;
using PostFrame.SizingApi.Sizings;

namespace PostFrame.SingleHost;

/// <summary>What the services ask each other over HTTP when apart, as calls.</summary>
internal static class DirectCalls
{
    public static void AddDirectCalls(this WebApplicationBuilder builder)
    {
        builder.Services.AddSingleton<AskForTakeOff>(services =>
        {
            var prices = services.GetRequiredService<ShopPrices>();
            return (request, _) =>
            {
                var answer = Sizings.Answer(request, prices.List);
                return Task.FromResult(new TakeOffAnswer(answer.Status, answer.Body));
            };
        });
        builder.Services.AddSingleton<AskForOrders>(services => (change, _) =>
            Task.FromResult(services.GetRequiredService<ReadOrders>().ChangedAfter(change)));
    }
}
