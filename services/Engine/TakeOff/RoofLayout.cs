namespace PostFrame.Engine.TakeOff;

/// <summary>How roof strips are laid.</summary>
public enum RoofLayout
{
    /// <summary>Over the ridge unless vent, run or weight ask for pairs.</summary>
    Auto,

    /// <summary>Eave over the ridge to eave in one piece.</summary>
    OverRidge,

    /// <summary>Two pieces per strip position, meeting at the ridge.</summary>
    EaveToRidge,
}
