using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;
using PostFrame.Problems;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>
/// Engine results as they go over the wire; rounding happens here and nowhere before.
/// </summary>
internal static class WriteHeat
{
    private const double WPerM2PerBtu = 3.154591;

    public static double Rounded(double value, int decimals)
    {
        var rounded = Math.Round(value, decimals, MidpointRounding.AwayFromZero);
        return rounded == 0 ? 0 : rounded;
    }

    public static SeasonBody Season(AssemblyHeat heat) => new(
        Rounded(heat.R.TotalRValue, 2),
        Rounded(heat.R.TotalSi, 3),
        Rounded(heat.U.TotalUFactor, 4),
        Rounded(heat.U.TotalSi, 4),
        AssemblyWorking.Words(heat.Direction),
        MethodOf(heat),
        Rounded(heat.FluxWPerM2 / WPerM2PerBtu, 2),
        Rounded(heat.FluxWPerM2, 2),
        Rounded(heat.RoomFace.TotalFahrenheit, 1),
        Percent(heat.RoomFaceRadiantShare),
        heat.AirSpaces is [var first, ..] ? Rounded(100 * first.Heat.RadiantShare, 0) : null,
        heat.AirSpaces.Count == 0 ? null : [.. heat.AirSpaces.Select(Space)]);

    /// <summary>Heat through an assembly of this U in one season [W/m²], outwards.</summary>
    public static double Flux(ThermalTransmittance u, Conditions at) =>
        u.TotalSi * at.Room.KelvinsAbove(at.Outside);

    public static DulledLine Dulled(DulledFaces faces, DripFinding? drip, Setting setting)
    {
        var (words, isUnheated) = (setting.Words, setting.IsUnheated);
        var isWet = faces.State == SurfaceFinish.WetFoil;
        var drips = isWet && !isUnheated && drip is { WorstFaceRh: >= 0.999, WorstMonth: { } month }
            ? $" The room face drips in an average {Conclusions.MonthOf(month)}: then it counts."
            : "";
        return new(
            WireNames<SurfaceFinish>.Of(faces.State),
            Rounded(faces.Emittance, 2),
            Rounded(faces.Winter.R.TotalRValue, 2),
            Rounded(faces.Summer.R.TotalRValue, 2),
            FormattableString.Invariant(
                $"With {(isWet ? "clear water or dust" : "dew just visible")} on the bright ")
            + FormattableString.Invariant($"faces (emittance {faces.Emittance:0.00}) it is ")
            + (isUnheated ? "" : $"{words.Of(faces.Winter.R)} in winter, ")
            + $"{words.Of(faces.Summer.R)} in summer."
            + drips);
    }

    public static TestedLine Tested(TestedAssembly tested, Setting setting) => new(
        Rounded(tested.U.TotalUFactor, 4),
        Rounded(tested.U.ToResistance().TotalRValue, 2),
        Rounded(Flux(tested.U, setting.RealSite.Winter) / WPerM2PerBtu, 2),
        Rounded(Flux(tested.U, setting.Site.Summer) / WPerM2PerBtu, 2),
        tested.System,
        tested.RatedInsulation,
        $"ASHRAE 90.1 Table {tested.Table}",
        tested.Read ? "R" : "M",
        "A tested value of the whole assembly, films included, for every season"
            + (tested.Read ? "." : "; from memory, look it up.")
            + (tested.Corroboration.Length > 0 ? $" Borne out by: {tested.Corroboration}." : ""));

    public static MoistureBody Moisture(MoistureFinding finding)
    {
        var year = finding.Year;
        return new(
            WireNames<MoistureVerdict>.Of(year.Verdict),
            finding.Text,
            Rounded(year.PeakGPerM2, 1),
            Rounded(year.CarriedOverGPerM2, 1),
            year.Place,
            finding.Class is { } @class ? @class.ToString() : null,
            finding.AtDesign.HiddenRh is { } hidden ? Percent(hidden) : null,
            finding.AtDesign.HiddenPlace,
            finding.UnderSky is { } sky
                ? new(Rounded(sky.PeakGPerM2, 1), Rounded(sky.CarriedOverGPerM2, 1))
                : null,
            new(
                finding.ColdestMonth,
                CondensesGPerM2Day(finding),
                [.. finding.Interfaces.Select(at => new InterfaceLine(
                    at.Place,
                    Rounded(at.At.TotalFahrenheit, 1),
                    Rounded(at.SaturationPa, 0),
                    Rounded(at.PressurePa, 0),
                    Rounded(at.DewPoint.TotalFahrenheit, 1),
                    at.IsFrost))]),
            [.. year.Months.Select(month => new MoistureMonthLine(
                month.Month,
                Rounded(month.Outdoors.TotalFahrenheit, 1),
                Rounded(month.Room.TotalFahrenheit, 1),
                Percent(month.RoomRh),
                Percent(month.RoomFaceRh),
                Rounded(month.ChangeGPerM2, 1),
                Rounded(month.HeldGPerM2, 1)))],
            [.. finding.Cures.Select(cure => new CureLine(
                cure.Id, cure.Text, cure.Cures,
                cure.Year is { } then ? Rounded(then.PeakGPerM2, 1) : null,
                cure.Year is { } after ? Rounded(after.CarriedOverGPerM2, 1) : null,
                cure.Perm, cure.RoomRh is { } rh ? Percent(rh) : null))]);
    }

    private static double CondensesGPerM2Day(MoistureFinding finding) => Rounded(
        finding.ColdestFlow.NetCondensation * DiffusionState.GramsPerDay, 2);

    public static DripLine Drip(DripFinding finding, Setting setting)
    {
        var air = setting.RoomAir?.Design;
        return new(
            air is null || setting.IsUnheated || setting.IsWinterAssumed
                ? null
                : air.Rh > finding.OnsetRh,
            Percent(finding.OnsetRh),
            finding.ClearNightRh is { } night ? Percent(night) : null,
            finding.WorstMonth,
            finding.WorstFaceRh is { } worst ? Percent(worst) : null,
            setting.IsUnheated ? UnheatedDrip(finding) : HeatedDrip(finding, air, setting));
    }

    private static string HeatedDrip(
        DripFinding finding, AirState? air, Setting setting) =>
        (setting.IsWinterAssumed
            ? $"At {setting.Words.Of(setting.Site.Winter.Outside)} outdoors, which is assumed, the "
            : "At winter design the ")
        + FormattableString.Invariant(
            $"room face drips above {100 * finding.OnsetRh:0} % relative ")
        + "humidity"
        + (finding.ClearNightRh is { } rh
            ? FormattableString.Invariant($", under a clear night sky above {100 * rh:0} %.")
            : ".")
        + (air is null
            ? ""
            : FormattableString.Invariant($" The room is reckoned at {100 * air.Rh:0} % then, ")
                + (setting.IsWinterAssumed ? "which tells nothing until the winter is known."
                    : air.Rh > finding.OnsetRh ? "so it drips."
                    : finding.ClearNightRh is { } clear && air.Rh > clear
                        ? "so it drips on clear nights."
                        : "so it does not drip."));

    public static RoomAirBody? RoomAir(Setting setting) => setting.RoomAir is not { } air
        ? null
        : new(
            Rounded(air.Room.ColdExcessPa, 0),
            setting.Burner is { } burner ? Rounded(burner.WaterKgPerHour, 3) : null,
            setting.Burner is { } heater ? Rounded(heater.ExcessPa, 0) : null,
            new(
                Rounded(air.Design.Pa, 0), Percent(air.Design.Rh),
                Rounded(air.Design.DewPoint.TotalFahrenheit, 1), air.Design.IsFrost),
            air.Months.Count == 0
                ? null
                : [.. air.Months.Select(month => new AirMonthLine(
                    month.Outdoors.Month,
                    Rounded(month.Outdoors.Mean.TotalFahrenheit, 1),
                    Rounded(month.At.TotalFahrenheit, 1),
                    Rounded(month.Pa, 0),
                    Percent(month.Rh),
                    Rounded(month.DewPoint.TotalFahrenheit, 1),
                    month.IsFrost))],
            $"At winter design the room air is at {Percent(air.Design.Rh)} % relative humidity; "
                + $"a face colder than its {(air.Design.IsFrost ? "frost" : "dew")} point of "
                + $"{setting.Words.Of(air.Design.DewPoint)} "
                + (air.Design.IsFrost ? "gathers frost." : "is wetted."));

    private static string UnheatedDrip(DripFinding finding) =>
        "Nothing heats it: the room follows the outdoor air, and its face is as cold as that."
        + (finding.ClearNightRh is { } night
            ? FormattableString.Invariant($" Under a clear night it drips above {100 * night:0} ")
                + "% relative humidity."
            : "")
        + (finding is { WorstMonth: { } month, WorstFaceRh: { } rh }
            ? FormattableString.Invariant($" In an average {Conclusions.MonthOf(month)} the face ")
                + FormattableString.Invariant($"is at {100 * rh:0} %.")
            : "");

    public static CodeBody Code(CodeFinding finding) => new(
        WireNames<CodeVerdict>.Of(finding.Verdict),
        finding.Text,
        finding.Limit is { } limit ? Rounded(limit.TotalUFactor, 4) : null,
        finding.MarginU is { } margin ? Rounded(margin, 4) : null,
        MarkOf(finding.Row),
        finding.Row is { } from ? $"{from.Standard} {from.Edition}, {from.Table}" : null,
        finding.Notes);

    public static string? MarkOf(EnvelopeMinimum? row) => row switch
    {
        null => null,
        { IsCertain: true } => "R",
        { Read: true } => "R, edition inferred",
        _ => "M",
    };

    public static ClaimBody Claim(Candidate candidate, ClaimFinding finding) => new(
        candidate.ClaimedR,
        finding.Outcome is { } outcome ? WireNames<ClaimOutcome>.Of(outcome) : null,
        finding.Text,
        finding.MaterialMost is { } most ? Rounded(most.TotalRValue, 1) : null,
        finding.SystemWinter is { } winter ? Rounded(winter.TotalRValue, 1) : null,
        finding.SystemSummer is { } summer ? Rounded(summer.TotalRValue, 1) : null,
        finding.NotSaid);

    public static double Percent(double share) => Rounded(100 * share, 0);

    private static string MethodOf(AssemblyHeat heat) =>
        AssemblyWorking.Words(heat)
        + (heat.Capped ? ", limited to the part between members" : "")
        + (heat.AirSpaces.Count > 0 ? ", air spaces by iteration" : "");

    private static SpaceLine Space(SolvedAirSpace solved) => new(
        Rounded(solved.Heat.R.TotalRValue, 2),
        Rounded(solved.Space.ThicknessMm / 25.4, 2),
        Rounded(solved.Mean.TotalFahrenheit, 1),
        Rounded(solved.DifferenceKelvins * 1.8, 1),
        Rounded(solved.Space.EffectiveEmittance, 3),
        Percent(solved.Heat.RadiantShare),
        solved.Heat.Extrapolated);
}
