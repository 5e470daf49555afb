namespace PostFrame.Engine.Heat;

/// <summary>
/// The way heat crosses a plane. Films and air spaces resist heat very differently by direction:
/// a hot roof above a cool room (down) is not a cold roof above a warm room (up).
/// </summary>
public enum HeatFlow
{
    /// <summary>Upwards through a flat or shallow plane: a roof in winter.</summary>
    Up,

    /// <summary>Upwards through a plane at about 45°: a steep roof in winter.</summary>
    Up45,

    /// <summary>Sideways through an upright plane: a wall in either season.</summary>
    Horizontal,

    /// <summary>Downwards through a plane at about 45°: a steep roof in summer.</summary>
    Down45,

    /// <summary>Downwards through a flat or shallow plane: a roof in summer.</summary>
    Down,
}
