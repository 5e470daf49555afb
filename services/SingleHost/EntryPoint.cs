namespace PostFrame.SingleHost;

/// <summary>Names this host to the tests that start it.</summary>
public sealed class EntryPoint
{
    private EntryPoint()
    {
    }
}
