using System.Text.Json;

namespace PostFrame.Problems;

/// <summary>Members that are lists.</summary>
public static class RequestLists
{
    public static IReadOnlyList<RequestObject> Objects(
        this RequestObject place, string name, int least, int most) =>
        ObjectsIn(place, name, Items(place, name, required: true, least, most));

    public static IReadOnlyList<RequestObject> OptionalObjects(
        this RequestObject place, string name, int most) =>
        ObjectsIn(place, name, Items(place, name, required: false, 0, most));

    /// <summary>
    /// A list of texts, or null when the member is not there. An item that is no text is noted and
    /// stands as an empty one, so that the places of the others stay true.
    /// </summary>
    public static IReadOnlyList<string>? OptionalTexts(
        this RequestObject place, string name, int most, int maxLength = 60) =>
        place.Has(name)
            ? [.. Items(place, name, required: false, 0, most).Select((item, index) =>
                TextOf(item, JsonPointer.Of(place.PointerTo(name), index), place, maxLength))]
            : null;

    private static IReadOnlyList<RequestObject> ObjectsIn(
        RequestObject place, string name, IEnumerable<JsonElement> items) =>
        [.. items.Select((item, index) => RequestObject.Of(
            item, JsonPointer.Of(place.PointerTo(name), index), place.Mistakes))];

    private static string TextOf(
        JsonElement item, string pointer, RequestObject place, int maxLength)
    {
        if (item.ValueKind is not JsonValueKind.String)
        {
            place.Mistakes.Add(pointer, "type", Shown.Value(item), "Here we need a text.", "text");
            return "";
        }

        var text = item.GetString()!;
        if (text.Length <= maxLength)
        {
            return text;
        }

        place.Mistakes.Add(
            pointer, "too-long", Shown.Value(item),
            $"The text is longer than {maxLength} characters.",
            Shown.Number(maxLength), "characters");
        return "";
    }

    private static IEnumerable<JsonElement> Items(
        RequestObject place, string name, bool required, int least, int most)
    {
        if (place.Member(name, required, JsonValueKind.Array, "a list [...]") is not { } element)
        {
            return [];
        }

        var count = element.GetArrayLength();
        if (count < least)
        {
            place.Wrong(
                name, "too-few", Shown.Number(count),
                $"At least {least} must be in this list.", Shown.Number(least), "items");
        }

        if (count > most)
        {
            place.Wrong(
                name, "too-many", Shown.Number(count),
                $"At most {most} may be in this list.", Shown.Number(most), "items");
        }

        return element.EnumerateArray().Take(most);
    }
}
