using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Microsoft.Extensions.DependencyInjection;
using PostFrame.Engine;
using PostFrame.Messaging;
using PostFrame.OrdersApi.Messages;
using PostFrame.OrdersApi.TakeOffs;
using PostFrame.Problems;

namespace PostFrame.OrdersApi.Orders;

/// <summary>
/// <c>POST /v1/orders</c>: read; ask sizing for the take-off; in one transaction keep the order,
/// the message and the answer; answer. A key seen before is answered as it was then.
/// </summary>
internal sealed class SubmitOrder(
    [FromKeyedServices(OrdersSetup.Service)] SqliteStore store, AskForTakeOff ask,
    ProcessRun run, TimeProvider time)
{
    private const string KeyHeader = "Idempotency-Key";
    private const int LongestKey = 255;

    public async Task<IResult> HandleAsync(HttpContext context)
    {
        if (KeyIn(context.Request) is not { } key)
        {
            return new ProblemAnswer(
                ProblemKind.IdempotencyKeyMissing,
                $"Send one {KeyHeader} header of 1 to {LongestKey} visible ASCII characters.");
        }

        var body = await RequestBody.ReadAsync(context.Request, context.RequestAborted);
        if (body.Refusal is { } refusal)
        {
            return refusal;
        }

        try
        {
            var hash = Convert.ToHexString(SHA256.HashData(body.Json.Span));
            return store.Read(view => OrderStore.AnswerTo(view, key)) is { } answered
                ? Repeat(answered, hash)
                : await AcceptAsync(key, hash, body.Json, context.RequestAborted);
        }
        catch (StoreUnavailableException)
        {
            return new ProblemAnswer(
                ProblemKind.StoreUnavailable, "The order was not accepted. Send it again.")
            {
                RetryAfterSeconds = 5,
            };
        }
    }

    private static string? KeyIn(HttpRequest request) =>
        request.Headers[KeyHeader] is [{ Length: > 0 and <= LongestKey } key]
            && key.All(character => character is > ' ' and <= '~')
            ? key
            : null;

    private static IResult Repeat(AnswerRow answered, string hash) =>
        answered.BodyHash == hash
            ? new StoredAnswer(answered.Location, answered.Answer)
            : new ProblemAnswer(
                ProblemKind.IdempotencyKeyReused,
                $"The key was used for the order at {answered.Location}.");

    private async Task<IResult> AcceptAsync(
        string key, string hash, ReadOnlyMemory<byte> json, CancellationToken cancel)
    {
        using var request = JsonRequest.Parse(json);
        if (request.Malformed is { } malformed)
        {
            return malformed;
        }

        var order = OrderRequest.Read(
            request, json, DateOnly.FromDateTime(time.GetUtcNow().UtcDateTime));
        var takeOff = request.Root.IsPresent
            ? await ask(order.Sizing, cancel)
            : new TakeOffAnswer(422, "{}"u8.ToArray());
        switch (takeOff.Status)
        {
            case 200:
                break;
            case 422:
                request.Mistakes.AddRange(ViolationsIn(takeOff.Body));
                break;
            case >= 500:
                return new ProblemAnswer(
                    ProblemKind.SizingUnavailable, "The order was not accepted. Send it again.")
                {
                    RetryAfterSeconds = 5,
                };
            default:
                throw new InvalidOperationException($"Sizing answered {takeOff.Status}.");
        }

        if (request.Mistakes.Any)
        {
            return ProblemAnswer.Invalid(request.Mistakes);
        }

        var sized = JsonSerializer.Deserialize<TakeOff>(takeOff.Body.Span, MessageJson.Options)!;
        if (sized.Pieces.Count == 0)
        {
            request.Mistakes.Add(
                "/insulation", "nothing-to-cut", "",
                "None of this is cut to pieces, so there is nothing for the shop to do.");
            return ProblemAnswer.Invalid(request.Mistakes);
        }

        return await store.WriteAsync(
            transaction => Keep(transaction, key, hash, json, order, takeOff, sized), cancel);
    }

    private static IEnumerable<Violation> ViolationsIn(ReadOnlyMemory<byte> problem) =>
        JsonSerializer.Deserialize<SizingRefusal>(problem.Span, MessageJson.Options)!
            .Violations.Select(found => new Violation(
                found.Pointer, found.Rule, found.Value ?? "", found.Bound, found.Unit,
                found.Message));

    /// <summary>Everything about the order, or nothing. Another request with the same key or
    /// number may have come first.</summary>
    private IResult Keep(
        StoreTransaction transaction, string key, string hash, ReadOnlyMemory<byte> request,
        OrderRequest order, TakeOffAnswer answer, TakeOff takeOff)
    {
        if (OrderStore.AnswerTo(transaction, key) is { } answered)
        {
            return Repeat(answered, hash);
        }

        if (OrderStore.Taken(transaction, order.OrderNumber!) is { } taken)
        {
            return new ProblemAnswer(
                ProblemKind.OrderNumberTaken,
                $"Order {taken} was accepted before with another {KeyHeader}."
                + (taken == order.OrderNumber
                    ? ""
                    : $" {order.OrderNumber} differs from it only in upper and lower case."));
        }

        var seq = OrderStore.NextSeq(transaction);
        var at = DateTimeOffset.FromUnixTimeMilliseconds(transaction.NowUnixMs);
        var confirmed = Confirm(order, takeOff, at, number => PieceId.Of(seq, number));
        OrderStore.Insert(transaction, seq, run.Id, confirmed);
        OrderStore.InsertRevisionOf(
            transaction, seq, 1, Encoding.UTF8.GetString(request.Span),
            Encoding.UTF8.GetString(answer.Body.Span),
            JsonSerializer.Serialize(confirmed, MessageJson.Options));
        OrderStore.InsertPieces(transaction, seq, 1, confirmed.Pieces);
        OrderStore.Note(
            transaction, confirmed.OrderNumber, "accepted",
            $"Accepted with {confirmed.Pieces.Count} pieces.");
        Announcement.Enqueue(transaction, confirmed);

        var accepted = JsonSerializer.Serialize(Accepted(confirmed), MessageJson.Options);
        var location = $"/v1/orders/{confirmed.OrderNumber}";
        OrderStore.KeepAnswer(transaction, key, hash, location, accepted);
        return new StoredAnswer(location, accepted);
    }

    private static OrderConfirmed.Confirmed Confirm(
        OrderRequest order, TakeOff takeOff, DateTimeOffset at, Func<int, string> idOf) => new()
        {
            OrderNumber = order.OrderNumber!,
            Revision = 1,
            ConfirmedAt = at,
            NeededBy = order.NeededBy!.Value,
            ShipTo = new OrderConfirmed.ShipTo(order.ShipTo!),
            Building = new OrderConfirmed.Building(
                takeOff.Building.Name, takeOff.Building.Summary),
            Planes = Freeze.Planes(takeOff),
            Pieces = Freeze.Pieces(takeOff, idOf),
            Stock = Freeze.Stock(takeOff),
            Cautions = Freeze.Cautions(takeOff),
            Accessories = Freeze.Accessories(takeOff),
            Notes = Freeze.Notes(takeOff),
        };

    private static AcceptedOrder Accepted(OrderConfirmed.Confirmed confirmed) => new()
    {
        OrderNumber = confirmed.OrderNumber,
        Revision = confirmed.Revision,
        State = "confirmed",
        AcceptedAt = confirmed.ConfirmedAt,
        Pieces = confirmed.Pieces.Count,
        Links = OrderLine.LinksOf(confirmed.OrderNumber, isPlanned: false, isLabelled: false),
    };

    /// <summary>The answer as it was kept, the same bytes each time.</summary>
    private sealed class StoredAnswer(string location, string body) : IResult
    {
        public Task ExecuteAsync(HttpContext httpContext)
        {
            var bytes = Encoding.UTF8.GetBytes(body);
            var response = httpContext.Response;
            response.StatusCode = StatusCodes.Status202Accepted;
            response.Headers.Location = location;
            response.ContentType = "application/json";
            response.ContentLength = bytes.Length;
            return response.Body.WriteAsync(bytes, httpContext.RequestAborted).AsTask();
        }
    }

    private sealed record SizingRefusal
    {
        public IReadOnlyList<ProblemViolation> Violations { get; init; } = [];
    }
}
