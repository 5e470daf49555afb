using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>Opens the drip, the months, and the cures of a line.</summary>
internal static class MoistureWorking
{
    private const string Clause5 = "ISO 13788:2012 clause 5, saturation by equations E.7, E.8";
    private const string Clause6 = "ISO 13788:2012 clause 6";
    private const string Passed = "g = 86 400 000·Σ δ₀·(p₁ − p₂)/(sd₂ − sd₁)·n";
    private const string Tightest =
        "the sd of a tight layer is entered as 1 000 000 m";

    public static void Add(WorkingSheet sheet, RebuiltLine line, Setting setting)
    {
        if (line.Drip is { } drip) Drip(sheet, drip, setting);
        if (line.Moisture is not { } moisture) return;
        if (moisture.AtDesign.HiddenRh is { } hidden)
            sheet.Add(
                "moisture", $"wets {moisture.AtDesign.HiddenPlace} from",
                "p_room = p_out + (psat − p_out)·Sd/(Sd − sd), over psat(t_room)",
                moisture.AtDesign.HiddenInputs,
                100 * hidden, "% RH", Clause6 + ", solved for the room; " + Tightest, "C",
                new Opens("moisture/wetsInsideAboveRhPercent"));
        foreach (var (month, i) in moisture.Year.Months.Select((month, i) => (month, i)))
            Month(sheet, moisture.Year, month, i, setting);
        Year(sheet, moisture.Year, "", "over the twelve months", "moisture/");
        if (moisture.UnderSky is { } sky)
            Year(sheet, sky, "outside 4 K below the air: ", "over the twelve months",
                "moisture/underSky/");
        Steady(sheet, moisture.ColdestFlow);
        foreach (var (at, i) in moisture.Interfaces.Select((at, i) => (at, i)))
            Interface(sheet, moisture.Coldest, at, $"moisture/coldest/interfaces/{i}/");
        foreach (var (cure, i) in moisture.Cures.Select((cure, i) => (cure, i)))
            Cure(sheet, cure, i, setting);
    }

    private static void Steady(WorkingSheet sheet, DiffusionState flow)
    {
        foreach (var (name, leg) in ((string, VapourLeg?)[])
            [("from the room", flow.FromRoom), ("to outdoors", flow.ToOutdoors)])
        {
            if (leg is not null)
                sheet.Add(
                    "moisture", $"coldest month, steady: vapour {name} a day", Passed,
                    [Permeability, .. Spell(leg, 1)], leg.Flow * DiffusionState.GramsPerDay,
                    "g/(m²·day)", Clause6 + "; " + Tightest, "R");
        }
        Condenses(sheet, flow);
    }

    private static WorkingInput Permeability =>
        new("δ₀", Vapour.StillAirPermeability, "kg/(m·s·Pa)");

    private static WorkingInput[] Spell(VapourLeg leg, double days) =>
    [
        new("p₁", leg.FromPa, "Pa"), new("p₂", leg.ToPa, "Pa"), new("sd₁", leg.FromSdM, "m"),
        new("sd₂", leg.ToSdM, "m"), new("n", days, "d"),
    ];

    private static void Condenses(WorkingSheet sheet, DiffusionState flow) => sheet.Add(
        "moisture", "coldest month, steady: condenses a day", "g = g_in − g_out",
        [
            new("g_in", flow.FlowFromRoom * DiffusionState.GramsPerDay, "g/(m²·day)"),
            new("g_out", flow.FlowToOutdoors * DiffusionState.GramsPerDay, "g/(m²·day)"),
        ],
        flow.NetCondensation * DiffusionState.GramsPerDay, "g/(m²·day)",
        Clause6 + "; ASHRAE HoF 2021 ch. 27", "R",
        new Opens("moisture/coldest/condensesGPerM2Day"));

    private static void Interface(
        WorkingSheet sheet, AssemblyHeat heat, InterfaceState at, string home)
    {
        var name = $"coldest month, {at.Place}";
        sheet.Add(
            "moisture", $"{name}: temperature", "t = t_room − (t_room − t_out)·ΣR/R_clear",
            [
                new("t_room", heat.Conditions.Room.TotalCelsius, "°C"),
                new("t_out", heat.Conditions.Outside.TotalCelsius, "°C"),
                new("ΣR", at.FromRoom.TotalSi, "m²·K/W"),
                new("R_clear", heat.ClearField.TotalSi, "m²·K/W"),
            ],
            at.At.TotalCelsius, "°C", "resistances in series", "C",
            Opens.Fahrenheit(home + "temperatureF"));
        sheet.Add(
            "moisture", $"{name}: saturation",
            at.At.TotalCelsius < 0
                ? "psat = 610.5·exp(21.875·t/(265.5 + t))"
                : "psat = 610.5·exp(17.269·t/(237.3 + t))",
            [new("t", at.At.TotalCelsius, "°C")],
            at.SaturationPa, "Pa", "ISO 13788:2012 equations E.7 and E.8", "R",
            new Opens(home + "saturationPa"));
        var (formula, inputs) = Pressure(at);
        sheet.Add(
            "moisture", $"{name}: vapour pressure", formula, inputs, at.PressurePa, "Pa",
            Clause6 + ": straight over sd between places held at saturation; " + Tightest, "R",
            new Opens(home + "vapourPa"));
        sheet.Add(
            "moisture", $"{name}: {(at.IsFrost ? "frost" : "dew")} point",
            at.IsFrost
                ? "θ = 265.5·L/(21.875 − L), L = ln(p/610.5)"
                : "θ = 237.3·L/(17.269 − L), L = ln(p/610.5)",
            [new("p", at.PressurePa, "Pa")], at.DewPoint.TotalCelsius, "°C",
            "ISO 13788:2012 equations E.9 and E.10", "R",
            Opens.Fahrenheit(home + "dewPointF"));
    }

    private static (string Formula, IReadOnlyList<WorkingInput> Inputs) Pressure(
        InterfaceState at) => at switch
        {
            { Place: "room air", AirPa: { } room } => ("p = p_air", [new("p_air", room, "Pa")]),
            { AirPa: { } air } => (
                "p = min(p_air, psat)",
                [new("p_air", air, "Pa"), new("psat", at.Point.StationSaturationPa, "Pa")]),
            { Point.Leg: { } leg } => (
                "p = p₁ + (p₂ − p₁)·(sd − sd₁)/(sd₂ − sd₁)",
                [
                    new("p₁", leg.FromPa, "Pa"), new("sd₁", leg.FromSdM, "m"),
                    new("p₂", leg.ToPa, "Pa"), new("sd₂", leg.ToSdM, "m"),
                    new("sd", at.Point.SdM, "m"),
                ]),
            _ => ("p = psat", [new("psat", at.Point.StationSaturationPa, "Pa")]),
        };

    private static void Drip(WorkingSheet sheet, DripFinding drip, Setting setting)
    {
        var room = setting.RealSite.Winter.Room;
        Onset("room face starts to drip at", drip.DesignFace, drip.OnsetRh,
            "drip/dripsAboveRhPercent");
        if (drip is { ClearNightFace: { } night, ClearNightRh: { } rh })
            Onset("the same under a clear night sky, outside 10 K below the air", night, rh,
                "drip/clearNightDripsAboveRhPercent");
        if (drip is { WorstFace: { } face, WorstRoomPa: { } pa, WorstFaceRh: { } worst })
            sheet.Add(
                "drip", "humidity at the room face in the worst month",
                "φ = 100·min(1, p_room/psat(t_face))",
                [
                    new("p_room", pa, "Pa"), new("t_face", face.TotalCelsius, "°C"),
                    new("psat(t_face)", Vapour.Saturation(face), "Pa"),
                ],
                100 * worst, "% RH", Clause5, "R", new Opens("drip/worstFaceRhPercent"));

        void Onset(string quantity, Temperature face, double rh, string member) => sheet.Add(
            "drip", quantity, "φ = 100·min(1, psat(t_face)/psat(t_room))",
            [
                new("t_room", room.TotalCelsius, "°C"), new("t_face", face.TotalCelsius, "°C"),
                new("psat(t_room)", Vapour.Saturation(room), "Pa"),
                new("psat(t_face)", Vapour.Saturation(face), "Pa"),
            ],
            100 * rh, "% RH", Clause5, "R", new Opens(member));
    }

    private static void Month(
        WorkingSheet sheet, MoistureYear year, MoistureMonth month, int index, Setting setting)
    {
        var name = Conclusions.MonthOf(month.Month);
        var home = $"moisture/months/{index}/";
        SettingWorking.Outdoors(sheet, "moisture", month.Month, month.Outdoors, setting,
            Opens.Fahrenheit(home + "outdoorsF"));
        SettingWorking.RoomInMonth(sheet, "moisture", month.Month, month.Outdoors, month.Room,
            setting, Opens.Fahrenheit(home + "roomF"));
        sheet.Add(
            "moisture", $"{name}: humidity of the room air", "φ = 100·p_room/psat(t_room)",
            [
                new("p_room", month.RoomPa, "Pa"),
                new("t_room", month.Room.TotalCelsius, "°C"),
                new("psat(t_room)", Vapour.Saturation(month.Room), "Pa"),
            ],
            100 * month.RoomRh, "% RH", Clause5, "R", new Opens(home + "roomRhPercent"));
        sheet.Add(
            "moisture", $"{name}: humidity at the room face",
            "φ = 100·min(1, p_room/psat(t_face))",
            [
                new("p_room", month.RoomPa, "Pa"),
                new("t_face", month.RoomFace.TotalCelsius, "°C"),
                new("psat(t_face)", Vapour.Saturation(month.RoomFace), "Pa"),
            ],
            100 * month.RoomFaceRh, "% RH", Clause5, "R", new Opens(home + "roomFaceRhPercent"));
        if (month.Spells.Count > 0) Flows(sheet, month, name);
        sheet.Add(
            "moisture", $"{name}: condensed, negative dried", "Δm = g_in − g_out",
            [
                new("g_in", month.FromRoomGPerM2, "g/m²"),
                new("g_out", month.ToOutdoorsGPerM2, "g/m²"),
            ],
            month.ChangeGPerM2, "g/m²", Clause6, "R", new Opens(home + "changeGPerM2"));
        var before = index == 0 ? 0 : year.Months[index - 1].HeldGPerM2;
        sheet.Add(
            "moisture", $"{name}: held at its end", "m = m_before + Δm",
            [new("m_before", before, "g/m²"), new("Δm", month.ChangeGPerM2, "g/m²")],
            month.HeldGPerM2, "g/m²",
            Clause6 + "; the year starts dry at the first month that condenses", "R",
            new Opens(home + "heldGPerM2"));
    }

    /// <summary>
    /// A month has a spell more for each place that dries within it; p₁ and p₂ are those of the
    /// air, at most saturated on its own face, or of the nearest place held at saturation.
    /// </summary>
    private static void Flows(WorkingSheet sheet, MoistureMonth month, string name)
    {
        const string Spells = Clause6
            + ": p is at most psat on the air's own face, and psat where it is wet; " + Tightest;
        sheet.Add(
            "moisture", $"{name}: vapour from the room", Passed,
            [Permeability, .. month.Spells.SelectMany(spell => Spell(spell.In, spell.Days))],
            month.FromRoomGPerM2, "g/m²", Spells, "R");
        sheet.Add(
            "moisture", $"{name}: vapour to outdoors", Passed,
            [Permeability, .. month.Spells.SelectMany(spell => Spell(spell.Out, spell.Days))],
            month.ToOutdoorsGPerM2, "g/m²", Spells, "R");
    }

    private static void Year(
        WorkingSheet sheet, MoistureYear year, string prefix, string words, string home)
    {
        sheet.Add(
            "moisture", $"{prefix}most water held {words}", "max(m)",
            [.. year.Months.Select(month => new WorkingInput(
                "m_" + month.Month, month.HeldGPerM2, "g/m²"))],
            year.PeakGPerM2, "g/m²", Clause6, "R", new Opens(home + "peakGPerM2"));
        sheet.Add(
            "moisture", $"{prefix}water left {words}", "m at the end of the last month",
            [new("m", year.Months[^1].HeldGPerM2, "g/m²")], year.CarriedOverGPerM2, "g/m²",
            Clause6, "R", new Opens(home + "carriedOverGPerM2"));
    }

    private static void Cure(WorkingSheet sheet, MoistureCure cure, int index, Setting setting)
    {
        var home = $"moisture/cures/{index}/";
        var words = cure.Id.Replace('-', ' ');
        if (cure.Year is { } year)
            Year(sheet, year, $"{words}: ", "in the same months with that change", home);
        if (cure.Perm is { } perm)
            sheet.Add(
                "moisture", $"{words}: permeance tried", "as tried", [], perm, "perm",
                "class I facing; ASHRAE HoF 2021 ch. 26 and manufacturers' declarations, from "
                    + "memory", "M", new Opens(home + "perm"));
        if (cure.RoomRh is { } rh) Humidity(sheet, cure, rh, home, setting);
    }

    private static void Humidity(
        WorkingSheet sheet, MoistureCure cure, double rh, string home, Setting setting)
    {
        var coldest = setting.Months!.MinBy(month => month.Mean.TotalCelsius)!;
        var room = setting.Room!;
        sheet.Add(
            "moisture",
            $"{cure.Id.Replace('-', ' ')}: room humidity in the coldest month that dries again",
            "φ = 100·min(1, (p_out + s·Δp·clamp(1 − t_out/20, 0, 1))/psat(t_room))",
            [
                new("s", cure.MoistureShare ?? 0, ""),
                new("p_out", coldest.VapourPressurePa, "Pa"),
                new("t_out", coldest.Mean.TotalCelsius, "°C"),
                new("Δp", room.ColdExcessPa + room.BurnerExcessPa, "Pa"),
                new("psat(t_room)", Vapour.Saturation(room.At(coldest.Mean)), "Pa"),
            ],
            100 * rh, "% RH",
            Clause6 + "; s is the largest share of the moisture that still dries, by halving", "C",
            new Opens(home + "roomRhPercent"));
    }
}
