namespace PostFrame.ServicesTests.Messaging;

/// <summary>A folder of one test, gone with it.</summary>
public sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } =
        Directory.CreateTempSubdirectory("postframe-test-").FullName;

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
