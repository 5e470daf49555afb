namespace PostFrame.Engine.Buildings;

/// <summary>Between which faces a building width was measured.</summary>
public enum WidthBasis
{
    /// <summary>Out to out of the sidewall girts: the width every take-off uses.</summary>
    OutsideOfGirts,

    /// <summary>Out to out of posts: most truss spans.</summary>
    OutsideOfPosts,

    /// <summary>Inside face to inside face of opposite posts.</summary>
    ClearSpan,
}
