using System.Buffers;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Net.Http.Headers;

namespace PostFrame.Problems;

/// <summary>A JSON body taken whole from a request, or the refusal to take it.</summary>
public readonly record struct RequestBody
{
    /// <summary>A building with a hundred openings is some 20 KB.</summary>
    public const int MostBytes = 256 * 1024;

    public ReadOnlyMemory<byte> Json { get; private init; }

    /// <summary>Set when there is no body to read.</summary>
    public ProblemAnswer? Refusal { get; private init; }

    public static async Task<RequestBody> ReadAsync(
        HttpRequest request, CancellationToken cancel)
    {
        if (!IsJson(request))
        {
            return Refused(ProblemKind.UnsupportedMediaType,
                "Send the body as Content-Type: application/json in UTF-8, not encoded.");
        }

        if (request.ContentLength > MostBytes)
        {
            return TooLarge(request);
        }

        var body = new ArrayBufferWriter<byte>((int)(request.ContentLength ?? 4096) + 1);
        while (true)
        {
            var read = await request.Body.ReadAsync(body.GetMemory(1024), cancel);
            if (read == 0)
            {
                return new RequestBody { Json = body.WrittenMemory };
            }

            body.Advance(read);
            if (body.WrittenCount > MostBytes)
            {
                return TooLarge(request);
            }
        }
    }

    private static bool IsJson(HttpRequest request)
    {
        if (request.Headers.ContentEncoding.Count > 0
            || !MediaTypeHeaderValue.TryParse(request.ContentType, out var type))
        {
            return false;
        }

        var isJson = type.MediaType.Equals("application/json", StringComparison.OrdinalIgnoreCase)
            || (type.Type.Equals("application", StringComparison.OrdinalIgnoreCase)
                && type.Suffix.Equals("json", StringComparison.OrdinalIgnoreCase));
        return isJson && (!type.Charset.HasValue || type.Charset.Length == 0
            || type.Charset.Equals("utf-8", StringComparison.OrdinalIgnoreCase)
            || type.Charset.Equals("\"utf-8\"", StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>Refuses without waiting for the rest; the connection is not worth keeping.</summary>
    private static RequestBody TooLarge(HttpRequest request)
    {
        request.HttpContext.Response.Headers.Connection = "close";
        if (request.HttpContext.Features.Get<IHttpMaxRequestBodySizeFeature>()
            is { IsReadOnly: false } limit)
        {
            limit.MaxRequestBodySize = MostBytes;
        }

        return Refused(ProblemKind.BodyTooLarge, $"A body may be {MostBytes} bytes at most.");
    }

    private static RequestBody Refused(ProblemKind kind, string detail) =>
        new() { Refusal = new ProblemAnswer(kind, detail) };
}
