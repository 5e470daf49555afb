using System.Text.Json;
using PostFrame.CuttingWorker.Planning;

namespace PostFrame.Benchmarks;

/// <summary>
/// A shop's shift: buildings with their pieces, roll types and remnants, by width.
/// </summary>
internal sealed record ShopBatch(
    IReadOnlyList<ShopBatch.Building> Buildings,
    IReadOnlyList<(string Width, StockType Roll)> Rolls,
    IReadOnlyList<(string Width, StockType Remnant)> Remnants,
    long MinUsefulOffcutNm)
{
    private const long HalfInchNm = 12_700_000;

    public sealed record Building(
        string Id, int DueDay, string Width, IReadOnlyList<(long LengthNm, int Count)> Pieces);

    public IEnumerable<string> Widths => Rolls.Select(r => r.Width).Distinct();

    public static ShopBatch Read(string text)
    {
        using var document = JsonDocument.Parse(text);
        var root = document.RootElement;
        var trim = root.GetProperty("end_trim_half_in_per_roll").GetInt64() * HalfInchNm;
        return new ShopBatch(
            [.. root.GetProperty("buildings").EnumerateArray().Select(b => new Building(
                b.GetProperty("id").GetString()!,
                b.GetProperty("due_day").GetInt32(),
                b.GetProperty("width").GetString()!,
                [.. b.GetProperty("pieces").EnumerateArray()
                    .Select(p => (Nm(p, "length_half_in"), p.GetProperty("qty").GetInt32()))]))],
            [.. root.GetProperty("roll_types").EnumerateArray().Select(r => (
                r.GetProperty("width").GetString()!,
                new StockType
                {
                    Key = $"{r.GetProperty("length_half_in").GetInt64() / 24} ft",
                    LengthNm = Nm(r, "length_half_in"),
                    EndTrimNm = trim,
                    Cost = r.GetProperty("cost_cents").GetInt64(),
                }))],
            [.. root.GetProperty("remnants").EnumerateArray().Select(r => (
                r.GetProperty("width").GetString()!,
                new StockType
                {
                    Key = r.GetProperty("id").GetString()!,
                    LengthNm = Nm(r, "length_half_in"),
                    EndTrimNm = trim,
                    Count = 1,
                    Cost = 0,
                    IsRemnant = true,
                }))],
            Nm(root, "min_useful_offcut_half_in"));
    }

    /// <summary>
    /// Per width, pooled: 100 ft rolls alone, then every roll length with the remnants.
    /// </summary>
    public IReadOnlyList<(string Suffix, CuttingProblem Problem)> Problems() =>
        [.. Widths.SelectMany(w => new[]
        {
            ($"/{w}/100ft", Problem(w, Buildings, one: true)),
            ($"/{w}/all", Problem(w, Buildings, one: false)),
        })];

    public CuttingProblem Problem(string width, IEnumerable<Building> buildings, bool one) => new()
    {
        Items = [.. buildings.Where(b => b.Width == width).SelectMany(b => b.Pieces
            .Select((p, k) => new CuttingItem($"{b.Id}-{k + 1}", p.LengthNm, p.Count)))],
        Stock = one
            ? [.. Rolls.Where(r => r.Width == width && r.Roll.Key == "100 ft")
                .Select(r => r.Roll with { Cost = 1 })]
            : [.. Rolls.Where(r => r.Width == width).Select(r => r.Roll),
                .. Remnants.Where(r => r.Width == width).Select(r => r.Remnant)],
        MinUsefulOffcutNm = MinUsefulOffcutNm,
    };

    private static long Nm(JsonElement element, string name) =>
        element.GetProperty(name).GetInt64() * HalfInchNm;
}
