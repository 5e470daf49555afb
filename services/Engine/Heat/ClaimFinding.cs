using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Heat;

/// <summary>A claim measured on one basis. It speaks of the claim, never of who made it.</summary>
public sealed record ClaimFinding
{
    /// <summary>The result; null where nothing was claimed or it cannot be told.</summary>
    public required ClaimOutcome? Outcome { get; init; }

    /// <summary>In words.</summary>
    public required string Text { get; init; }

    /// <summary>The most the material reaches by itself; null where not known.</summary>
    public ThermalResistance? MaterialMost { get; init; }

    /// <summary>The system as stated with films, heat flowing out; null where not known.</summary>
    public ThermalResistance? SystemWinter { get; init; }

    /// <summary>The system as stated with films, heat flowing in; null where not known.</summary>
    public ThermalResistance? SystemSummer { get; init; }

    /// <summary>What <see cref="SystemWinter"/> adds up [m²·K/W].</summary>
    public IReadOnlyList<WorkingInput> WinterParts { get; init; } = [];

    /// <summary>What <see cref="SystemSummer"/> adds up [m²·K/W].</summary>
    public IReadOnlyList<WorkingInput> SummerParts { get; init; } = [];

    /// <summary>The best the kind reaches with a space each side and heat flowing down.</summary>
    public ThermalResistance? SystemBest { get; init; }

    /// <summary>What the claim leaves unsaid that the label rule asks for.</summary>
    public required IReadOnlyList<string> NotSaid { get; init; }
}
