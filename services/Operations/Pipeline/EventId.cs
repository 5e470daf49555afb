using System.Globalization;
using PostFrame.Messaging;

namespace PostFrame.Operations.Pipeline;

/// <summary>A point in the stream of changes: which store, and the latest change seen.</summary>
internal readonly record struct EventId(string Feed, long Change)
{
    public static EventId Latest(StoreTransaction view) =>
        new(PipelineStore.FeedName(view), PipelineStore.LatestChange(view));

    /// <summary>Where a client goes on; null when its point is not of this stream.</summary>
    public static EventId? Resume(string? text, EventId latest)
    {
        var dash = text?.IndexOf('-', StringComparison.Ordinal) ?? -1;
        return dash > 0 && text![..dash] == latest.Feed
            && long.TryParse(
                text.AsSpan(dash + 1), NumberStyles.None, CultureInfo.InvariantCulture,
                out var change)
            && change <= latest.Change
            ? latest with { Change = change }
            : null;
    }

    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Feed}-{Change}");
}
