namespace PostFrame.Engine.Buildings;

/// <summary>From where the heights of a request are measured.</summary>
public enum EaveHeightDatum
{
    /// <summary>The bottom of the wall strips.</summary>
    StripBase,

    /// <summary>Top of the finished floor.</summary>
    Floor,

    /// <summary>Ground at the wall.</summary>
    Grade,

    /// <summary>Bottom of the splash board.</summary>
    SplashBoard,

    /// <summary>The eave height is that of the truss bearing, from the floor.</summary>
    Bearing,
}
