using PostFrame.Engine;
using PostFrame.Engine.TakeOff;
using PostFrame.Problems;

namespace PostFrame.SizingApi.Sizings;

/// <summary>Reads a whole sizing request into the engine's input, noting every mistake.</summary>
internal static class ReadSizing
{
    private const int MostLines = 60;
    private const int MostPlanes = 30;

    public static SizingInput From(RequestObject root, PriceList? prices)
    {
        var building = root.OptionalObject("building");
        var isMetric = building is { IsPresent: true } && building.IsMetric("width");
        var input = new SizingInput
        {
            Building = ReadBuilding.From(building),
            Insulation = root.Has("insulation")
                ? [.. root.OptionalObjects("insulation", MostLines).Select(Insulation)]
                : null,
            Practice = Practice(root.OptionalObject("practice")),
            Metric = isMetric,
            Prices = prices,
        };
        root.Close();
        return input;
    }

    private static InsulationInput Insulation(RequestObject place)
    {
        var isBest = place.IsText("rollWidth", "best");
        var line = new InsulationInput
        {
            Planes = place.OptionalTexts("planes", MostPlanes),
            Product = place.OptionalText("product", 60),
            BestRollWidth = isBest,
            RollWidth = isBest ? null : place.OptionalLength("rollWidth"),
            RoofLayout = place.OptionalChoice<RoofLayout>("roofLayout"),
            BreakLayout = place.OptionalChoice<BreakLayout>("breakLayout"),
            StartHeight = place.OptionalLength("startHeight"),
            LastStrip = place.OptionalChoice<LastStrip>("lastStrip"),
            Thickness = place.OptionalLength("thickness"),
        };
        place.Close();
        return line;
    }

    private static PracticeInput Practice(RequestObject? place)
    {
        if (place is not { IsPresent: true })
        {
            return new PracticeInput();
        }

        var practice = new PracticeInput
        {
            RoundUpTo = place.OptionalLength("roundUpTo"),
            Tolerance = place.OptionalLength("tolerance"),
            EaveTuck = place.OptionalLength("eaveTuck"),
            RidgeLap = place.OptionalLength("ridgeLap"),
            JunctionLap = place.OptionalLength("junctionLap"),
            BreakLap = place.OptionalLength("breakLap"),
            VentSetback = place.OptionalLength("ventSetback"),
            VentFold = place.OptionalLength("ventFold"),
            WallTop = place.OptionalLength("wallTop"),
            WallBase = place.OptionalLength("wallBase"),
            OpeningHead = place.OptionalLength("openingHead"),
            CornerWrap = place.OptionalLength("cornerWrap"),
            RakeWrap = place.OptionalLength("rakeWrap"),
            JambMargin = place.OptionalLength("jambMargin"),
            PartitionLap = place.OptionalLength("partitionLap"),
            DrapePercent = place.OptionalNumber("drapePercent", 0, 50, "%"),
            DrapeSag = place.OptionalLength("drapeSag"),
            ShortHeader = place.OptionalLength("shortHeader"),
            MergeShortHeaders = place.OptionalFlag("mergeShortHeaders"),
            LongestOverRidge = place.OptionalLength("longestOverRidge"),
            OnePersonLimit = place.OptionalMass("onePersonLimit"),
            TwoPersonLimit = place.OptionalMass("twoPersonLimit"),
            BagLimit = place.OptionalMass("bagLimit"),
            BagDiameter = place.OptionalLength("bagDiameter"),
            PalletHeight = place.OptionalLength("palletHeight"),
            TapeExtraPercent = place.OptionalNumber("tapeExtraPercent", 0, 50, "%"),
            TapeRoll = place.OptionalLength("tapeRoll"),
            DoubleFacedRoll = place.OptionalLength("doubleFacedRoll"),
            EndTrim = place.OptionalLength("endTrim"),
            MinUsefulOffcut = place.OptionalLength("minUsefulOffcut"),
        };
        place.Close();
        return practice;
    }
}
