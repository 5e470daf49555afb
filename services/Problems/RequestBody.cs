using System.Buffers;
using Microsoft.AspNetCore.Http;
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
            return TooLarge();
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
                return TooLarge();
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

    /// <summary>
    /// Refuses before the rest has come; the server reads that on and drops it, so that the caller
    /// sees the answer instead of a broken connection.
    /// </summary>
    private static RequestBody TooLarge() => Refused(
        ProblemKind.BodyTooLarge, $"A body may be {MostBytes} bytes at most.");

    private static RequestBody Refused(ProblemKind kind, string detail) =>
        new() { Refusal = new ProblemAnswer(kind, detail) };
}
