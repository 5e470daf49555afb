using PostFrame.ContractsTests.Tidy;

namespace PostFrame.ContractsTests.Served;

/// <summary>
/// A file of <c>contracts/</c> that is held equal to what the product serves. To write them anew
/// after a change that is meant, then read the difference before committing it:
/// <code>
/// CONTRACTS=write dotnet run --project tests/Contracts.Tests -- --filter-namespace '*Served'
/// </code>
/// </summary>
internal static class ContractFile
{
    private static readonly bool IsWriting =
        Environment.GetEnvironmentVariable("CONTRACTS") == "write";

    public static void Holds(string name, string served)
    {
        var path = Path.Combine(SourceTree.Root, "contracts", name);
        if (IsWriting)
        {
            File.WriteAllText(path, served);
            Assert.Skip($"wrote contracts/{name}");
        }

        Assert.True(File.Exists(path), $"contracts/{name} is missing");
        Assert.Equal(File.ReadAllText(path), served);
    }
}
