using System.ComponentModel.DataAnnotations;

namespace PostFrame.Operations;

/// <summary>Settings under <c>Stream</c>.</summary>
public sealed class StreamOptions
{
    /// <summary>Streams open at once; the next is refused with 429.</summary>
    [Range(1, 10_000)]
    public int MostStreams { get; set; } = 500;

    /// <summary>A quiet stream says so this often; its reader takes a longer silence for a lost
    /// connection.</summary>
    [Range(typeof(TimeSpan), "00:00:00.05", "00:00:20")]
    public TimeSpan Heartbeat { get; set; } = TimeSpan.FromSeconds(10);
}
