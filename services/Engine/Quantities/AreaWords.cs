using System.Globalization;

namespace PostFrame.Engine.Quantities;

/// <summary>Areas in words for people.</summary>
internal static class AreaWords
{
    /// <summary>"31.5 ft²" or "2.9 m²", to a tenth.</summary>
    public static string Say(this Area area, bool metric) =>
        (metric ? area.TotalSquareMetres : area.TotalSquareFeet)
            .ToString("0.#", CultureInfo.InvariantCulture) + (metric ? " m²" : " ft²");
}
