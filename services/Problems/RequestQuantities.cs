using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using PostFrame.Engine.Quantities;

namespace PostFrame.Problems;

/// <summary>Members that carry a unit, and dates.</summary>
public static partial class RequestQuantities
{
    private const string MassForms = "50 lb or 23 kg";

    public static Length? Length(this RequestObject place, string name) =>
        LengthOf(place, name, required: true)?.Length;

    public static Length? OptionalLength(this RequestObject place, string name) =>
        LengthOf(place, name, required: false)?.Length;

    /// <summary>Whether a length member is there and was written in metric units.</summary>
    public static bool IsMetric(this RequestObject place, string name) =>
        place.Peek(name) is { ValueKind: JsonValueKind.String } element
        && LengthText.Read(element.GetString()!) is { Rule: null, IsMetric: true };

    public static Slope? Slope(this RequestObject place, string name) =>
        SlopeOf(place, name, required: true);

    public static Slope? OptionalSlope(this RequestObject place, string name) =>
        SlopeOf(place, name, required: false);

    /// <summary>A weight with its unit, <c>50 lb</c> or <c>23 kg</c>.</summary>
    public static Mass? OptionalMass(this RequestObject place, string name)
    {
        if (!place.Taken(name, required: false, out var element))
        {
            return null;
        }

        if (element.ValueKind is JsonValueKind.String
            && MassText().Match(element.GetString()!) is { Success: true } match)
        {
            var number = double.Parse(match.Groups["number"].Value, CultureInfo.InvariantCulture);
            return match.Groups["unit"].Value is "kg"
                ? Mass.FromKilograms(number)
                : Mass.FromPounds(number);
        }

        place.Wrong(
            name, element.ValueKind is JsonValueKind.Number ? "unit-missing" : "mass-format",
            Shown.Value(element), $"Write a weight like {MassForms}.", MassForms);
        return null;
    }

    /// <summary>A calendar date, <c>2026-12-04</c>.</summary>
    public static DateOnly? Date(this RequestObject place, string name)
    {
        if (place.Member(name, required: true, JsonValueKind.String, "a date") is not { } element)
        {
            return null;
        }

        var text = element.GetString()!;
        if (DateOnly.TryParseExact(
            text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date))
        {
            return date;
        }

        place.Wrong(name, "date-format", Shown.Text(text),
            "Write the date as year-month-day, such as 2026-12-04.", "YYYY-MM-DD");
        return null;
    }

    private static LengthReading? LengthOf(RequestObject place, string name, bool required)
    {
        if (!place.Taken(name, required, out var element))
        {
            return null;
        }

        if (element.ValueKind is JsonValueKind.Number)
        {
            place.Wrong(name, "unit-missing", Shown.Value(element),
                $"Which unit? Write a length as text, like {LengthText.Forms}.",
                LengthText.Forms);
            return null;
        }

        if (element.ValueKind is not JsonValueKind.String)
        {
            place.WrongKind(name, element, $"a length as text, like {LengthText.Forms}");
            return null;
        }

        var text = element.GetString()!;
        var reading = LengthText.Read(text);
        if (reading.Rule is null)
        {
            return reading;
        }

        place.Wrong(name, reading.Rule, Shown.Text(text), reading.Message,
            reading.Limit ?? LengthText.Forms, reading.Unit);
        return null;
    }

    private static Slope? SlopeOf(RequestObject place, string name, bool required)
    {
        if (!place.Taken(name, required, out var element))
        {
            return null;
        }

        var text = element.ValueKind is JsonValueKind.String ? element.GetString()! : null;
        if (text is not null && SlopeText.Read(text) is { } slope)
        {
            return slope;
        }

        if (text is not null && SlopeText.IsTooFine(text))
        {
            place.Wrong(name, Decimals.TooFine, Shown.Text(text), Decimals.Message,
                Decimals.Most, Decimals.Unit);
            return null;
        }

        var isBare = text is null
            ? element.ValueKind is JsonValueKind.Number
            : double.TryParse(text, CultureInfo.InvariantCulture, out _);
        place.Wrong(
            name, isBare ? "unit-missing" : text is null ? "type" : "slope-format",
            Shown.Value(element),
            isBare
                ? $"Is that x:12, degrees or percent? Write a slope like {SlopeText.Forms}."
                : $"Write a slope like {SlopeText.Forms}.",
            SlopeText.Forms);
        return null;
    }

    [GeneratedRegex(@"^(?<number>[0-9]{1,6}(\.[0-9]{1,4})?) ?(?<unit>lb|lbs|kg)$")]
    private static partial Regex MassText();
}
