namespace PostFrame.Engine.Quantities;

/// <summary>An area held in square metres. Default: zero.</summary>
public readonly record struct Area
{
    private const double SquareMetresPerSquareFoot = 0.09290304;

    private Area(double squareMetres) => TotalSquareMetres = squareMetres;

    /// <summary>The area [m²].</summary>
    public double TotalSquareMetres { get; }

    /// <summary>The area [ft²]; 1 ft is exactly 0.3048 m.</summary>
    public double TotalSquareFeet => TotalSquareMetres / SquareMetresPerSquareFoot;

    /// <summary>No area.</summary>
    public static Area Zero => default;

    /// <summary>An area from square metres.</summary>
    public static Area FromSquareMetres(double squareMetres) => new(squareMetres);

    /// <summary>An area from square feet.</summary>
    public static Area FromSquareFeet(double squareFeet) =>
        new(squareFeet * SquareMetresPerSquareFoot);

    /// <summary>A rectangle.</summary>
    public static Area Of(Length width, Length height) =>
        new(width.TotalMetres * height.TotalMetres);

    public static Area operator +(Area a, Area b) =>
        new(a.TotalSquareMetres + b.TotalSquareMetres);

    public static Area operator -(Area a, Area b) =>
        new(a.TotalSquareMetres - b.TotalSquareMetres);
}
