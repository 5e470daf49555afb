using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;

namespace PostFrame.Engine;

/// <summary>An insulation line with its product found and its planes known.</summary>
internal sealed record Assignment
{
    public required string Path { get; init; }

    public required InsulationInput Input { get; init; }

    public required Product Product { get; init; }

    /// <summary>Offered roll widths; empty for area goods.</summary>
    public required IReadOnlyList<Length> Widths { get; init; }

    public required IReadOnlySet<string> Planes { get; init; }
}

/// <summary>Checks the insulation lines against catalogue and building.</summary>
internal sealed class InsulationReading(
    IReadOnlyList<InsulationInput>? lines, Building? building, IReadOnlyList<Plane> walls,
    bool metric, Findings findings)
{
    private readonly Dictionary<string, string> taken = [];

    public IReadOnlyList<Assignment> Read()
    {
        if (lines is null || lines.Count == 0)
        {
            findings.Missing("/insulation", "At least one insulation line");
            return [];
        }
        if (lines.Count > Bounds.MostLines)
            findings.Add("/insulation", "too-many",
                $"There are {lines.Count} insulation lines; the most is {Bounds.MostLines}.",
                $"{lines.Count}", $"{Bounds.MostLines}");
        var known = building is null ? null : PlaneIds(building, walls);
        return [.. lines.Take(Bounds.MostLines)
            .Select((line, i) => One(line, $"/insulation/{i}", known)).OfType<Assignment>()];
    }

    /// <summary>Ids a line may name.</summary>
    public static IReadOnlyList<string> PlaneIds(Building building, IReadOnlyList<Plane> walls) =>
    [
        "roof",
        .. building.Roof.Ridge is null ? Array.Empty<string>() : ["roofA", "roofB"],
        .. building.LeanTos.Select(l => RoofPlanes.OfLeanTo(building, l)).Concat(walls)
            .Where(p => p.Parts.Count > 0).Select(p => p.Id),
    ];

    /// <summary>The plane of a name when the partition leaves nothing of it to cover.</summary>
    private Plane? Beyond(string name) => building!.LeanTos
        .Select(l => RoofPlanes.OfLeanTo(building, l)).Concat(walls)
        .FirstOrDefault(p => p.Id == name && p.Parts.Count == 0);

    private Assignment? One(InsulationInput line, string at, IReadOnlyList<string>? known)
    {
        var product = ProductCatalogue.Find(line.Product);
        if (line.Product is null)
            findings.Missing($"{at}/product", "The product");
        else if (product is null)
            findings.Add($"{at}/product", "no-such-product",
                $"There is no product {line.Product}; the catalogue has "
                + string.Join(", ", ProductCatalogue.All.Select(p => p.Code)) + ".",
                line.Product, string.Join(", ", ProductCatalogue.All.Select(p => p.Code)));
        var planes = Planes(line, at, known);
        if (product is null) return null;
        CheckThickness(line, at, product);
        var widths = Widths(line, at, product);
        CheckStrips(line, at, product);
        CheckRoof(line, at, planes);
        CheckStart(line, at, planes);
        return new()
        {
            Path = at,
            Input = line,
            Product = product,
            Widths = widths,
            Planes = planes,
        };
    }

    private HashSet<string> Planes(InsulationInput line, string at, IReadOnlyList<string>? known)
    {
        var planes = new HashSet<string>();
        if (line.Planes is null || line.Planes.Count == 0)
            findings.Missing($"{at}/planes", "At least one plane");
        for (var i = 0; i < (line.Planes?.Count ?? 0) && i < 100; i++)
        {
            var name = line.Planes![i];
            if (known?.Contains(name) == false && Beyond(name) is { } cold)
                findings.Add($"{at}/planes/{i}", "beyond-partition",
                    $"Nothing of {cold.Title} lies in the insulated part, from "
                    + $"{findings.Say(building!.Insulated.From)} to "
                    + $"{findings.Say(building.Insulated.To)} with the partition at "
                    + $"{findings.Say(building.Partition!.Value)}; leave {name} out or move the "
                    + "partition.", name, string.Join(", ", known));
            else if (known?.Contains(name) == false)
                findings.Add($"{at}/planes/{i}", "no-such-plane",
                    $"This building has no plane {name}; it has {string.Join(", ", known)}."
                    + WallPlanes.WhyNot(building!, name), name, string.Join(", ", known));
            else if (Clash(name) is { } other)
                findings.Add($"{at}/planes/{i}", "plane-taken",
                    $"Plane {name} is covered already by {other}; each plane takes one product. "
                    + "Take a second layer off in a request of its own.",
                    name);
            taken.TryAdd(name, at);
            planes.Add(name);
        }
        return planes;
    }

    private string? Clash(string name)
    {
        if (taken.TryGetValue(name, out var same)) return same;
        string[] others = name == "roof" ? ["roofA", "roofB"]
            : name is "roofA" or "roofB" ? ["roof"] : [];
        return others.Select(o => taken.GetValueOrDefault(o)).FirstOrDefault(o => o is not null);
    }

    private void CheckThickness(InsulationInput line, string at, Product product)
    {
        if (product.Kind == ProductKind.SprayFoam)
        {
            if (line.Thickness is null)
                findings.Missing($"{at}/thickness", "The thickness of spray foam");
            findings.Optional($"{at}/thickness", "The thickness", line.Thickness,
                Length.FromInches(0.5), Length.FromInches(16));
        }
        else if (line.Thickness is { } given && given != product.Thickness.Value)
        {
            findings.Broken($"{at}/thickness", "not-this-product",
                $"{product.Code} is {product.Thickness.Value.Say(metric)} thick.",
                given, product.Thickness.Value);
        }
    }

    private IReadOnlyList<Length> Widths(InsulationInput line, string at, Product product)
    {
        if (!product.IsCutFromRolls)
        {
            if (line.RollWidth is not null || line.BestRollWidth)
                findings.Add($"{at}/rollWidth", "not-in-rolls",
                    $"{product.Code} does not come in rolls; leave the roll width out.");
            return [];
        }
        if (line.BestRollWidth)
        {
            var own = product.Rolls.Where(r => r.Metric == metric).Select(r => r.Width).ToArray();
            return own.Length > 0 ? own : [.. product.Rolls.Select(r => r.Width)];
        }
        if (line.RollWidth is not { } width)
        {
            findings.Missing($"{at}/rollWidth", "The roll width (or best)");
            return [];
        }
        if (product.Rolls.Any(r => r.Width == width)) return [width];
        var offered = string.Join(", ", product.Rolls.Select(r => r.Width.Say(r.Metric)));
        findings.Add($"{at}/rollWidth", "no-such-width",
            $"{product.Code} comes {offered} wide, not {width.Say(metric)}.",
            width.Say(metric), offered);
        return [];
    }

    private void CheckStrips(InsulationInput line, string at, Product product)
    {
        foreach (var (member, given) in new[]
        {
            ("lastStrip", line.LastStrip is not null),
            ("roofLayout", line.RoofLayout is not null),
            ("breakLayout", line.BreakLayout is not null),
        })
            if (given && !product.IsCutFromRolls)
                findings.Add($"{at}/{member}", "not-in-rolls",
                    $"{product.Code} is not laid in strips; leave {member} out.");
            else if (given && member == "lastStrip" && line.BestRollWidth)
                findings.Add($"{at}/{member}", "means-nothing",
                    "lastStrip means nothing where the widths are chosen to buy least.");
    }

    private void CheckRoof(InsulationInput line, string at, IReadOnlySet<string> planes)
    {
        var whole = planes.Contains("roof");
        if (line.RoofLayout == RoofLayout.OverRidge)
        {
            if (!whole && (planes.Contains("roofA") || planes.Contains("roofB")))
                findings.Add($"{at}/roofLayout", "needs-whole-roof",
                    "Strips over the ridge cover the whole roof; name the plane roof.",
                    "overRidge", "eaveToRidge");
            if (line.BreakLayout == BreakLayout.Split)
                findings.Add($"{at}/breakLayout", "over-ridge-is-one-piece",
                    "Strips over the ridge are one piece; they cannot be split at a break.",
                    "split", "continuous");
        }
        var isRoof = planes.Any(p => p.StartsWith("roof", StringComparison.Ordinal)
            || p.StartsWith("leanRoof", StringComparison.Ordinal));
        foreach (var (member, given) in new[]
        {
            ("roofLayout", line.RoofLayout is not null),
            ("breakLayout", line.BreakLayout is not null),
        })
            if (given && !isRoof && planes.Count > 0)
                findings.Add($"{at}/{member}", "no-roof",
                    $"{member} means something for roofs only, and this line names none.");
        if (line.BreakLayout == BreakLayout.Split && isRoof && building is not null
            && !RoofPlanes.HasBreak(building))
            findings.Add($"{at}/breakLayout", "no-break",
                "Pieces cannot be split at a break: this roof has none.", "split", "continuous");
        if (building is null) return;
        foreach (var (name, plane) in new (string, Func<Plane>)[]
        {
            ("roof", () => RoofPlanes.Over(building)),
            ("roofA", () => RoofPlanes.OnSide(building, BuildingSide.A)),
            ("roofB", () => RoofPlanes.OnSide(building, BuildingSide.B)),
        })
            if (planes.Contains(name) && (name == "roof" || building.Roof.Ridge is not null)
                && plane().Parts.Count == 0)
                findings.Add($"{at}/planes/{line.Planes!.ToList().IndexOf(name)}",
                    "nothing-to-cover",
                    "The translucent panels that split the run leave nothing of "
                    + $"{(name == "roof" ? "the roof" : name)} to cover.", name);
    }

    private void CheckStart(InsulationInput line, string at, IReadOnlySet<string> planes)
    {
        if (line.StartHeight is not { } start) return;
        var named = walls.Where(w => planes.Contains(w.Id)).ToArray();
        if (named.Length == 0 && building is not null)
            findings.Add($"{at}/startHeight", "no-walls",
                "A start height means something for walls only, and this line names none.");
        findings.Optional($"{at}/startHeight", "The start height", start, Length.Zero,
            Bounds.MostHeight);
        foreach (var wall in named)
        {
            var least = wall.Edge.LowestOn(Length.Zero, wall.Run);
            if (wall.Kind == PlaneKind.Endwall ? start <= least : start < least) continue;
            findings.Broken($"{at}/startHeight", "too-large",
                $"The start height {findings.Say(start)} reaches the eave of {wall.Title}, "
                + $"{findings.Say(least)}.", start, least);
            return;
        }
    }
}
