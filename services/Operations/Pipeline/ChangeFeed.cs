using System.Threading.Channels;
using Microsoft.Extensions.DependencyInjection;
using PostFrame.Messaging;

namespace PostFrame.Operations.Pipeline;

/// <summary>Tells the open streams that orders changed.</summary>
internal sealed class ChangeFeed
{
    private readonly Channel<bool> _woken = Channel.CreateBounded<bool>(
        new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });

    /// <summary>Called after a commit that changed an order.</summary>
    public void Wake() => _woken.Writer.TryWrite(true);
}
