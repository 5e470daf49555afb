using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.TakeOff;

/// <summary>One allowance of a piece end: what it adds, in words, and by whose word.</summary>
internal sealed record Allowance(string Term, string Text, Length Value, string Mark);
