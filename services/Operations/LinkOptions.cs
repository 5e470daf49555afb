namespace PostFrame.Operations;

/// <summary>
/// Settings under <c>Links</c>: where a browser finds the other services. Empty, the default, is
/// the address the board itself came from, as in the single host; otherwise an origin such as
/// <c>http://127.0.0.1:8082</c>.
/// </summary>
public sealed class LinkOptions
{
    public string Desk { get; set; } = "";

    public string Orders { get; set; } = "";

    public string Cutting { get; set; } = "";

    public string Labels { get; set; } = "";

    /// <summary>Origins other than the board's own, which its page may ask.</summary>
    internal IEnumerable<string> Asked =>
        new[] { Orders, Cutting }.Where(origin => origin.Length > 0).Distinct();

    internal bool AreOrigins => new[] { Desk, Orders, Cutting, Labels }.All(
        link => link.Length == 0
            || (Uri.TryCreate(link, UriKind.Absolute, out var uri)
                && uri.Scheme is "http" or "https"
                && uri.GetLeftPart(UriPartial.Authority) == link));
}
