namespace PostFrame.Documents.Drawing;

/// <summary>Anything a paper can show. A closed set: every paper draws every kind.</summary>
internal abstract record Mark;

/// <summary>A polygon, or a line when open.</summary>
internal sealed record Shape(
    IReadOnlyList<Spot> Points,
    string? Fill = null,
    string? Stroke = null,
    double Width = 0,
    double Dash = 0,
    bool Open = false) : Mark;

/// <summary>Many polygons drawn with one pen.</summary>
internal sealed record Outlines(IReadOnlyList<IReadOnlyList<Spot>> Polygons, double Width) : Mark;

internal sealed record Dot(Spot Centre, double Radius, string Colour) : Mark;

internal sealed record Bars(IReadOnlyList<Frame> Frames) : Mark;

/// <summary>One line of clean text on its baseline.</summary>
internal sealed record Words(string Text, Spot At, double Size) : Mark
{
    public bool Bold { get; init; }

    public string Colour { get; init; } = Ink.Black;

    public Anchor Anchor { get; init; } = Anchor.Start;

    /// <summary>Letters this much narrower than drawn; the height stays.</summary>
    public double ScaleX { get; init; } = 1;

    /// <summary>Degrees clockwise about the baseline point.</summary>
    public double Turn { get; init; }

    public double WidthPt => Lettering.Width(Text, Size, Bold) * ScaleX;
}

internal sealed record GroupStart(string Name) : Mark;

internal sealed record GroupEnd : Mark;

internal enum Anchor
{
    Start,
    Middle,
    End,
}
