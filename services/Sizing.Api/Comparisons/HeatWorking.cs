using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>Opens the heat of a line: its seasons, tested value and radiant cut.</summary>
internal static class HeatWorking
{
    public static void Add(WorkingSheet sheet, RebuiltLine line, Setting setting)
    {
        if (line is { Built: { } built, Winter: { } winter, Summer: { } summer })
        {
            Winter(sheet, built, winter, line.RealWinter!, setting);
            Season(sheet, "summer", AssemblyWorking.Of(built, summer));
            foreach (var (cut, i) in line.Radiant.Select((cut, i) => (cut, i)))
                Radiant(
                    sheet, cut, built, cut.Season == PostFrame.Engine.Heat.Season.Winter
                        ? winter : summer, $"radiant/{i}/");
        }
        foreach (var (faces, i) in line.Dulled.Select((faces, i) => (faces, i)))
            Dulled(sheet, line.Built!, faces, $"dulled/{i}/");
        if (line.Tested is { } tested) Tested(sheet, tested, setting);
    }

    /// <summary>
    /// R is rated with a difference; where nothing heats, flow and face are the real ones.
    /// </summary>
    private static void Winter(
        WorkingSheet sheet, Assembly built, AssemblyHeat rated, AssemblyHeat real, Setting setting)
    {
        var steps = AssemblyWorking.Of(built, rated);
        if (setting.IsUnheated)
            steps =
            [
                .. steps.Where(step => step.Figure is not ("Flux" or "RoomFace")),
                .. AssemblyWorking.Of(built, real)
                    .Where(step => step.Figure is "Flux" or "RoomFace"),
            ];
        Season(sheet, "winter", steps);
    }

    private static void Season(
        WorkingSheet sheet, string season, IEnumerable<WorkingStep> steps)
    {
        foreach (var step in steps) sheet.Add(season, step, [.. FiguresOf(step, season + "/")]);
    }

    private static IEnumerable<Opens> FiguresOf(WorkingStep step, string season)
    {
        switch (step.Figure)
        {
            case "R":
                return [Opens.R(season + "assemblyR"), new(season + "assemblySi")];
            case "U":
                return [Opens.U(season + "assemblyU"), new(season + "assemblyUSi")];
            case "Flux":
                return [Opens.Flux(season + "heatFlowBtuPerHFt2"), new(season + "heatFlowWPerM2")];
            case "RoomFaceRadiantShare":
                return [new(season + "roomFaceRadiantSharePercent")];
            case "RoomFace":
                return [Opens.Fahrenheit(season + "roomFaceF")];
            case { } figure when figure.Split('/') is ["AirSpaces", var index, var what]:
                var space = $"{season}airSpaces/{index}/";
                return what switch
                {
                    "R" => [Opens.R(space + "r")],
                    "Thickness" => [Opens.Inches(space + "thicknessIn")],
                    "Mean" => [Opens.Fahrenheit(space + "meanF")],
                    "Difference" => [Opens.Difference(space + "differenceF")],
                    "EffectiveEmittance" => [new(space + "effectiveEmittance")],
                    "RadiantShare" when index == "0" =>
                        [new(space + "radiantSharePercent"), new(season + "radiantSharePercent")],
                    "RadiantShare" => [new(space + "radiantSharePercent")],
                    _ => [],
                };
            default:
                return [];
        }
    }

    /// <summary>Solved anew, air spaces included; the last step of each season is shown.</summary>
    private static void Dulled(
        WorkingSheet sheet, Assembly built, DulledFaces faces, string home)
    {
        var state = faces.State == SurfaceFinish.WetFoil ? "wet or dusty" : "damp";
        sheet.Add(
            "dulled", $"emittance of {state} bright faces", "as tabulated", [], faces.Emittance,
            "", Emittance.Of(faces.State).Source + "; dust is taken as wet (own)", "R",
            new Opens(home + "emittance"));
        var dulled = built.WithFacesOfAtLeast(faces.Emittance);
        foreach (var (season, heat) in
            ((string, AssemblyHeat)[])[("winter", faces.Winter), ("summer", faces.Summer)])
        {
            var step = AssemblyWorking.Of(dulled, heat).Last(step => step.Figure == "R");
            sheet.Add(
                "dulled",
                step with { Quantity = $"{season}, bright faces {state}: {step.Quantity}" },
                Opens.R($"{home}{season}R"));
        }
    }

    private static void Tested(WorkingSheet sheet, TestedAssembly tested, Setting setting)
    {
        var mark = tested.Read ? "R" : "M";
        sheet.Add(
            "tested", "U-factor of the whole assembly", "as tabulated", [], tested.U.TotalUFactor,
            "Btu/(h·ft²·°F)", $"ASHRAE 90.1 Table {tested.Table}, {tested.System}, "
                + tested.RatedInsulation, mark, new Opens("tested/assemblyU"));
        sheet.Add(
            "tested", "assembly R", "R = 1/U", [new("U", tested.U.TotalUFactor, "Btu/(h·ft²·°F)")],
            tested.U.ToResistance().TotalRValue, "h·ft²·°F/Btu", "definition", "C",
            new Opens("tested/assemblyR"));
        Flow("winter", setting.RealSite.Winter);
        Flow("summer", setting.Site.Summer);

        void Flow(string season, Conditions at) => sheet.Add(
            "tested", $"heat flow in {season}, outwards positive", "q = U·(t_room − t_out)",
            [
                new("U", tested.U.TotalSi, "W/(m²·K)"),
                new("t_room", at.Room.TotalCelsius, "°C"),
                new("t_out", at.Outside.TotalCelsius, "°C"),
            ],
            WriteHeat.Flux(tested.U, at), "W/m²", "definition", "C",
            Opens.Flux($"tested/{season}HeatFlowBtuPerHFt2"));
    }

    private static void Radiant(
        WorkingSheet sheet, RadiantCut cut, Assembly built, AssemblyHeat heat, string home)
    {
        var season = cut.Season == PostFrame.Engine.Heat.Season.Winter ? "winter" : "summer";
        if (cut.RadiantPercent is { } radiant)
            sheet.Add(
                "radiant", $"radiant exchange cut at the brightest face, {season}",
                "100·(1 − least of E/E_painted, ε/ε_painted)",
                [
                    .. heat.AirSpaces.SelectMany(space => (WorkingInput[])
                    [
                        new("E", space.Space.EffectiveEmittance, ""),
                        new("E_painted", AirSpace.Effective(0.9, 0.9), ""),
                    ]),
                    new("ε", built.RoomEmittance, ""), new("ε_painted", 0.9, ""),
                ],
                radiant, "%", "E as in ASHRAE HoF 2021 ch. 26 Table 3 note e", "R",
                new Opens(home + "radiantPercent"));
        sheet.Add(
            "radiant", $"all heat cut by the bright faces, {season}",
            "100·(1 − R_painted/R_bright)",
            [
                new("R_painted", cut.Painted.TotalSi, "m²·K/W"),
                new("R_bright", cut.Bright.TotalSi, "m²·K/W"),
            ],
            cut.TotalPercent, "%",
            "the same assembly solved with every bright face painted (ε 0.9)", "C",
            new Opens(home + "totalPercent"));
    }
}
