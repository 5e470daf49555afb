using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace PostFrame.Problems;

/// <summary>What every service's OpenAPI document says of itself.</summary>
public static class ApiDocument
{
    private const string Refusals =
        " Every refusal is RFC 9457 problem+json with all mistakes at once.";

    /// <summary>
    /// OpenAPI 3.1, with a title and what the service is for. It names no server: it is served by
    /// the one it describes.
    /// </summary>
    public static void Introduce(OpenApiOptions options, string title, string purpose)
    {
        options.OpenApiVersion = OpenApiSpecVersion.OpenApi3_1;
        options.AddDocumentTransformer((document, _, _) =>
        {
            document.Info = new OpenApiInfo
            {
                Title = title,
                Version = "1",
                Description = purpose + Refusals,
            };
            document.Servers = [];
            return Task.CompletedTask;
        });
    }
}
