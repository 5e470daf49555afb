namespace PostFrame.Benchmarks;

/// <summary>Plans every instance of a folder and reports bound, rolls, proof and time.</summary>
internal static class CuttingBenchmark
{
    public static int Run(string[] arguments)
    {
        Console.Error.WriteLine($"Not measured yet: {string.Join(' ', arguments)}");
        return 1;
    }
}
