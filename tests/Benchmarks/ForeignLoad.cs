using System.Diagnostics;
using System.Globalization;

namespace PostFrame.Benchmarks;

/// <summary>
/// How many cores processes other than this one and its children were busy on, since it was made.
/// A benchmark on a shared machine means little without it. Linux only; elsewhere NaN.
/// </summary>
internal sealed class ForeignLoad
{
    private const double TicksPerSecond = 100;
    private readonly long _began = Stopwatch.GetTimestamp();
    private readonly double _busyAtStart = BusySeconds();
    private readonly double _ownAtStart = OwnSeconds();

    public double Cores
    {
        get
        {
            var seconds = Stopwatch.GetElapsedTime(_began).TotalSeconds;
            return (BusySeconds() - _busyAtStart - (OwnSeconds() - _ownAtStart)) / seconds;
        }
    }

    /// <summary>User, nice and system time of all processors, from /proc/stat.</summary>
    private static double BusySeconds()
    {
        if (!File.Exists("/proc/stat"))
        {
            return double.NaN;
        }

        var cells = File.ReadLines("/proc/stat").First()
            .Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return cells[1..4].Sum(cell => double.Parse(cell, CultureInfo.InvariantCulture))
            / TicksPerSecond;
    }

    /// <summary>This process and its children that have ended: utime, stime, cutime, cstime.
    /// </summary>
    private static double OwnSeconds()
    {
        if (!File.Exists("/proc/self/stat"))
        {
            return double.NaN;
        }

        var text = File.ReadAllText("/proc/self/stat");
        var cells = text[(text.LastIndexOf(')') + 2)..].Split(' ');
        return cells[11..15].Sum(cell => double.Parse(cell, CultureInfo.InvariantCulture))
            / TicksPerSecond;
    }
}
