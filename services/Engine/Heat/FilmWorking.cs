namespace PostFrame.Engine.Heat;

/// <summary>The working of both films of a solved assembly.</summary>
internal static class FilmWorking
{
    public const string AshraeSource = "ASHRAE HoF 2021 (SI) ch. 26 Table 10";
    public const string IsoSource = "ISO 6946:2017 Table 7 and Annex C";
    private const string R = "m²·K/W";
    private const string HeatTransfer = "W/(m²·K)";

    /// <summary>Room film, outside film; cut where a ventilated space ends the section.</summary>
    public static IEnumerable<WorkingStep> Of(Assembly assembly, AssemblyHeat heat, bool isCut)
    {
        foreach (var step in Inside("room film", heat, assembly.RoomEmittance, "Rsi"))
            yield return step;
        if (assembly.RoomEmittanceAtFraming is { } wood && wood != assembly.RoomEmittance)
            foreach (var step in Inside("room film of the members", heat, wood, "Rsi"))
                yield return step;
        if (isCut)
        {
            // Still air there has the film of a room face.
            foreach (var step in Inside(
                "outside film, still air of the ventilated space", heat, 0.9, "Rse"))
                yield return step with
                {
                    Source = step.Source + "; ISO 6946:2017 clause 6.9.4, from memory",
                    Mark = "M",
                };
            yield break;
        }
        var outside = heat.Profile[^2].ToNext.TotalSi;
        yield return IsIso(heat)
            ? new("outside film", "as tabulated", [], outside, R, IsoSource, "R")
            : new(
                "outside film", "Rse = 1/h",
                [new("h", 1 / outside, HeatTransfer)], outside, R,
                AshraeSource + (heat.Conditions.Season == Season.Winter
                    ? ", wind 6.7 m/s" : ", wind 3.4 m/s"),
                "R");
    }

    /// <summary>A coefficient between two printed slopes.</summary>
    public static WorkingStep Between(
        string quantity, FlowDirection flow, Func<HeatFlow, double> printed, string source) => new(
            quantity, "h = (1 − s)·h_flatter + s·h_steeper, s = (slope − flatter)/45",
            [
                new("slope", flow.SlopeDegrees, "°"),
                new("flatter", FlowDirection.SlopeOf(flow.Flatter), "°"),
                new("h_flatter", printed(flow.Flatter), HeatTransfer),
                new("h_steeper", printed(flow.Steeper), HeatTransfer),
            ],
            flow.Between(printed), HeatTransfer,
            source + ", straight over the slope between its printed directions (own)", "D");

    private static IEnumerable<WorkingStep> Inside(
        string name, AssemblyHeat heat, double emittance, string symbol)
    {
        var flow = heat.Direction;
        var basis = heat.Conditions.Basis;
        var r = Films.Inside(basis, flow, emittance).TotalSi;
        var words = $"{name}, heat {AssemblyWorking.Words(flow)}";
        if (IsIso(heat))
        {
            var isOrdinary = emittance >= Films.IsoOrdinaryEmittance;
            yield return new(
                words,
                isOrdinary ? "as tabulated" : $"{symbol} = 1/(hc + ε·4σT³), T = 293.15 K",
                isOrdinary
                    ? [new("ε", emittance, "")]
                    :
                    [
                        new("ε", emittance, ""),
                        new("hc", Films.IsoConvection(flow.Nearest), HeatTransfer),
                    ],
                r, R,
                IsoSource + ": up or down to 60° of slope, sideways above, with a step there", "R");
            yield break;
        }
        double Printed(HeatFlow printed) => Films.AshraeConductance(printed, emittance);
        foreach (var printed in flow.Printed)
        {
            var (low, high) = Films.AshraeAround(printed, emittance);
            yield return new(
                $"{name}: coefficient, heat {AssemblyWorking.Words(printed)}",
                "h = h₁ + (h₂ − h₁)·(ε − ε₁)/(ε₂ − ε₁)",
                [
                    new("ε", emittance, ""),
                    new("ε₁", low.Emittance, ""), new("h₁", low.H, HeatTransfer),
                    new("ε₂", high.Emittance, ""), new("h₂", high.H, HeatTransfer),
                ],
                Printed(printed), HeatTransfer, AshraeSource, "R");
        }
        if (!flow.IsPrinted)
            yield return Between(
                $"{name}: coefficient, heat {AssemblyWorking.Words(flow)}", flow, Printed,
                AshraeSource);
        yield return new(
            words, $"{symbol} = 1/h", [new("h", 1 / r, HeatTransfer)], r, R, AshraeSource,
            flow.IsPrinted ? "R" : "D");
    }

    private static bool IsIso(AssemblyHeat heat) =>
        heat.Conditions.Basis == CalculationBasis.Iso6946;
}
