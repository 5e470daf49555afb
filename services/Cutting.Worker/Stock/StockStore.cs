using System.Globalization;
using PostFrame.Messaging;

namespace PostFrame.CuttingWorker.Stock;

/// <summary>The rack: rolls received and offcuts kept.</summary>
internal static class StockStore
{
    private const string Columns =
        """
        s.stock_id AS StockId, s.kind AS Kind, s.product AS Product, s.width_nm AS WidthNm,
        s.length_nm AS LengthNm, s.end_trim_nm AS EndTrimNm, s.lot AS Lot,
        s.received_at AS ReceivedAt, r.roll_id AS RollId
        """;

    private const string SelectRack =
        $"""
        SELECT {Columns}
        FROM stock s LEFT JOIN roll r ON r.stock_id = s.stock_id
        WHERE s.used_at IS NULL
        ORDER BY s.product, s.width_nm, s.received_at, s.stock_id LIMIT @most
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
        ORDER BY s.product, s.width_nm, s.received_at, s.stock_id
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
                           from_roll, received_at)
        VALUES (@id, @kind, @product, @widthNm, @lengthNm, @endTrimNm, @lot, @fromRoll, @now)
        """;

    /// <summary>Puts one roll or offcut on the rack; answers the id for its label.</summary>
    public static string Add(StoreTransaction transaction, NewStock stock)
    {
        var number = transaction.Single<long>(CountStock) + 1;
        var id = (stock.FromRoll is null ? "ROLL-" : "OFFCUT-")
            + number.ToString(CultureInfo.InvariantCulture);
        transaction.Execute(Insert, new
        {
            id,
            kind = stock.FromRoll is null ? "roll" : "offcut",
            product = stock.Product,
            widthNm = stock.WidthNm,
            lengthNm = stock.LengthNm,
            endTrimNm = stock.EndTrimNm,
            lot = stock.Lot,
            fromRoll = stock.FromRoll,
            now = transaction.NowUnixMs,
        });
        return id;
    }

    private const string SelectLot = "SELECT lot FROM stock WHERE stock_id = @id";

    public static string? LotOf(StoreTransaction view, string id) =>
        view.Single<string>(SelectLot, new { id });

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

    public required long ReceivedAt { get; init; }

    public required long? RollId { get; init; }
}
