using PostFrame.Benchmarks;

return args switch
{
    ["cutting", .. var rest] => CuttingBenchmark.Run(rest),
    ["cutting-table", .. var rest] => CuttingTable.Run(rest),
    ["paper", .. var rest] => PaperBenchmark.Run(rest),
    ["host", .. var rest] => HostBenchmark.Run(rest),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("Usage: dotnet run -c Release --project tests/Benchmarks -- COMMAND …");
    Console.Error.WriteLine(
        "  cutting FOLDER --seconds N [--csv FILE] [--plot FILE]   plans for a folder");
    Console.Error.WriteLine(
        "  cutting-table CSV…   the table of one or several runs, shortest limit first");
    Console.Error.WriteLine("  paper   100 labels, a checklist, a flat map: time and size");
    Console.Error.WriteLine(
        "  host [EXAMPLES]   the running product: start, memory, sizing, orders");
    return 2;
}
