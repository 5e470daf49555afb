using System.Text.Json;

namespace PostFrame.Problems;

/// <summary>
/// One object of a request. Each reader takes a member by name and notes what is wrong with it;
/// <see cref="Close"/> then notes members nobody asked for. Readers answer null when the member
/// is absent or wrong. An absent object answers null to everything and notes nothing, so that one
/// missing parent is one mistake.
/// </summary>
public sealed class RequestObject
{
    private readonly Mistakes _mistakes;
    private readonly Dictionary<string, JsonElement> _members = new(StringComparer.Ordinal);
    private readonly HashSet<string> _asked = new(StringComparer.Ordinal);

    private RequestObject(string pointer, Mistakes mistakes, bool isPresent)
    {
        Pointer = pointer;
        _mistakes = mistakes;
        IsPresent = isPresent;
    }

    /// <summary>JSON Pointer of this object in the request.</summary>
    public string Pointer { get; }

    public bool IsPresent { get; }

    public Mistakes Mistakes => _mistakes;

    /// <summary>The members there are, in the order sent.</summary>
    public IEnumerable<string> Names => _members.Keys;

    /// <summary>JSON Pointer of one member of this object.</summary>
    public string PointerTo(string name) => JsonPointer.Of(Pointer, name);

    public bool Has(string name)
    {
        _asked.Add(name);
        return _members.ContainsKey(name);
    }

    /// <summary>
    /// Whether a member is exactly this word, where it may also be something else.
    /// </summary>
    public bool IsText(string name, string word) =>
        Has(name) && _members[name].ValueKind is JsonValueKind.String
        && _members[name].ValueEquals(word);

    internal static RequestObject Absent(string pointer, Mistakes mistakes) =>
        new(pointer, mistakes, isPresent: false);

    internal static RequestObject Of(JsonElement element, string pointer, Mistakes mistakes)
    {
        if (element.ValueKind is not JsonValueKind.Object)
        {
            mistakes.Add(
                pointer, "type", Shown.Value(element),
                $"Here we need an object {{…}}, not {Shown.Kind(element)}.", "object");
            return Absent(pointer, mistakes);
        }

        var place = new RequestObject(pointer, mistakes, isPresent: true);
        foreach (var member in element.EnumerateObject())
        {
            if (!place._members.TryAdd(member.Name, member.Value))
            {
                mistakes.Add(
                    place.PointerTo(member.Name), "duplicate-member", Shown.Value(member.Value),
                    $"\"{Mistakes.Shortened(member.Name)}\" is given twice; which one counts?");
            }
        }

        return place;
    }

    public string? Text(string name, int maxLength = 200) =>
        TextOf(name, maxLength, required: true);

    public string? OptionalText(string name, int maxLength = 200) =>
        TextOf(name, maxLength, required: false);

    /// <summary>One of the listed words.</summary>
    public string? Choice(string name, params ReadOnlySpan<string> words) =>
        ChoiceOf(name, required: true, words);

    /// <summary>One of the listed words.</summary>
    public string? OptionalChoice(string name, params ReadOnlySpan<string> words) =>
        ChoiceOf(name, required: false, words);

    /// <summary>One of an enumeration's names, first letter small.</summary>
    public T? OptionalChoice<T>(string name)
        where T : struct, Enum
    {
        var words = WireNames<T>.All;
        return ChoiceOf(name, required: false, words) is { } word
            ? WireNames<T>.Parse(word)
            : null;
    }

    /// <summary>A finite number between two bounds, both included.</summary>
    public double? OptionalNumber(string name, double least, double most, string? unit = null)
    {
        if (Member(name, required: false, JsonValueKind.Number, "a number") is not { } element)
        {
            return null;
        }

        if (!element.TryGetDouble(out var number) || !double.IsFinite(number))
        {
            Wrong(name, "finite", Shown.Value(element), "The number is beyond every bound.",
                Shown.Number(most), unit);
            return null;
        }

        return Within(name, number, least, most, unit) ? number : null;
    }

    /// <summary>A whole number between two bounds, both included.</summary>
    public int? OptionalWhole(string name, int least, int most, string? unit = null)
    {
        if (OptionalNumber(name, least, most, unit) is not { } number)
        {
            return null;
        }

        if (number == Math.Truncate(number))
        {
            return (int)number;
        }

        Wrong(
            name, "whole-number", Shown.Number(number), "This must be a whole number.", null, unit);
        return null;
    }

    public bool? OptionalFlag(string name)
    {
        if (!Taken(name, required: false, out var element))
        {
            return null;
        }

        if (element.ValueKind is JsonValueKind.True or JsonValueKind.False)
        {
            return element.GetBoolean();
        }

        WrongKind(name, element, "true or false");
        return null;
    }

    public RequestObject Object(string name) =>
        Taken(name, required: true, out var element)
            ? Of(element, PointerTo(name), _mistakes)
            : Absent(PointerTo(name), _mistakes);

    /// <summary>The object, or null when the member is not there.</summary>
    public RequestObject? OptionalObject(string name) =>
        Taken(name, required: false, out var element)
            ? Of(element, PointerTo(name), _mistakes)
            : null;

    /// <summary>Notes every member that nobody asked for.</summary>
    public void Close()
    {
        foreach (var (name, value) in _members)
        {
            if (_asked.Contains(name))
            {
                continue;
            }

            var near = NearName.Of(name, _asked);
            _mistakes.Add(
                PointerTo(name), "unknown-member", Shown.Value(value),
                near is null
                    ? $"\"{Mistakes.Shortened(name)}\" means nothing here; leave it out."
                    : $"\"{Mistakes.Shortened(name)}\" means nothing here. "
                        + $"Did you mean \"{near}\"?",
                near);
        }
    }

    /// <summary>Notes a mistake about one member of this object.</summary>
    public void Wrong(
        string name, string rule, string actual, string message,
        string? limit = null, string? unit = null) =>
        _mistakes.Add(PointerTo(name), rule, actual, message, limit, unit);

    private string? TextOf(string name, int maxLength, bool required)
    {
        if (Member(name, required, JsonValueKind.String, "a text") is not { } element)
        {
            return null;
        }

        var text = element.GetString()!;
        if (text.Length > maxLength)
        {
            Wrong(name, "too-long", text, $"The text is longer than {maxLength} characters.",
                Shown.Number(maxLength), "characters");
            return null;
        }

        if (text.Any(char.IsControl))
        {
            Wrong(name, "control-character", Shown.Text(text),
                "The text holds a control character, which no label can show.");
            return null;
        }

        if (required && string.IsNullOrWhiteSpace(text))
        {
            Wrong(name, "empty", text, $"\"{name}\" must not be empty.", "1", "characters");
            return null;
        }

        return text;
    }

    private string? ChoiceOf(string name, bool required, ReadOnlySpan<string> words) =>
        Member(name, required, JsonValueKind.String, $"one of {Shown.Listed(words)}") is { } element
            ? IsOneOf(PointerTo(name), element.GetString()!, words)
            : null;

    private string? IsOneOf(string pointer, string word, ReadOnlySpan<string> words)
    {
        if (words.Contains(word))
        {
            return word;
        }

        var near = NearName.Of(word, words.ToArray());
        _mistakes.Add(
            pointer, "choice", Shown.Text(word),
            near is null
                ? $"This must be one of {Shown.Listed(words)}."
                : $"This must be one of {Shown.Listed(words)}. Did you mean \"{near}\"?",
            Shown.Listed(words));
        return null;
    }

    /// <summary>The member when it is there and of the kind needed.</summary>
    internal JsonElement? Member(string name, bool required, JsonValueKind kind, string needed)
    {
        if (!Taken(name, required, out var element))
        {
            return null;
        }

        if (element.ValueKind == kind)
        {
            return element;
        }

        WrongKind(name, element, needed);
        return null;
    }

    /// <summary>The member as it stands, without judging it.</summary>
    internal JsonElement? Peek(string name) =>
        _members.TryGetValue(name, out var element) ? element : null;

    /// <summary>The member when it is there and not null.</summary>
    internal bool Taken(string name, bool required, out JsonElement element)
    {
        _asked.Add(name);
        if (!_members.TryGetValue(name, out element))
        {
            if (required && IsPresent)
            {
                Wrong(name, "missing", "", $"\"{name}\" is missing.");
            }

            return false;
        }

        if (element.ValueKind is not JsonValueKind.Null)
        {
            return true;
        }

        Wrong(name, "null", "null", required
            ? $"\"{name}\" must not be null."
            : $"\"{name}\" is null; leave it out instead.");
        return false;
    }

    private bool Within(string name, double number, double least, double most, string? unit)
    {
        if (number < least)
        {
            Wrong(
                name, "at-least", Shown.Number(number),
                $"This must be at least {Shown.Number(least)}"
                + $"{(unit is null ? "" : " " + unit)}.", Shown.Number(least), unit);
            return false;
        }

        if (number > most)
        {
            Wrong(
                name, "at-most", Shown.Number(number),
                $"This must be at most {Shown.Number(most)}"
                + $"{(unit is null ? "" : " " + unit)}.", Shown.Number(most), unit);
            return false;
        }

        return true;
    }

    internal void WrongKind(string name, JsonElement element, string needed) =>
        Wrong(name, "type", Shown.Value(element),
            $"\"{name}\" must be {needed}, not {Shown.Kind(element)}.", needed);
}
