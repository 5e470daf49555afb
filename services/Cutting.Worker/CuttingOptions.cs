using System.ComponentModel.DataAnnotations;

namespace PostFrame.CuttingWorker;

/// <summary>Settings under <c>Cutting</c>.</summary>
public sealed class CuttingOptions
{
    /// <summary>
    /// Work allowed for the plan of one product and width [work seconds]: counted in steps, so that
    /// the same order gives the same plan on any machine.
    /// </summary>
    [Range(0.001, 600)]
    public double WorkSeconds { get; set; } = 2;

    /// <summary>
    /// After this the best plan so far is taken, however slow the machine [time].
    /// </summary>
    [Range(typeof(TimeSpan), "00:00:00.1", "01:00:00")]
    public TimeSpan LongestPlanning { get; set; } = TimeSpan.FromSeconds(30);
}
