using System.Diagnostics;
using System.Text.Json;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.WebUtilities;
using PostFrame.Engine;

namespace PostFrame.Problems;

/// <summary>A refusal, ready to be sent. The only creator of problem bodies.</summary>
public sealed class ProblemAnswer : IResult, IStatusCodeHttpResult
{
    public const string MediaType = "application/problem+json";

    private readonly string _type;
    private readonly string _title;
    private readonly string _detail;
    private readonly Mistakes? _mistakes;
    private readonly int _status;

    public ProblemAnswer(ProblemKind kind, string detail, Mistakes? mistakes = null)
        : this(kind.Type, kind.Title, kind.Status, detail, mistakes)
    {
    }

    private ProblemAnswer(
        string type, string title, int status, string detail, Mistakes? mistakes)
    {
        _type = type;
        _title = title;
        _status = status;
        _detail = detail;
        _mistakes = mistakes;
    }

    public int Status => _status;

    int? IStatusCodeHttpResult.StatusCode => _status;

    /// <summary>Sent as the Retry-After header when set.</summary>
    public int? RetryAfterSeconds { get; init; }

    /// <summary>Everything that is wrong with the members of a request.</summary>
    public static ProblemAnswer Invalid(Mistakes mistakes) => new(
        ProblemKind.InvalidRequest, SummaryOf(mistakes), mistakes);

    /// <summary>Everything that is wrong with the members of a request.</summary>
    public static ProblemAnswer Invalid(IEnumerable<Violation> violations)
    {
        var mistakes = new Mistakes();
        mistakes.AddRange(violations);
        return Invalid(mistakes);
    }

    /// <summary>An answer for a status code that came without a body.</summary>
    public static ProblemAnswer ForBareStatus(int status) =>
        ProblemKind.ForBareStatus(status) is { } kind
            ? new ProblemAnswer(kind, kind.Cause)
            : new ProblemAnswer(
                "about:blank", TitleOf(status), status,
                "The service gives no further reason.", null);

    /// <summary>What the caller sees of a failure of ours: nothing but the trace id.</summary>
    public static ProblemAnswer Unhandled() => new(
        "about:blank", TitleOf(StatusCodes.Status500InternalServerError),
        StatusCodes.Status500InternalServerError,
        "Something failed on our side. The trace id finds it in our log.", null);

    public byte[] ToBytes(string? traceId) =>
        JsonSerializer.SerializeToUtf8Bytes(Body(traceId), ProblemJson.Readable.ProblemBody);

    public ProblemBody Body(string? traceId) => new()
    {
        Type = _type,
        Title = _title,
        Status = _status,
        Detail = _detail,
        Violations = _mistakes?.Listed.Select(OnTheWire).ToList(),
        ViolationsLeftOut = _mistakes is { LeftOut: > 0 } ? _mistakes.LeftOut : null,
        TraceId = traceId,
    };

    public Task ExecuteAsync(HttpContext httpContext)
    {
        var body = ToBytes(TraceIdOf(httpContext));
        var response = httpContext.Response;
        response.StatusCode = _status;
        response.ContentType = MediaType;
        response.ContentLength = body.Length;
        response.Headers.CacheControl = "no-store";
        if (RetryAfterSeconds is { } seconds)
        {
            response.Headers.RetryAfter = seconds.ToString();
        }

        return HttpMethods.IsHead(httpContext.Request.Method)
            ? Task.CompletedTask
            : response.Body.WriteAsync(body, httpContext.RequestAborted).AsTask();
    }

    public static string TraceIdOf(HttpContext context) =>
        Activity.Current?.TraceId.ToString() ?? context.TraceIdentifier;

    private static string SummaryOf(Mistakes mistakes) => mistakes.Count switch
    {
        1 => mistakes.Listed[0].Message,
        var count => $"{count} things are wrong; each is in violations.",
    };

    private static string TitleOf(int status) =>
        ReasonPhrases.GetReasonPhrase(status) is { Length: > 0 } phrase ? phrase : "Refused";

    private static ProblemViolation OnTheWire(Violation violation) => new()
    {
        Pointer = violation.Path,
        Value = violation.Actual.Length == 0 ? null : violation.Actual,
        Rule = violation.Rule,
        Bound = violation.Limit,
        Unit = violation.Unit,
        Message = violation.Message,
    };
}
