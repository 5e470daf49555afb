using System.Globalization;
using System.Reflection;
using System.Text.RegularExpressions;
using Dapper;
using Microsoft.Data.Sqlite;

namespace PostFrame.Messaging;

/// <summary>
/// Brings a store to the newest schema: our own tables first, then the service's. Each numbered
/// file runs once, in a transaction together with the note that it ran.
/// </summary>
internal static partial class Migrations
{
    private const string Notes =
        """
        CREATE TABLE IF NOT EXISTS migration (
          owner  TEXT    NOT NULL,
          number INTEGER NOT NULL,
          ran_at INTEGER NOT NULL,
          PRIMARY KEY (owner, number)
        ) STRICT
        """;

    private const string Newest =
        "SELECT coalesce(max(number), 0) FROM migration WHERE owner = @owner";

    private const string Note =
        "INSERT INTO migration (owner, number, ran_at) VALUES (@owner, @number, @now)";

    public static void Bring(
        SqliteConnection connection, string path, Assembly service, TimeProvider time)
    {
        connection.Execute("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;");
        connection.Execute(Notes);
        Bring(connection, path, "messaging", typeof(Migrations).Assembly, time);
        Bring(connection, path, "service", service, time);
    }

    private static void Bring(
        SqliteConnection connection, string path, string owner, Assembly assembly,
        TimeProvider time)
    {
        var files = FilesOf(assembly);
        var done = connection.ExecuteScalar<long>(Newest, new { owner });
        if (done > files.Count)
        {
            throw new InvalidOperationException(
                $"{path} was written by a newer version (schema {done}, this version knows "
                + $"{files.Count}). Run that version, or restore a copy made before it.");
        }

        foreach (var (number, sql) in files.Skip((int)done))
        {
            using var transaction = connection.BeginTransaction();
            connection.Execute(sql, transaction: transaction);
            connection.Execute(
                Note,
                new { owner, number, now = time.GetUtcNow().ToUnixTimeMilliseconds() },
                transaction);
            transaction.Commit();
        }
    }

    private static List<(int Number, string Sql)> FilesOf(Assembly assembly)
    {
        var files = assembly.GetManifestResourceNames()
            .Select(name => (Name: name, Match: NumberedSql().Match(name)))
            .Where(file => file.Match.Success)
            .Select(file => (
                Number: int.Parse(file.Match.Groups[1].ValueSpan, CultureInfo.InvariantCulture),
                Sql: TextOf(assembly, file.Name)))
            .OrderBy(file => file.Number)
            .ToList();
        for (var n = 0; n < files.Count; n++)
        {
            if (files[n].Number != n + 1)
            {
                throw new InvalidOperationException(
                    $"{assembly.GetName().Name}: the migrations are not numbered 001, 002, … "
                    + $"without gap or double; found {files[n].Number} in place {n + 1}.");
            }
        }

        return files;
    }

    private static string TextOf(Assembly assembly, string name)
    {
        using var reader = new StreamReader(assembly.GetManifestResourceStream(name)!);
        return reader.ReadToEnd();
    }

    [GeneratedRegex(@"\.([0-9]{3})\.sql$")]
    private static partial Regex NumberedSql();
}
