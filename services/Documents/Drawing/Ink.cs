namespace PostFrame.Documents.Drawing;

/// <summary>
/// The colours on paper. Source of the three plane colours: M. Okabe, K. Ito, Color Universal
/// Design (2002, 2008). They are fills beside black; never the only carrier of a meaning.
/// </summary>
internal static class Ink
{
    public const string Black = "#000000";
    public const string White = "#FFFFFF";
    public const string Grey = "#666666";
    public const string Pale = "#E6E6E6";
    public const string Orange = "#E69F00";
    public const string BluishGreen = "#009E73";
    public const string ReddishPurple = "#CC79A7";
}
