namespace PostFrame.Problems;

/// <summary>The accepted word a misspelt one most likely stands for.</summary>
internal static class NearName
{
    private const int LongestCompared = 40;

    /// <summary>The nearest word within about a third of its letters, or null.</summary>
    public static string? Of(string given, IEnumerable<string> accepted)
    {
        if (given.Length is 0 or > LongestCompared)
        {
            return null;
        }

        var nearest = accepted
            .Select(word => (word, distance: Distance(
                given.ToUpperInvariant(), word.ToUpperInvariant())))
            .OrderBy(pair => pair.distance).ThenBy(pair => pair.word, StringComparer.Ordinal)
            .FirstOrDefault((word: "", distance: int.MaxValue));
        return nearest.distance <= Math.Max(1, nearest.word.Length / 3) ? nearest.word : null;
    }

    /// <summary>Insertions, deletions, substitutions and swaps of neighbours.</summary>
    private static int Distance(string a, string b)
    {
        var cost = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
        {
            cost[i, 0] = i;
        }

        for (var j = 0; j <= b.Length; j++)
        {
            cost[0, j] = j;
        }

        for (var i = 1; i <= a.Length; i++)
        {
            for (var j = 1; j <= b.Length; j++)
            {
                var best = Math.Min(cost[i - 1, j], cost[i, j - 1]) + 1;
                best = Math.Min(best, cost[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1));
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    best = Math.Min(best, cost[i - 2, j - 2] + 1);
                }

                cost[i, j] = best;
            }
        }

        return cost[a.Length, b.Length];
    }
}
