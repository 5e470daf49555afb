namespace PostFrame.Problems;

/// <summary>The names of an enumeration on the wire: as in code, first letter small.</summary>
public static class WireNames<T>
    where T : struct, Enum
{
    private static readonly T[] Values = Enum.GetValues<T>();

    private static readonly string[] Names =
        [.. Values.Select(value => SmallFirst(value.ToString()))];

    public static ReadOnlySpan<string> All => Names;

    public static string Of(T value) => Names[Array.IndexOf(Values, value)];

    internal static T Parse(string name) => Values[Array.IndexOf(Names, name)];

    /// <summary>A name of one letter, such as the A of a side, stays as it is.</summary>
    private static string SmallFirst(string name) =>
        name.Length == 1 ? name : char.ToLowerInvariant(name[0]) + name[1..];
}
