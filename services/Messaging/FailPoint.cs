using System.Diagnostics;
using System.Globalization;

namespace PostFrame.Messaging;

/// <summary>
/// Named places at which a test may kill the process outright, as a power cut would. Off unless
/// the environment variable <c>POSTFRAME_FAIL_POINT</c> names one: <c>orders.after-commit</c>, or
/// <c>orders.after-commit:3</c> for the third time it is reached.
/// </summary>
public static class FailPoint
{
    private static readonly (string? Name, int Time) Chosen =
        Parse(Environment.GetEnvironmentVariable("POSTFRAME_FAIL_POINT"));

    private static int _reached;

    public static void Reach(string name)
    {
        if (Chosen.Name is not null && Chosen.Name == name
            && Interlocked.Increment(ref _reached) == Chosen.Time)
        {
            using var self = Process.GetCurrentProcess();
            self.Kill();
            self.WaitForExit();
        }
    }

    private static (string? Name, int Time) Parse(string? setting)
    {
        var parts = (setting ?? "").Split(':');
        return (
            parts[0].Length == 0 ? null : parts[0],
            parts.Length > 1 ? int.Parse(parts[1], CultureInfo.InvariantCulture) : 1);
    }
}
