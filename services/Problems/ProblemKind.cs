namespace PostFrame.Problems;

/// <summary>
/// One kind of refusal. The list is closed: an answer outside it is <c>about:blank</c>.
/// <c>contracts/problems.md</c> and the page at <c>/problems/{name}</c> show the same rows.
/// </summary>
public sealed record ProblemKind
{
    private ProblemKind(string name, int status, string title, string cause, string remedy)
    {
        Name = name;
        Status = status;
        Title = title;
        Cause = cause;
        Remedy = remedy;
    }

    public string Name { get; }

    public int Status { get; }

    public string Title { get; }

    /// <summary>What makes the service refuse.</summary>
    public string Cause { get; }

    /// <summary>What the caller can do about it.</summary>
    public string Remedy { get; }

    /// <summary>
    /// The <c>type</c> member of RFC 9457, relative to the service's own address.
    /// </summary>
    public string Type => "/problems/" + Name;

    public static readonly ProblemKind MalformedJson = new(
        "malformed-json", 400, "The body is not JSON",
        "The body is empty, is not UTF-8, or stops being JSON (RFC 8259) at the place named.",
        "Correct the text at the line and column given. NaN, Infinity, comments and trailing "
            + "commas are not JSON.");

    public static readonly ProblemKind InvalidRequest = new(
        "invalid-request", 422, "Some of the request cannot be used",
        "Members are missing, unknown, doubled, of the wrong kind, without a unit, out of range, "
            + "or contradict each other. Every mistake found is in violations.",
        "Correct each violation: pointer says where, bound and unit say what is accepted.");

    public static readonly ProblemKind BadRequest = new(
        "bad-request", 400, "The request could not be read",
        "The address, its parameters, a header or the way the body was sent is not usable.",
        "Compare the request with the API page at /docs.");

    public static readonly ProblemKind NotFound = new(
        "not-found", 404, "There is nothing at this address",
        "No page and no operation has this address.",
        "Compare the address with the API page at /docs.");

    public static readonly ProblemKind OrderNotFound = new(
        "order-not-found", 404, "There is no such order",
        "No order with this number was accepted.",
        "Check the order number; GET /v1/pipeline lists the orders there are.");

    public static readonly ProblemKind PlanNotFound = new(
        "plan-not-found", 404, "There is no cutting plan for this order",
        "The order is unknown here, or its plan is not made yet.",
        "Ask GET /v1/orders/{orderNumber} for the order's state and try again when it is planned.");

    public static readonly ProblemKind LabelsNotFound = new(
        "labels-not-found", 404, "There are no labels for this order",
        "The order is unknown here, or its labels are not printed yet.",
        "Ask GET /v1/orders/{orderNumber} for the order's state and try again when it is "
            + "labelled.");

    public static readonly ProblemKind PieceNotFound = new(
        "piece-not-found", 404, "There is no such piece",
        "No piece with this id came to be cut.",
        "Read the id from the label, or from GET /v1/cutting/plans/{orderNumber}.");

    public static readonly ProblemKind RollNotFound = new(
        "roll-not-found", 404, "There is no such roll",
        "No plan has a roll with this id.",
        "Take rollId from GET /v1/cutting/plans/{orderNumber}.");

    public static readonly ProblemKind PostalCodeNotFound = new(
        "postal-code-not-found", 404, "This place is not in the climate data",
        "No station or zone is known for the postal code, county or station.",
        "Send the climate zone and design temperatures yourself.");

    public static readonly ProblemKind MethodNotAllowed = new(
        "method-not-allowed", 405, "This address does not take that method",
        "The address exists, but not with this HTTP method.",
        "Use one of the methods in the Allow header.");

    public static readonly ProblemKind NotAcceptable = new(
        "not-acceptable", 406, "No such form of the answer exists",
        "None of the media types in the Accept header can be produced here.",
        "Ask for one of the media types named in detail, or leave Accept out.");

    public static readonly ProblemKind RequestTimeout = new(
        "request-timeout", 408, "The request took too long to arrive",
        "The body came too slowly.",
        "Send it again.");

    public static readonly ProblemKind OrderNumberTaken = new(
        "order-number-taken", 409, "There is already an order with this number",
        "The order number was accepted before with another idempotency key. Numbers that differ "
            + "only in upper and lower case are one number.",
        "Read the order at GET /v1/orders/{orderNumber}; give a new order a new number.");

    public static readonly ProblemKind StateConflict = new(
        "state-conflict", 409, "The order's state does not allow this",
        "What was asked for is not possible in the state the order is in.",
        "Read the order's state and decide again.");

    public static readonly ProblemKind PreconditionFailed = new(
        "precondition-failed", 412, "It has changed since you read it",
        "The If-Match header names another revision than the current one.",
        "Read it again and repeat the change on what you read.");

    public static readonly ProblemKind BodyTooLarge = new(
        "body-too-large", 413, "The body is too large",
        "The body is longer than the limit named in detail.",
        "Send less. A building with all its openings is a few kilobytes.");

    public static readonly ProblemKind AddressTooLong = new(
        "address-too-long", 414, "The address is too long",
        "The request target is longer than the server reads.",
        "Shorten it.");

    public static readonly ProblemKind UnsupportedMediaType = new(
        "unsupported-media-type", 415, "The body is not sent as JSON",
        "The Content-Type is not application/json in UTF-8, or a Content-Encoding is set.",
        "Send Content-Type: application/json and no Content-Encoding.");

    public static readonly ProblemKind IdempotencyKeyMissing = new(
        "idempotency-key-missing", 400, "The Idempotency-Key header is needed",
        "The header is absent, empty, doubled, too long or holds other than visible ASCII.",
        "Send a key of your own, new for each new order and the same for each repetition.");

    public static readonly ProblemKind IdempotencyKeyReused = new(
        "idempotency-key-reused", 422, "This Idempotency-Key was used for another request",
        "The same key came before with a body that differs, if only by a byte.",
        "Give each different request its own key.");

    public static readonly ProblemKind PreconditionRequired = new(
        "precondition-required", 428, "Say which revision you change",
        "The change needs an If-Match header.",
        "Read the order and send its ETag in If-Match.");

    public static readonly ProblemKind TooManyRequests = new(
        "too-many-requests", 429, "Too many requests",
        "The caller sends more than the service takes.",
        "Wait for the seconds in Retry-After.");

    public static readonly ProblemKind HeadersTooLarge = new(
        "headers-too-large", 431, "The headers are too large",
        "The request headers together are longer than the server reads.",
        "Send fewer or shorter headers.");

    public static readonly ProblemKind SizingUnavailable = new(
        "sizing-unavailable", 503, "The take-off cannot be made just now",
        "Orders could not reach the sizing service. Nothing was accepted.",
        "Send the same request with the same Idempotency-Key again after Retry-After.");

    public static readonly ProblemKind StoreUnavailable = new(
        "store-unavailable", 503, "It cannot be stored just now",
        "The store is locked, full or not reachable. Nothing was accepted.",
        "Send the same request with the same Idempotency-Key again after Retry-After.");

    public static readonly IReadOnlyList<ProblemKind> All =
    [
        MalformedJson, BadRequest, IdempotencyKeyMissing,
        NotFound, OrderNotFound, PlanNotFound, LabelsNotFound,
        PieceNotFound, RollNotFound, PostalCodeNotFound,
        MethodNotAllowed, NotAcceptable, RequestTimeout, OrderNumberTaken, StateConflict,
        PreconditionFailed, BodyTooLarge, AddressTooLong, UnsupportedMediaType,
        InvalidRequest, IdempotencyKeyReused, PreconditionRequired, TooManyRequests,
        HeadersTooLarge, SizingUnavailable, StoreUnavailable,
    ];

    /// <summary>
    /// The kind for a status that came without a body, or null when there is none.
    /// </summary>
    public static ProblemKind? ForBareStatus(int status) => status switch
    {
        400 => BadRequest,
        404 => NotFound,
        405 => MethodNotAllowed,
        406 => NotAcceptable,
        408 => RequestTimeout,
        412 => PreconditionFailed,
        413 => BodyTooLarge,
        414 => AddressTooLong,
        415 => UnsupportedMediaType,
        428 => PreconditionRequired,
        429 => TooManyRequests,
        431 => HeadersTooLarge,
        _ => null,
    };
}
