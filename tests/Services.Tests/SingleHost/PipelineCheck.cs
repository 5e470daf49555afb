using System.Text.Json.Nodes;
using Dapper;
using Microsoft.Data.Sqlite;

namespace PostFrame.ServicesTests.SingleHost;

/// <summary>
/// Reads every service's store after a run and says what must never be. It counts from intake's own
/// ledger against the workers' stores, never from logs.
/// </summary>
internal static class PipelineCheck
{
    /// <summary>Everything found wrong; nothing when all is well.</summary>
    public static IReadOnlyList<string> Violations(string folder)
    {
        using var orders = Open(folder, "orders");
        using var cutting = Open(folder, "cutting");
        using var labelling = Open(folder, "labelling");
        return
        [
            .. Sound(orders, "orders"), .. Sound(cutting, "cutting"),
            .. Sound(labelling, "labelling"),
            .. NothingLost(orders, cutting, labelling),
            .. NothingDoubled(orders, cutting, labelling),
            .. NothingInvented(orders, cutting, labelling),
            .. EveryPieceCutOnce(orders, cutting),
            .. LabelsFollowThePlan(cutting, labelling),
            .. NoRollGivesMoreThanItHas(cutting),
        ];
    }

    private static IEnumerable<string> Sound(SqliteConnection store, string name) =>
        store.Query<string>("PRAGMA integrity_check").Where(line => line != "ok")
            .Select(line => $"{name}.db is damaged: {line}");

    /// <summary>I1: every accepted order is done or parked.</summary>
    private static IEnumerable<string> NothingLost(
        SqliteConnection orders, SqliteConnection cutting, SqliteConnection labelling)
    {
        var planned = cutting.Query<string>(
            "SELECT order_number FROM cutting_order WHERE state = 'planned'").ToHashSet();
        var labelled = labelling.Query<(string Number, long Count)>(
            "SELECT order_number, label_count FROM label_set").ToDictionary();
        foreach (var order in orders.Query<(string Number, string State, long Pieces)>(
            "SELECT order_number, state, piece_count FROM orders"))
        {
            if (order.State == "parked")
            {
                continue;
            }

            if (order.State != "labelled")
            {
                yield return $"{order.Number} is neither done nor parked but {order.State}";
            }

            if (!planned.Contains(order.Number))
            {
                yield return $"{order.Number} has no plan";
            }

            if (!labelled.TryGetValue(order.Number, out var labels))
            {
                yield return $"{order.Number} has no labels";
            }
            else if (labels != order.Pieces)
            {
                yield return $"{order.Number} has {labels} labels for {order.Pieces} pieces";
            }
        }
    }

    /// <summary>I2, I6: one order per key and number, one label set, no id twice.</summary>
    private static IEnumerable<string> NothingDoubled(
        SqliteConnection orders, SqliteConnection cutting, SqliteConnection labelling)
    {
        foreach (var number in orders.Query<string>(
            "SELECT location FROM intake GROUP BY location HAVING count(*) > 1"))
        {
            yield return $"{number} was accepted under two keys";
        }

        foreach (var (number, count) in orders.Query<(string, long)>(
            """
            SELECT order_number, count(*) FROM orders JOIN history ON order_seq = orders.seq
            WHERE event IN ('accepted', 'labelled') GROUP BY order_number, event
            HAVING count(*) > CASE event WHEN 'accepted' THEN 1 ELSE labelled_plan END
            """))
        {
            yield return $"{number} was accepted or labelled {count} times";
        }

        foreach (var (number, count) in labelling.Query<(string, long)>(
            "SELECT order_number, count(*) FROM label_set "
                + "GROUP BY order_number HAVING count(*) > 1"))
        {
            yield return $"{number} has {count} label sets";
        }

        foreach (var (number, count) in cutting.Query<(string, long)>(
            """
            SELECT order_number, count(*) FROM cutting_order
            GROUP BY order_number HAVING count(*) > 1
            """))
        {
            yield return $"{number} stands {count} times in the cutting queue";
        }
    }

    /// <summary>I3: nothing is planned or labelled that intake never accepted.</summary>
    private static IEnumerable<string> NothingInvented(
        SqliteConnection orders, SqliteConnection cutting, SqliteConnection labelling)
    {
        var accepted = orders.Query<string>("SELECT order_number FROM orders").ToHashSet();
        return cutting.Query<string>("SELECT order_number FROM cutting_order")
            .Concat(labelling.Query<string>("SELECT order_number FROM label_set"))
            .Where(number => !accepted.Contains(number))
            .Select(number => $"{number} was never accepted");
    }

    /// <summary>The pieces issued and the pieces placed on rolls are the same.</summary>
    private static IEnumerable<string> EveryPieceCutOnce(
        SqliteConnection orders, SqliteConnection cutting)
    {
        var issued = orders.Query<string>(
            """
            SELECT piece_id FROM piece JOIN orders ON order_seq = orders.seq
            WHERE state <> 'parked'
            """).ToHashSet();
        var placed = cutting.Query<string>(
            "SELECT piece_id FROM piece WHERE roll_id IS NOT NULL").ToList();
        return issued.Except(placed).Select(id => $"piece {id} is on no roll")
            .Concat(placed.Except(issued).Select(id => $"piece {id} was never issued"))
            .Concat(placed.GroupBy(id => id).Where(same => same.Count() > 1)
                .Select(same => $"piece {same.Key} is on {same.Count()} rolls"));
    }

    /// <summary>I1: the label set is complete for the current plan, in its cutting order.</summary>
    private static IEnumerable<string> LabelsFollowThePlan(
        SqliteConnection cutting, SqliteConnection labelling)
    {
        var numbers = cutting.Query<(string Number, long Plan)>(
            "SELECT order_number, plan_number FROM cutting_order WHERE state = 'planned'")
            .ToDictionary();
        foreach (var (number, plan, summary) in labelling.Query<(string, long, string)>(
            "SELECT order_number, plan, summary FROM label_set"))
        {
            if (!numbers.TryGetValue(number, out var current))
            {
                continue;
            }

            if (plan != current)
            {
                yield return $"{number} has labels of plan {plan}; the current one is {current}";
            }

            var planned = cutting.Query<string>(
                """
                SELECT piece_id FROM piece JOIN roll USING (roll_id) JOIN plan USING (plan_id)
                WHERE order_number = @number AND voided_at IS NULL
                ORDER BY plan.product, plan.width_nm, plan_id, roll.number, sequence
                """, new { number });
            var labelled = JsonNode.Parse(summary)!.AsArray()
                .Select(label => (string)label!["pieceId"]!);
            if (!planned.SequenceEqual(labelled))
            {
                yield return $"the labels of {number} do not lie in its cutting order";
            }
        }
    }

    /// <summary>Trim, cuts, spoiled length and left-over are never more than the roll.</summary>
    private static IEnumerable<string> NoRollGivesMoreThanItHas(SqliteConnection cutting) =>
        cutting.Query<long>(
            """
            SELECT roll_id FROM roll LEFT JOIN piece USING (roll_id) GROUP BY roll_id
            HAVING end_trim_nm + spoiled_nm + left_over_nm + total(cut_nm) > roll_length_nm
            """)
            .Select(roll => $"roll {roll} gives more than it has")
            .Concat(cutting.Query<string>(
                """
                SELECT stock_id FROM stock JOIN roll USING (stock_id)
                WHERE length_nm < roll_length_nm
                   OR (used_at IS NULL AND finished_at IS NOT NULL)
                   OR (used_at IS NOT NULL AND finished_at IS NULL)
                """)
                .Select(stock => $"{stock} of the rack is not what its roll says"));

    private static Dictionary<string, long> ToDictionary(
        this IEnumerable<(string Number, long Count)> rows) =>
        rows.GroupBy(row => row.Number).ToDictionary(same => same.Key, same => same.First().Count);

    private static SqliteConnection Open(string folder, string service)
    {
        var store = new SqliteConnection(
            $"Data Source={Path.Combine(folder, service + ".db")};Pooling=False");
        store.Open();
        return store;
    }
}
