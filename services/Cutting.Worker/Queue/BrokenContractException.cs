namespace PostFrame.CuttingWorker.Queue;

/// <summary>A message says what its contract forbids; the text says what, for people.</summary>
internal sealed class BrokenContractException(string message) : InvalidOperationException(message);
