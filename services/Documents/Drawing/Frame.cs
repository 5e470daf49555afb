namespace PostFrame.Documents.Drawing;

/// <summary>A point on the page [pt].</summary>
internal readonly record struct Spot(double X, double Y);

/// <summary>An upright rectangle on the page [pt].</summary>
internal readonly record struct Frame(double X, double Y, double Width, double Height)
{
    public double Right => X + Width;

    public double Bottom => Y + Height;

    public Spot Centre => new(X + Width / 2, Y + Height / 2);

    public IReadOnlyList<Spot> Corners =>
        [new(X, Y), new(Right, Y), new(Right, Bottom), new(X, Bottom)];

    public Frame Inset(double by) => new(X + by, Y + by, Width - 2 * by, Height - 2 * by);

    public static Frame Around(IEnumerable<Spot> spots)
    {
        double left = double.MaxValue, top = double.MaxValue;
        double right = double.MinValue, bottom = double.MinValue;
        foreach (var spot in spots)
        {
            left = Math.Min(left, spot.X);
            top = Math.Min(top, spot.Y);
            right = Math.Max(right, spot.X);
            bottom = Math.Max(bottom, spot.Y);
        }

        return new Frame(left, top, right - left, bottom - top);
    }
}
