using System.Text.Json;
using PostFrame.Engine;

namespace PostFrame.Problems;

/// <summary>
/// A request body read strictly. Reading never throws: <see cref="Malformed"/> says that it is no
/// JSON at all; otherwise the members are taken from <see cref="Root"/>, every mistake on the way
/// lands in <see cref="Mistakes"/>, and the caller asks once at the end whether there were any.
/// </summary>
public sealed class JsonRequest : IDisposable
{
    private readonly JsonDocument? _document;

    private JsonRequest(JsonDocument? document, ProblemAnswer? malformed)
    {
        _document = document;
        Malformed = malformed;
        Root = document is null
            ? RequestObject.Absent("", Mistakes)
            : RequestObject.Of(document.RootElement, "", Mistakes);
    }

    /// <summary>Set when the body cannot be read at all.</summary>
    public ProblemAnswer? Malformed { get; }

    public Mistakes Mistakes { get; } = new();

    public RequestObject Root { get; }

    public static JsonRequest Parse(ReadOnlyMemory<byte> body)
    {
        var json = body.Span.StartsWith("\uFEFF"u8) ? body[3..] : body;
        return JsonFault.In(json.Span) is { } fault
            ? new JsonRequest(null, new ProblemAnswer(fault.Kind, fault.Detail, fault.Mistakes))
            : new JsonRequest(JsonDocument.Parse(json), null);
    }

    /// <summary>
    /// Adds what a later check found, unless it is noted; a value that check does not tell is shown
    /// as it was written.
    /// </summary>
    public void AddUnlessNoted(IEnumerable<Violation> found) =>
        Mistakes.AddUnlessNoted(found.Select(violation => violation.Actual.Length == 0
            && JsonPointer.Find(_document, violation.Path) is { } written
                ? violation with { Actual = Shown.Value(written) }
                : violation));

    public void Dispose() => _document?.Dispose();
}
