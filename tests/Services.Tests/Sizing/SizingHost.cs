using System.Net;
using System.Net.Http.Headers;
using System.Text;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using PostFrame.SizingApi.Sizings;

namespace PostFrame.ServicesTests.Sizing;

/// <summary>The real sizing service on a real port of the loopback.</summary>
public sealed class SizingHost : WebApplicationFactory<SizingAnswer>
{
    public SizingHost()
    {
        // Not by number: the factory then clears addresses of a server that may have started.
        UseKestrel(options => options.Listen(IPAddress.Loopback, 0));
        StartServer();
    }

    /// <summary>No file watchers: their number is limited for the whole machine.</summary>
    protected override void ConfigureWebHost(IWebHostBuilder builder) => builder
        .UseSetting("Logging:LogLevel:Default", "Warning")
        .UseSetting("hostBuilder:reloadConfigOnChange", "false");

    public async Task<HttpResponseMessage> PostAsync(
        string body, string address = "/v1/sizings", string? accept = null,
        string mediaType = "application/json")
    {
        using var client = CreateClient();
        using var request = new HttpRequestMessage(HttpMethod.Post, address);
        request.Content = new ByteArrayContent(Encoding.UTF8.GetBytes(body));
        request.Content.Headers.ContentType = MediaTypeHeaderValue.Parse(mediaType);
        if (accept is not null)
        {
            request.Headers.TryAddWithoutValidation("Accept", accept);
        }

        return await client.SendAsync(request);
    }
}
