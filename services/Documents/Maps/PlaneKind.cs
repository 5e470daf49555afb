namespace PostFrame.Documents;

/// <summary>
/// The three kinds of plane the crew tells apart by word, band pattern and colour.
/// </summary>
public enum PlaneKind
{
    Roof,
    Sidewall,
    Endwall,
}
