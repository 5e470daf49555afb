using System.Security.Cryptography;
using System.Text.Json;
using Microsoft.OpenApi;
using PostFrame.CuttingWorker.Stock;
using PostFrame.Messaging;
using PostFrame.Problems;

namespace PostFrame.CuttingWorker;

/// <summary>
/// A request that changes the bench's state. With its Idempotency-Key it has the effect of one
/// however often it is sent: the answer is kept in the transaction of the effect.
/// </summary>
internal static class BenchRequest
{
    private const int LongestKey = 200;
    private const int RetrySeconds = 5;

    /// <summary>
    /// What a request came to: an answer, or why it was refused and nothing done.
    /// </summary>
    public readonly record struct Outcome<TAnswer>(TAnswer? Answer, ProblemAnswer? Refusal)
        where TAnswer : class
    {
        public static implicit operator Outcome<TAnswer>(TAnswer answer) => new(answer, null);

        public static implicit operator Outcome<TAnswer>(ProblemAnswer refusal) =>
            new(null, refusal);
    }

    /// <summary>Does work that is the same when done twice.</summary>
    public static async Task<IResult> AnswerAsync<TAnswer>(
        HttpContext context, SqliteStore store, Func<StoreTransaction, Outcome<TAnswer>> work)
        where TAnswer : class
    {
        try
        {
            var outcome = await store.WriteAsync(work, context.RequestAborted);
            return outcome.Refusal ?? (IResult)TypedResults.Ok(outcome.Answer);
        }
        catch (StoreUnavailableException)
        {
            return Unavailable();
        }
    }

    /// <summary>Does work once per Idempotency-Key, on a body read member by member.</summary>
    public static async Task<IResult> AnswerOnceAsync<TWish, TAnswer>(
        HttpContext context, SqliteStore store, Func<RequestObject, TWish?> read,
        Func<StoreTransaction, TWish, Outcome<TAnswer>> work)
        where TWish : class
        where TAnswer : class
    {
        if (KeyOf(context.Request) is not { } key)
        {
            return new ProblemAnswer(
                ProblemKind.IdempotencyKeyMissing,
                $"Send one Idempotency-Key of 1 to {LongestKey} visible ASCII characters.");
        }

        var body = await RequestBody.ReadAsync(context.Request, context.RequestAborted);
        if (body.Refusal is { } refusal)
        {
            return refusal;
        }

        using var json = JsonRequest.Parse(body.Json);
        if (json.Malformed is { } malformed)
        {
            return malformed;
        }

        var wish = read(json.Root);
        json.Root.Close();
        return json.Mistakes.Any || wish is null
            ? ProblemAnswer.Invalid(json.Mistakes)
            : await OnceAsync(context, store, key, body.Json, view => work(view, wish));
    }

    private static async Task<IResult> OnceAsync<TAnswer>(
        HttpContext context, SqliteStore store, string key, ReadOnlyMemory<byte> body,
        Func<StoreTransaction, Outcome<TAnswer>> work)
        where TAnswer : class
    {
        var request = $"{context.Request.Method} {context.Request.Path} "
            + Convert.ToHexStringLower(SHA256.HashData(body.Span));
        return await AnswerAsync<TAnswer>(context, store, transaction =>
        {
            if (AnsweredStore.Find(transaction, key) is { } known)
            {
                return known.Request == request
                    ? JsonSerializer.Deserialize<TAnswer>(known.Answer, JsonSerializerOptions.Web)!
                    : new ProblemAnswer(
                        ProblemKind.IdempotencyKeyReused,
                        "This key came before with another request. Give this one a new key.");
            }

            var outcome = work(transaction);
            if (outcome.Answer is { } answer)
            {
                AnsweredStore.Add(
                    transaction, key, request,
                    JsonSerializer.Serialize(answer, JsonSerializerOptions.Web));
            }

            return outcome;
        });
    }

    private static string? KeyOf(HttpRequest request) =>
        request.Headers["Idempotency-Key"] is [{ Length: > 0 and <= LongestKey } key]
            && key.All(letter => letter is > ' ' and < (char)127)
            ? key
            : null;

    private static ProblemAnswer Unavailable() => new(
        ProblemKind.StoreUnavailable, "Nothing was changed; send the same request again.")
    {
        RetryAfterSeconds = RetrySeconds,
    };

    /// <summary>The key on the API page.</summary>
    public static OpenApiParameter KeyParameter => new()
    {
        Name = "Idempotency-Key",
        In = ParameterLocation.Header,
        Required = true,
        Description = "New for each request, the same for each repetition.",
        Schema = new OpenApiSchema
        {
            Type = JsonSchemaType.String,
            MinLength = 1,
            MaxLength = LongestKey,
        },
    };

    /// <summary>Says on the API page that the key is needed.</summary>
    public static RouteHandlerBuilder NeedsKey(this RouteHandlerBuilder route) =>
        route.WithMetadata(new KeyHeader());

    /// <summary>Marks an operation that needs an Idempotency-Key.</summary>
    internal sealed class KeyHeader;
}
