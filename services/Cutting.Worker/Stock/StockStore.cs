using System.Globalization;
using PostFrame.Messaging;

namespace PostFrame.CuttingWorker.Stock;

/// <summary>The rack: rolls received and offcuts kept.</summary>
internal static class StockStore
{
    public const string Roll = "roll";
    public const string Offcut = "offcut";

    private const string Columns =
        """
        s.stock_id AS StockId, s.kind AS Kind, s.product AS Product, s.width_nm AS WidthNm,
        s.length_nm AS LengthNm, s.end_trim_nm AS EndTrimNm, s.lot AS Lot,
        s.part_of AS PartOf, s.starts_nm AS StartsNm, s.received_at AS ReceivedAt,
        r.roll_id AS RollId
        """;

    private const string SelectRack =
        $"""
        SELECT {Columns}
        FROM stock s LEFT JOIN roll r ON r.stock_id = s.stock_id
        WHERE s.used_at IS NULL
        ORDER BY s.product, s.width_nm, s.received_at, length(s.stock_id),
          s.stock_id LIMIT @most
        """;

    /// <summary>
    /// What lies on the rack, oldest first; with a roll id where a plan has taken it.
    /// </summary>
    public static IReadOnlyList<StockRow> Rack(StoreTransaction view, int most) =>
        view.All<StockRow>(SelectRack, new { most });

    private const string SelectFree =
        $"""
        SELECT {Columns}
        FROM stock s LEFT JOIN roll r ON r.stock_id = s.stock_id
        WHERE s.used_at IS NULL AND (r.roll_id IS NULL OR r.roll_id IN @released)
        ORDER BY s.product, s.width_nm, s.received_at, length(s.stock_id), s.stock_id
        """;

    /// <summary>What a plan may take, counting what the rolls let go hold.</summary>
    public static IReadOnlyList<StockRow> Free(
        StoreTransaction view, IReadOnlyList<long> released) =>
        view.All<StockRow>(SelectFree, new { released });

    private const string SelectOne =
        $"""
        SELECT {Columns}
        FROM stock s LEFT JOIN roll r ON r.stock_id = s.stock_id WHERE s.stock_id = @id
        """;

    public static StockRow Find(StoreTransaction view, string id) =>
        view.Single<StockRow>(SelectOne, new { id })!;

    private const string CountStock = "SELECT count(*) FROM stock";

    private const string Insert =
        """
        INSERT INTO stock (stock_id, kind, product, width_nm, length_nm, end_trim_nm, lot,
                           from_roll, part_of, starts_nm, received_at)
        VALUES (@id, @kind, @Product, @WidthNm, @LengthNm, @EndTrimNm, @Lot, @FromRoll, @PartOf,
                @StartsNm, @receivedAt)
        """;

    /// <summary>An id nothing on the rack ever had.</summary>
    public static string NextId(StoreTransaction transaction, string kind) => string.Create(
        CultureInfo.InvariantCulture,
        $"{kind.ToUpperInvariant()}-{transaction.Single<long>(CountStock) + 1}");

    /// <summary>Puts one roll or offcut on the rack.</summary>
    public static void Add(
        StoreTransaction transaction, string id, string kind, NewStock stock) =>
        transaction.Execute(Insert, new
        {
            id,
            kind,
            stock.Product,
            stock.WidthNm,
            stock.LengthNm,
            stock.EndTrimNm,
            stock.Lot,
            stock.FromRoll,
            stock.PartOf,
            stock.StartsNm,
            receivedAt = stock.ReceivedAtUnixMs ?? transaction.NowUnixMs,
        });

    private const string SetUsed = "UPDATE stock SET used_at = @now WHERE stock_id = @id";

    public static void Used(StoreTransaction transaction, string id) =>
        transaction.Execute(SetUsed, new { id, now = transaction.NowUnixMs });

    private const string SelectOffcut = "SELECT stock_id FROM stock WHERE from_roll = @rollId";

    /// <summary>The offcut a roll left, or null.</summary>
    public static string? OffcutOf(StoreTransaction view, long rollId) =>
        view.Single<string>(SelectOffcut, new { rollId });
}

internal sealed record NewStock
{
    public required string Product { get; init; }

    public required long WidthNm { get; init; }

    public required long LengthNm { get; init; }

    public required long EndTrimNm { get; init; }

    public string? Lot { get; init; }

    /// <summary>The roll an offcut comes from; null for a roll as received.</summary>
    public long? FromRoll { get; init; }

    /// <summary>The roll with a flaw that this is a sound part of.</summary>
    public string? PartOf { get; init; }

    /// <summary>Where on that roll the part begins [nm].</summary>
    public long? StartsNm { get; init; }

    /// <summary>Null for now.</summary>
    public long? ReceivedAtUnixMs { get; init; }
}

internal sealed record StockRow
{
    public required string StockId { get; init; }

    public required string Kind { get; init; }

    public required string Product { get; init; }

    public required long WidthNm { get; init; }

    public required long LengthNm { get; init; }

    public required long EndTrimNm { get; init; }

    public required string? Lot { get; init; }

    public required string? PartOf { get; init; }

    public required long? StartsNm { get; init; }

    public required long ReceivedAt { get; init; }

    public required long? RollId { get; init; }
}
