using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>The working of a line, season by season, and of its moisture.</summary>
internal static class WriteWorking
{
    private const string Iso13788 = "ISO 13788:2012 clause 6";

    public static IReadOnlyList<WorkingLine> Of(
        Assembly built, AssemblyHeat winter, AssemblyHeat summer, MoistureFinding? moisture,
        Setting setting) =>
    [
        .. AssemblyWorking.Of(built, winter).Select(step => Line("winter", step)),
        SolAirLine(setting),
        .. AssemblyWorking.Of(built, summer).Select(step => Line("summer", step)),
        .. moisture is null ? [] : MoistureLines(moisture, setting),
    ];

    private static WorkingLine SolAirLine(Setting setting)
    {
        var summer = setting.Site.Summer;
        return new(
            "summer", "sol-air temperature", "t = t_out + (α/ho)·I − ε·ΔR/ho",
            [
                new("t_out", Sig(setting.SummerAirTemperature.TotalCelsius), "°C"),
                new("α/ho", SolAir.AbsorptanceOverHo(
                    setting.Input.Colour ?? SurfaceColour.Medium), "m²·K/W"),
                new("ε·ΔR/ho", setting.Input.IsWall ? 0 : SolAir.FlatSkyKelvins, "K"),
            ],
            Sig(summer.Outside.TotalCelsius), "°C", "ASHRAE HoF 2021 ch. 18", "M");
    }

    private static IEnumerable<WorkingLine> MoistureLines(
        MoistureFinding moisture, Setting setting)
    {
        var winter = setting.RealSite.Winter;
        yield return new(
            "moisture", "room face starts to drip at", "φ = psat(t_face)/psat(t_room)",
            [new("t_room", Sig(winter.Room.TotalCelsius), "°C")],
            Sig(100 * moisture.AtDesign.RoomFaceRh), "% RH", "ISO 13788:2012 equations E.7, E.8",
            "R");
        if (moisture.AtDesign.HiddenRh is { } hidden)
            yield return new(
                "moisture", $"wets {moisture.AtDesign.HiddenPlace} from",
                "p_room = p_out + (psat − p_out)·Sd/(Sd − sd)",
                [new("psat(t_room)", Sig(Vapour.Saturation(winter.Room)), "Pa")],
                Sig(100 * hidden), "% RH", Iso13788 + ", solved for the room", "C");
        foreach (var month in moisture.Year.Months)
            yield return new(
                "moisture", $"month {month.Month}: condensed, negative dried",
                "g = δ₀·(Δp/Δsd)_in − δ₀·(Δp/Δsd)_out, over the month",
                [
                    new("t_out", Sig(month.Outdoors.TotalCelsius), "°C"),
                    new("t_room", Sig(month.Room.TotalCelsius), "°C"),
                    new("φ_room", Sig(100 * month.RoomRh), "% RH"),
                    new("δ₀", Vapour.StillAirPermeability, "kg/(m·s·Pa)"),
                ],
                Sig(month.ChangeGPerM2), "g/m²", Iso13788, "R");
    }

    private static WorkingLine Line(string part, WorkingStep step) => new(
        part, step.Quantity, step.Formula,
        [.. step.Inputs.Select(i => new WorkingInputLine(i.Symbol, Sig(i.Value), i.Unit))],
        Sig(step.Value), step.Unit, step.Source, step.Mark);

    /// <summary>Five significant digits: enough to follow with a pencil.</summary>
    private static double Sig(double value)
    {
        if (value == 0 || !double.IsFinite(value)) return 0;
        var digits = 4 - (int)Math.Floor(Math.Log10(Math.Abs(value)));
        return digits is >= 0 and <= 15 ? Math.Round(value, digits) : value;
    }
}
