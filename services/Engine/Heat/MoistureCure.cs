namespace PostFrame.Engine.Heat;

/// <summary>A change that was computed, and what comes of it.</summary>
/// <param name="Id">Kebab-case name of the change.</param>
/// <param name="Text">In words, with amounts.</param>
/// <param name="Cures">True where the year is then dry, or dries again.</param>
public sealed record MoistureCure(string Id, string Text, bool Cures)
{
    /// <summary>The year with the change; null where no one year stands for it.</summary>
    public MoistureYear? Year { get; init; }

    /// <summary>The permeance it was tried with [US perm].</summary>
    public double? Perm { get; init; }

    /// <summary>The share of the room's moisture it was tried with, 0 to 1.</summary>
    public double? MoistureShare { get; init; }

    /// <summary>The room humidity in the coldest month that comes of it, 0 to 1.</summary>
    public double? RoomRh { get; init; }
}
