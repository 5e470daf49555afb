using PostFrame.CuttingWorker.Plans;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;
using PostFrame.Problems;

namespace PostFrame.CuttingWorker.Stock;

/// <summary>Rolls that came in, as read.</summary>
internal sealed record Receipt
{
    public required string Product { get; init; }

    public required long WidthNm { get; init; }

    public required long LengthNm { get; init; }

    public required long EndTrimNm { get; init; }

    public string? Lot { get; init; }

    /// <summary>Null for today.</summary>
    public DateOnly? ReceivedOn { get; init; }

    public required int Count { get; init; }

    public required IReadOnlyList<(long AtNm, long LengthNm)> Flaws { get; init; }
}

/// <summary>Reads what came in and notes every mistake, with what there is instead.</summary>
internal static class ReadReceipt
{
    private const int MostReceived = 500;
    private const int MostFlaws = 20;
    private const int MostYears = 10;

    /// <summary>Shop setting, common practice: enough to square a torn end [nm].</summary>
    private const long DefaultEndTrimNm = 6 * 25_400_000L;

    private const long LongestNm = 1_000_000_000_000;

    public static Receipt? From(RequestObject root, DateOnly today)
    {
        var product = ProductIn(root);
        var width = WidthIn(root, product);
        var length = Positive(root, "rollLength", root.Length("rollLength")?.Nanometres);
        var trim = TrimIn(root, length);
        var lot = root.OptionalText("lot", 40)?.Trim() is { Length: > 0 } named ? named : null;
        var receivedOn = DateIn(root, today);
        var count = root.OptionalWhole("count", 1, MostReceived, "rolls") ?? 1;
        var flaws = FlawsIn(root, length, count);
        return product is null || width is null || length is null
            ? null
            : new Receipt
            {
                Product = product.Code,
                WidthNm = width.Value,
                LengthNm = length.Value,
                EndTrimNm = trim,
                Lot = lot,
                ReceivedOn = receivedOn,
                Count = count,
                Flaws = flaws,
            };
    }

    private static Product? ProductIn(RequestObject root)
    {
        if (root.Text("product", 80) is not { } code)
        {
            return null;
        }

        var found = ProductCatalogue.Find(code);
        if (found is { Rolls.Count: > 0 })
        {
            return found;
        }

        var rolled = string.Join(
            ", ", ProductCatalogue.All.Where(one => one.Rolls.Count > 0).Select(one => one.Code));
        root.Wrong(
            "product", found is null ? "unknown-product" : "not-on-rolls", code,
            found is null
                ? $"There is no product \"{code}\". On rolls there are {rolled}."
                : $"{found.Title} does not come on rolls. On rolls there are {rolled}.",
            rolled);
        return null;
    }

    private static long? WidthIn(RequestObject root, Product? product)
    {
        var width = Positive(root, "rollWidth", root.Length("rollWidth")?.Nanometres);
        if (width is null || product is null
            || product.Rolls.Any(roll => roll.Width.Nanometres == width))
        {
            return width;
        }

        var widths = string.Join(", ", product.Rolls.Select(roll => roll.Metric
            ? $"{roll.Width.TotalMillimetres:0} mm"
            : Words.Width(roll.Width.Nanometres)).Distinct());
        root.Wrong(
            "rollWidth", "no-such-width", Words.Width(width.Value),
            $"{product.Code} comes {widths} wide.", widths);
        return null;
    }

    private static long TrimIn(RequestObject root, long? lengthNm)
    {
        var trim = root.OptionalLength("endTrim")?.Nanometres ?? DefaultEndTrimNm;
        if (lengthNm is { } labelled && (trim < 0 || trim >= labelled))
        {
            root.Wrong(
                "endTrim", "end-trim", Words.Length(Math.Abs(trim)),
                "The end trim is 0 or more and less than the roll.", Words.Length(labelled));
        }

        return trim;
    }

    private static DateOnly? DateIn(RequestObject root, DateOnly today)
    {
        if (!root.Has("receivedOn") || root.Date("receivedOn") is not { } on)
        {
            return null;
        }

        // Tomorrow is today already somewhere east of here.
        if (on <= today.AddDays(1) && on >= today.AddYears(-MostYears))
        {
            return on;
        }

        root.Wrong(
            "receivedOn", "date-range", on.ToString("O"),
            $"Rolls came in today or up to {MostYears} years ago.",
            $"{today.AddYears(-MostYears):O} to {today:O}");
        return null;
    }

    private static List<(long AtNm, long LengthNm)> FlawsIn(
        RequestObject root, long? rollNm, int count)
    {
        var read = root.OptionalObjects("flaws", MostFlaws);
        if (read.Count > 0 && count > 1)
        {
            root.Wrong(
                "count", "one-roll", $"{count}",
                "A flaw lies on one roll: send rolls with flaws one at a time.", "1", "rolls");
        }

        var flaws = new List<(long AtNm, long LengthNm)>();
        var sound = 0L;
        foreach (var place in read)
        {
            var at = place.Length("at")?.Nanometres;
            var length = place.OptionalLength("length")?.Nanometres ?? 0;
            place.Close();
            if (at is null || rollNm is null)
            {
                continue;
            }

            if (at < sound || length < 0 || at + length > rollNm)
            {
                place.Wrong(
                    "at", "flaw-place", Words.Length(Math.Abs(at.Value)),
                    "Flaws lie on the roll, from its outer end on, one behind the other.",
                    $"{Words.Length(sound)} to {Words.Length(rollNm.Value)}");
                continue;
            }

            flaws.Add((at.Value, length));
            sound = at.Value + length;
        }

        return flaws;
    }

    private static long? Positive(RequestObject root, string name, long? lengthNm)
    {
        if (lengthNm is null or (> 0 and <= LongestNm))
        {
            return lengthNm;
        }

        root.Wrong(
            name, "range", Words.Length(Math.Abs(lengthNm.Value)),
            "A roll is more than 0 and at most 1000 m long and wide.", "1000", "m");
        return null;
    }
}
