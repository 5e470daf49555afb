using PostFrame.Benchmarks;

return args switch
{
    ["cutting", .. var rest] => CuttingBenchmark.Run(rest),
    ["host", .. var rest] => HostBenchmark.Run(rest),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("Usage: dotnet run -c Release --project tests/Benchmarks -- COMMAND …");
    Console.Error.WriteLine("  cutting FOLDER --seconds N [--csv FILE]   cutting plans, folder of instances");
    Console.Error.WriteLine("  host [EXAMPLES]   the running product: start, memory, sizing, orders");
    return 2;
}
