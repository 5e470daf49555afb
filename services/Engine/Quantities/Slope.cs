using System.Globalization;

namespace PostFrame.Engine.Quantities;

/// <summary>
/// A roof slope as rise over horizontal run (4:12 is 1/3), told again as it was told. Default:
/// flat. Never over the full span.
/// </summary>
public readonly record struct Slope
{
    private Slope(double riseOverRun, Telling told = Telling.Ratio) =>
        (RiseOverRun, Told) = (riseOverRun, told);

    private enum Telling
    {
        Ratio,
        Degrees,
        Percent,
    }

    /// <summary>Rise per unit of horizontal run [1].</summary>
    public double RiseOverRun { get; }

    /// <summary>x of x:12 [in per 12 in of run].</summary>
    public double RisePer12 => RiseOverRun * 12;

    /// <summary>The angle to the horizontal [°].</summary>
    public double TotalDegrees => Math.Atan(RiseOverRun) * 180 / Math.PI;

    /// <summary>Slope length per unit of horizontal run [1]. Source: takeoff.md 2.1.</summary>
    public double Factor => Math.Sqrt(1 + RiseOverRun * RiseOverRun);

    private Telling Told { get; }

    /// <summary>A slope of x:12.</summary>
    public static Slope FromRisePer12(double x) => new(x / 12);

    /// <summary>A slope from its angle to the horizontal [°], −90 to 90 exclusive.</summary>
    public static Slope FromDegrees(double degrees) =>
        new(Math.Tan(degrees * Math.PI / 180), Telling.Degrees);

    /// <summary>A slope from percent: rise per 100 of run.</summary>
    public static Slope FromPercent(double percent) => new(percent / 100, Telling.Percent);

    /// <summary>A slope from rise over run.</summary>
    public static Slope FromRatio(double riseOverRun) => new(riseOverRun);

    /// <summary>"4:12", "3.125:12", "15°" or "33 %": as told; a slope that follows from heights
    /// to hundredths of x:12.</summary>
    public override string ToString() => Told switch
    {
        Telling.Degrees => Rounded(TotalDegrees) + "°",
        Telling.Percent => Rounded(RiseOverRun * 100) + " %",
        _ => Rounded(RisePer12) + ":12",
    };

    /// <summary>Eighths as they are, all else to hundredths.</summary>
    private static string Rounded(double value)
    {
        var eighth = Math.Round(value * 8) / 8;
        return (Math.Abs(value - eighth) < 1e-4 ? eighth : Math.Round(value, 2))
            .ToString("0.###", CultureInfo.InvariantCulture);
    }
}
