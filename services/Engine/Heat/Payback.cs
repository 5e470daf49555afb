namespace PostFrame.Engine.Heat;

/// <summary>Simple payback of a dearer option against a cheaper one.</summary>
/// <param name="ExtraCost">What it costs more.</param>
/// <param name="YearlySaving">What it saves a year, in the same money.</param>
/// <param name="Years">The quotient; null when there is none.</param>
/// <param name="Text">In words.</param>
public sealed record Payback(double ExtraCost, double YearlySaving, double? Years, string Text)
{
    /// <summary>Compares two options by price and yearly fuel cost.</summary>
    /// <param name="extraCost">Price of the option less price of the other.</param>
    /// <param name="yearlySaving">Fuel cost of the other less fuel cost of the option.</param>
    /// <param name="heated">False for a building nothing heats.</param>
    public static Payback Of(double extraCost, double yearlySaving, bool heated)
    {
        if (!heated)
            return new(extraCost, 0, null,
                "Nothing heats this building, so insulation saves no fuel. Its use is against "
                + "dripping and summer heat.");
        if (extraCost <= 0)
            return new(extraCost, yearlySaving, 0, yearlySaving >= 0
                ? "It costs no more and loses no more heat."
                : "It costs no more, but uses more fuel every year.");
        if (yearlySaving <= 0)
            return new(extraCost, yearlySaving, null, "It costs more and saves no fuel.");
        var years = extraCost / yearlySaving;
        return new(extraCost, yearlySaving, years, FormattableString.Invariant(
            $"Pays for itself in about {years:0.#} years at today's fuel price; savings vary."));
    }
}
