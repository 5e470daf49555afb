using System.Collections.Frozen;
using System.Security.Cryptography;
using System.Text.Json;
using Microsoft.Net.Http.Headers;
using PostFrame.SizingApi.Climate;
using PostFrame.SizingApi.Comparisons;

namespace PostFrame.SizingApi.Desk;

/// <summary>The desk page and its files, served from inside the assembly.</summary>
internal static class DeskPage
{
    private const string Root = "desk/";

    /// <summary>Own files only: no script, style or request from anywhere else.</summary>
    private const string ContentPolicy =
        "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; "
        + "img-src 'self' data: blob:; connect-src 'self'; form-action 'none'; "
        + "base-uri 'none'; frame-ancestors 'none'";

    private static readonly FrozenDictionary<string, DeskFile> Files = Load();

    public static void MapDesk(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/", (HttpContext context) => Answer(context, "index.html"))
            .ExcludeFromDescription();
        routes.MapGet("/desk/examples.json", (HttpContext context) =>
            Answer(context, Examples)).ExcludeFromDescription();
        routes.MapGet("/desk/host.json", (EndpointDataSource endpoints) =>
            Results.Content(HostOf(endpoints), "application/json")).ExcludeFromDescription();
        routes.MapGet("/compare/", (HttpContext context) => Answer(context, "compare/index.html"))
            .ExcludeFromDescription();
        routes.MapGet("/compare/examples.json", (HttpContext context) =>
            Answer(context, Comparisons)).ExcludeFromDescription();
        routes.MapGet("/compare/places.json", (HttpContext context) =>
            Answer(context, Places.Value)).ExcludeFromDescription();
        routes.MapGet("/compare/{file}", (string file, HttpContext context) =>
            Answer(context, "compare/" + file)).ExcludeFromDescription();
        routes.MapGet("/desk/{file}", (string file, HttpContext context) =>
            Answer(context, file)).ExcludeFromDescription();
    }

    /// <summary>Which neighbours this host carries, so that the page offers no dead ends.</summary>
    private static string HostOf(EndpointDataSource endpoints)
    {
        var paths = endpoints.Endpoints.OfType<RouteEndpoint>()
            .Select(endpoint => "/" + endpoint.RoutePattern.RawText?.Trim('/')).ToHashSet();
        var hasBoard = paths.Any(path => path.StartsWith("/board", StringComparison.Ordinal));
        var takesOrders = paths.Contains("/v1/orders");
        return JsonSerializer.Serialize(new { board = hasBoard, orders = takesOrders });
    }

    private static readonly DeskFile Examples =
        new("application/json", DeskExamples.AsJson());

    private static readonly DeskFile Comparisons =
        new("application/json", ComparisonExamples.AsJson());

    /// <summary>Counties and stations by number and name, for the page's lists.</summary>
    private static readonly Lazy<DeskFile> Places = new(() => new(
        "application/json",
        JsonSerializer.SerializeToUtf8Bytes(new
        {
            counties = ClimateAtlas.Instance.Counties
                .OrderBy(county => county.State, StringComparer.Ordinal)
                .ThenBy(county => county.Name, StringComparer.Ordinal)
                .Select(county => new[] { county.Fips, $"{county.Name}, {county.State}" }),
            stations = ClimateAtlas.Instance.Stations
                .OrderBy(station => station.State, StringComparer.Ordinal)
                .ThenBy(station => station.Name, StringComparer.Ordinal)
                .Select(station => new[] { station.Wmo, $"{station.Name}, {station.State}" }),
        })));

    private static IResult Answer(HttpContext context, string name) =>
        Files.TryGetValue(name, out var file)
            ? Answer(context, file)
            : Problems.ProblemAnswer.ForBareStatus(StatusCodes.Status404NotFound);

    private static IResult Answer(HttpContext context, DeskFile file)
    {
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = ContentPolicy;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        headers.CacheControl = "no-cache";
        return TypedResults.Bytes(file.Bytes, file.MediaType, entityTag: file.Tag);
    }

    private static FrozenDictionary<string, DeskFile> Load()
    {
        var assembly = typeof(DeskPage).Assembly;
        return assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith(Root, StringComparison.Ordinal))
            .ToFrozenDictionary(name => name[Root.Length..], name =>
            {
                using var stream = assembly.GetManifestResourceStream(name)!;
                var bytes = new byte[stream.Length];
                stream.ReadExactly(bytes);
                return new DeskFile(MediaTypeOf(name), bytes);
            });
    }

    private static string MediaTypeOf(string name) => Path.GetExtension(name) switch
    {
        ".html" => "text/html; charset=utf-8",
        ".css" => "text/css; charset=utf-8",
        ".js" => "text/javascript; charset=utf-8",
        ".svg" => "image/svg+xml",
        var other => throw new InvalidOperationException($"No media type for {other} is known."),
    };

    private sealed record DeskFile(string MediaType, byte[] Bytes)
    {
        public EntityTagHeaderValue Tag { get; } =
            new($"\"{Convert.ToHexStringLower(SHA256.HashData(Bytes))[..16]}\"");
    }
}
