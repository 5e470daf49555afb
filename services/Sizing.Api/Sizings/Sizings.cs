using System.Text.Json;
using PostFrame.Engine;
using PostFrame.Engine.TakeOff;
using PostFrame.Problems;

namespace PostFrame.SizingApi.Sizings;

/// <summary>What a sizing request is answered with, whoever asks.</summary>
/// <param name="Status">200, or the status of the refusal.</param>
/// <param name="Body">The take-off, or problem+json.</param>
public sealed record SizingAnswer(int Status, byte[] Body);

/// <summary>
/// From the bytes of a request to the bytes of its answer. Pure: same in, same out.
/// </summary>
public static class Sizings
{
    /// <summary>The entry for callers in the same process; the route uses it too.</summary>
    public static SizingAnswer Answer(
        ReadOnlyMemory<byte> json, PriceList? prices = null, string? traceId = null)
    {
        var asked = Ask(json, prices);
        return asked.Refusal is { } refusal
            ? new SizingAnswer(refusal.Status, refusal.ToBytes(traceId))
            : new SizingAnswer(200, JsonSerializer.SerializeToUtf8Bytes(
                WriteTakeOff.From(asked.Result!), SizingJson.Wire.TakeOffBody));
    }

    /// <summary>Reads and computes; every mistake of both is in one refusal.</summary>
    internal static AskedSizing Ask(ReadOnlyMemory<byte> json, PriceList? prices)
    {
        using var request = JsonRequest.Parse(json);
        if (request.Malformed is { } malformed)
        {
            return new AskedSizing(null, malformed);
        }

        var input = ReadSizing.From(request.Root, prices);
        var mistakes = request.Mistakes;
        if (!request.Root.IsPresent)
        {
            return new AskedSizing(null, ProblemAnswer.Invalid(mistakes));
        }

        var outcome = Sizing.Size(input);
        request.AddUnlessNoted(outcome.Violations);
        return mistakes.Any
            ? new AskedSizing(null, ProblemAnswer.Invalid(mistakes))
            : new AskedSizing(outcome.Result, null);
    }
}

/// <summary>The engine's result, or the refusal.</summary>
internal sealed record AskedSizing(SizingResult? Result, ProblemAnswer? Refusal);
