using System.Diagnostics;

namespace PostFrame.Benchmarks;

/// <summary>
/// A limit in processor seconds of this process, so that other work on the machine does not count.
/// </summary>
internal sealed class CpuLimit : IDisposable
{
    private readonly CancellationTokenSource _stop = new();
    private readonly TimeSpan _before = Now();
    private readonly Timer _watch;

    public CpuLimit(double seconds) => _watch = new Timer(
        _ =>
        {
            if (Spent > seconds)
                _stop.Cancel();
        },
        null, 10, 10);

    public CancellationToken Token => _stop.Token;

    public double Spent => (Now() - _before).TotalSeconds;

    public void Dispose()
    {
        using var idle = new ManualResetEvent(false);
        _watch.Dispose(idle);
        idle.WaitOne();
        _stop.Dispose();
    }

    private static TimeSpan Now()
    {
        using var process = Process.GetCurrentProcess();
        return process.TotalProcessorTime;
    }
}
