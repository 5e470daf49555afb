namespace PostFrame.OrdersApi.Orders;

/// <summary>
/// What the scanner reads: order, piece, and a check character, such as <c>4K-23A</c>. Written
/// with 32 characters that cannot be mistaken for each other: no O, 0, I or 1.
/// </summary>
internal static class PieceId
{
    public const string Alphabet = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ";
    private const int Radix = 32;

    public static string Of(long orderSeq, int pieceNumber)
    {
        var order = Written(orderSeq);
        var piece = Written(pieceNumber).PadLeft(2, Alphabet[0]);
        return $"{order}-{piece}{Check(order + piece)}";
    }

    /// <summary>Whether the last character fits the others: a misread one never does.</summary>
    public static bool IsSound(string id)
    {
        var characters = id.Replace("-", "", StringComparison.Ordinal);
        return characters.Length > 1
            && characters.All(Alphabet.Contains)
            && characters[^1] == Check(characters[..^1]);
    }

    private static string Written(long number)
    {
        var written = "";
        do
        {
            written = Alphabet[(int)(number % Radix)] + written;
            number /= Radix;
        }
        while (number > 0);
        return written;
    }

    /// <summary>
    /// The hybrid check of ISO/IEC 7064 (as in its MOD 37,36), carried over to 32 characters: from
    /// memory, held by a test that tries every single misreading.
    /// </summary>
    private static char Check(string characters)
    {
        var product = Radix;
        foreach (var character in characters)
        {
            var sum = (product + Alphabet.IndexOf(character, StringComparison.Ordinal)) % Radix;
            product = (sum == 0 ? Radix : sum) * 2 % (Radix + 1);
        }

        return Alphabet[(Radix + 1 - product) % Radix];
    }
}
