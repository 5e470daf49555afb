using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace PostFrame.Problems;

/// <summary>The body of every refusal: RFC 9457 with our <c>violations</c>.</summary>
public sealed record ProblemBody
{
    public required string Type { get; init; }

    public required string Title { get; init; }

    public required int Status { get; init; }

    public required string Detail { get; init; }

    public IReadOnlyList<ProblemViolation>? Violations { get; init; }

    /// <summary>How many more mistakes there are than <see cref="Violations"/> lists.</summary>
    public int? ViolationsLeftOut { get; init; }

    public string? TraceId { get; init; }
}

/// <summary>One mistake: where, what was sent, which rule, what is accepted.</summary>
public sealed record ProblemViolation
{
    /// <summary>JSON Pointer (RFC 6901) into the request body.</summary>
    public required string Pointer { get; init; }

    /// <summary>What was sent, shortened; null when nothing was.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.Never)]
    public string? Value { get; init; }

    public required string Rule { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.Never)]
    public string? Bound { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.Never)]
    public string? Unit { get; init; }

    public required string Message { get; init; }
}

[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(ProblemBody))]
internal sealed partial class ProblemJson : JsonSerializerContext
{
    /// <summary>Readable text: quotes of 12' 6" stay as they are in an API answer.</summary>
    internal static readonly ProblemJson Readable = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });
}
