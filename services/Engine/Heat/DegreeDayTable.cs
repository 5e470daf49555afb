namespace PostFrame.Engine.Heat;

/// <summary>A station's heating degree days [°F·d] to four bases.</summary>
/// <param name="To65F">To 65 °F.</param>
/// <param name="To60F">To 60 °F.</param>
/// <param name="To55F">To 55 °F.</param>
/// <param name="To50F">To 50 °F.</param>
public sealed record DegreeDayTable(double To65F, double To60F, double To55F, double To50F)
{
    /// <summary>
    /// Degree days [K·d] to a balance point [°F], 50 to 65: straight between the bases. The balance
    /// point is the room temperature less what people, machines and sun heat for nothing; it
    /// matters more than any precision of the insulation. HDD(K·d) = HDD(°F·d)/1.8, without the 32.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 50 to 65 °F.</exception>
    public double ToBalancePointK(double balanceF)
    {
        Limits.Check(balanceF, 50, 65, "°F; beyond, give the degree days", nameof(balanceF));
        double[] values = [To50F, To55F, To60F, To65F];
        var place = (balanceF - 50) / 5;
        var below = Math.Min(2, (int)place);
        return (values[below] + (values[below + 1] - values[below]) * (place - below)) / 1.8;
    }
}
