using System.Globalization;
using PostFrame.Engine;
using PostFrame.Engine.Heat;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;
using PostFrame.Problems;

namespace PostFrame.SizingApi.Comparisons;

/// <summary>Reads our options and the rival lines into candidates.</summary>
internal static class ReadLines
{
    private const int MostLines = 12;
    private const int MostSpaces = 2;

    public static IReadOnlyList<ComparedLine> From(
        RequestObject root, CalculationBasis basis, Area? planeArea, FramingAsked framing,
        PriceList? prices, bool isMetric)
    {
        var ours = root.OptionalObjects("options", MostLines)
            .Select((place, i) =>
                Option(
                    place, $"option-{i + 1}", basis, planeArea, framing, prices, isMetric));
        var theirs = root.OptionalObjects("rivals", MostLines)
            .Select((place, i) => Rival(place, $"rival-{i + 1}", basis, planeArea, framing));
        ComparedLine[] lines = [.. ours, .. theirs];
        if (lines.Length == 0 && root.IsPresent)
            root.Wrong(
                "options", "missing", "",
                "Name at least one option (a product of ours) or one rival line.");
        return lines;
    }

    private static ComparedLine Option(
        RequestObject place, string id, CalculationBasis basis, Area? planeArea,
        FramingAsked framing, PriceList? prices, bool isMetric)
    {
        var code = place.Text("product", 60);
        var product = ProductCatalogue.Find(code);
        if (code is not null && product is null)
            place.Wrong(
                "product", "unknown-product", code,
                "No product has this code; GET /v1/products lists them.");
        var spaces = Spaces(place, basis);
        var line = new ComparedLine
        {
            Id = id,
            Ours = true,
            Product = product,
            Price = Price(place, planeArea) ?? (product is null || prices is null
                ? null
                : LinePrice.Listed(product, prices)),
            OpenSpaces = spaces.Open,
            Remarks = spaces.Remarks,
            Candidate = new Candidate
            {
                Name = place.OptionalText("name", 80) ?? product?.TitleIn(isMetric) ?? id,
                Kind = product is null ? MaterialKind.Blanket : ProductMaterial.Of(product),
                KnownR = product?.NominalR.Value,
                ThicknessMm = product?.Thickness.Value.TotalMillimetres,
                RoomEmittance = Finish(place, "roomFace") ?? product?.RoomFaceEmittance.Value,
                CladdingEmittance =
                    Finish(place, "claddingFace") ?? product?.CladdingFaceEmittance.Value,
                Perm = place.OptionalNumber("perm", 0, 200, "perm") ?? product?.Perm.Value,
                Placement = place.OptionalChoice<Placement>("placement"),
                Spaces = spaces.Stated,
            },
        };
        CheckFits(place, "product", line.Candidate, spaces, framing);
        place.Close();
        return line;
    }

    private static ComparedLine Rival(
        RequestObject place, string id, CalculationBasis basis, Area? planeArea,
        FramingAsked framing)
    {
        var spaces = Spaces(place, basis);
        var kind = place.Choice("kind", WireNames<MaterialKind>.All) is { } word
            ? Enum.Parse<MaterialKind>(word, ignoreCase: true)
            : MaterialKind.Blanket;
        var line = new ComparedLine
        {
            Id = id,
            Ours = false,
            Price = Price(place, planeArea),
            OpenSpaces = spaces.Open,
            Remarks = spaces.Remarks,
            Candidate = new Candidate
            {
                Name = place.OptionalText("name", 80) ?? id,
                Kind = kind,
                ClaimedR = place.OptionalNumber("claimedR", 0.1, 200, "h·ft²·°F/Btu"),
                ClaimedRadiantCutPercent = place.OptionalNumber("claimedRadiantCut", 0, 100, "%"),
                ThicknessMm = place.OptionalMm(
                    "thickness", 0.02, 500, "The thickness of the material"),
                RoomEmittance = Finish(place, "roomFace"),
                CladdingEmittance = Finish(place, "claddingFace"),
                Perm = place.OptionalNumber("perm", 0, 200, "perm"),
                Placement = place.OptionalChoice<Placement>("placement"),
                Spaces = spaces.Stated,
            },
        };
        CheckFits(place, "thickness", line.Candidate, spaces, framing);
        place.Close();
        return line;
    }

    /// <summary>
    /// What cannot be built, with every space that was told of, in the units each was told in; a
    /// thickness of ours is its product's, and what was set aside keeps its place in the list.
    /// </summary>
    private static void CheckFits(
        RequestObject place, string thickness, Candidate candidate, SpacesAsked spaces,
        FramingAsked framing)
    {
        var asked = candidate with { Spaces = [.. spaces.Told.Select(x => x.Space)] };
        var (us, metric) = (
            CandidateFit.Violations(asked, framing.Wood, UnitWords.Us),
            CandidateFit.Violations(asked, framing.Wood, UnitWords.Metric));
        for (var i = 0; i < us.Count; i++)
        {
            string[] path = us[i].Path.Split('/');
            var isMetric = place.Has("thickness") ? place.IsMetric("thickness") : framing.IsMetric;
            if (path[1] == "thickness") path[1] = thickness;
            if (path[1] == "airSpaces")
            {
                var told = spaces.Told[int.Parse(path[2], CultureInfo.InvariantCulture)];
                path[2] = told.Index.ToString(CultureInfo.InvariantCulture);
                isMetric = told.IsMetric;
            }
            place.Mistakes.Add((isMetric ? metric : us)[i] with
            {
                Path = place.Pointer + string.Join('/', path),
            });
        }
    }

    private static double? Finish(RequestObject place, string name) =>
        place.OptionalChoice<SurfaceFinish>(name) is { } finish
            ? Emittance.Of(finish).Value
            : null;

    private static LinePrice? Price(RequestObject place, Area? planeArea)
    {
        var price = place.OptionalNumber("price", 0, 1e7, "in the caller's money");
        var perFt2 = place.OptionalNumber("pricePerFt2", 0, 1000, "per ft2");
        var area = place.OptionalArea("area") ?? planeArea;
        if (price is not null && perFt2 is not null)
            place.Wrong(
                "pricePerFt2", "either-or", $"{perFt2}",
                "Give either the price with its area, or the price per square foot.");
        if (price is not { } money) return perFt2 is { } each ? LinePrice.Typed(each) : null;
        if (area is { } covered) return LinePrice.Of(money, covered.TotalSquareFeet);
        place.Wrong(
            "area", "missing", "",
            "A price needs the area it covers: here, or as the plane's area.", null, "ft2");
        return null;
    }

    /// <summary>
    /// Null when nothing was said, or when what was said leaves the thickness or the ventilation
    /// open: that is asked, not assumed. Ribs of the cladding are no air space.
    /// </summary>
    private static SpacesAsked Spaces(RequestObject place, CalculationBasis basis)
    {
        if (!place.Has("airSpaces")) return new(null, [], [], []);
        var told = new List<(int Index, CandidateSpace Space, bool IsMetric)>();
        var open = new List<MissingFact>();
        var remarks = new List<string>();
        var (least, most) = basis == CalculationBasis.Ashrae ? (12.5, 150.0) : (1.0, 300.0);
        foreach (var (item, i) in place.OptionalObjects("airSpaces", MostSpaces)
            .Select((item, i) => (item, i)))
        {
            var side = item.OptionalChoice<SpaceSide>("side");
            var thickness = item.OptionalMm(
                "thickness", least, most, "The thickness of an air space on this basis");
            var kind = item.OptionalChoice(
                "kind", "enclosed", "slightlyVentilated", "ventilated", "claddingRibs");
            var facing = Finish(item, "facing");
            item.Close();
            if (kind == "claddingRibs")
            {
                remarks.Add("The ribs of the cladding are not an air space and count for nothing "
                    + "(note to ASHRAE HoF 2021 ch. 26 Table 3).");
                continue;
            }
            if (side is null) open.Add(Ask(i, "side", "On which side is the air space?"));
            if (thickness is null)
                open.Add(Ask(i, "thickness", "How thick is the air space?"));
            if (kind is null)
                open.Add(Ask(i, "kind", "Is the air space enclosed, or does outdoor air blow "
                    + "through it (vented eave, ridge, open ribs)?"));
            var openings = kind switch { "enclosed" => 0, "slightlyVentilated" => 1000, _ => 2000 };
            if (side is { } at && thickness is { } mm)
                told.Add((
                    i, new CandidateSpace(at, mm, openings, facing ?? 0.9),
                    item.IsMetric("thickness")));
        }
        return new(
            open.Count > 0 ? null : [.. told.Select(x => x.Space)], told, open, remarks);
    }

    /// <summary>
    /// The spaces as a whole, null where something of them is open; those told of, with their
    /// place in the list; what is open; what was set aside.
    /// </summary>
    private sealed record SpacesAsked(
        IReadOnlyList<CandidateSpace>? Stated,
        IReadOnlyList<(int Index, CandidateSpace Space, bool IsMetric)> Told,
        IReadOnlyList<MissingFact> Open,
        IReadOnlyList<string> Remarks);

    private static MissingFact Ask(int index, string member, string question) =>
        new($"airSpaces/{index}/{member}", question);
}
