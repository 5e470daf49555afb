using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.Buildings;

/// <summary>Checks openings against the walls they are in and against each other.</summary>
/// <remarks>
/// A continuous eave light is no opening afterwards: it lowers the edge of its sidewall.
/// Source: takeoff.md 2.9 and 3.
/// </remarks>
internal sealed class OpeningReading(Building building, Findings findings)
{
    private readonly List<(int Index, Opening Opening)> read = [];

    /// <summary>The openings of both sides of a partition, each in canonical order, and the walls
    /// as eave lights leave them.</summary>
    public (IReadOnlyList<Opening> Openings, IReadOnlyList<Opening> Beyond,
        IReadOnlyList<Plane> Walls) Read(
        IReadOnlyList<OpeningInput> inputs, IReadOnlyList<Plane> walls)
    {
        if (inputs.Count > Bounds.MostOpenings)
            findings.Add("/building/openings", "too-many",
                $"There are {inputs.Count} openings; the most is {Bounds.MostOpenings}.",
                $"{inputs.Count}", $"{Bounds.MostOpenings}");
        var counted = Math.Min(inputs.Count, Bounds.MostOpenings);
        var lowered = walls.ToList();
        foreach (var lightsFirst in new[] { true, false })
            for (var i = 0; i < counted; i++)
                if (IsBand(inputs[i]) == lightsFirst)
                    One(i, inputs[i], lowered);
        CheckOverlaps();
        var sides = read.Select(r => r.Opening)
            .OrderBy(o => o.Plane, StringComparer.Ordinal)
            .ThenBy(o => o.Along?.From ?? Length.Zero).ThenBy(o => o.Bottom).ThenBy(o => o.Top)
            .ThenBy(o => o.Width).ThenBy(o => o.Kind).ToLookup(o => IsCovered(o, lowered));
        return ([.. sides[true]], [.. sides[false]], lowered);
    }

    /// <summary>What lies in the cold part beyond a partition takes no part any more.</summary>
    private static bool IsCovered(Opening opening, List<Plane> walls) =>
        walls.First(w => w.Id == opening.Plane).Parts
            .Any(p => opening.Along is not { } along || p.Overlaps(along));

    private static bool IsBand(OpeningInput input) =>
        input is { Kind: OpeningKind.EaveLight, Width: null };

    private void One(int index, OpeningInput input, List<Plane> walls)
    {
        var at = $"/building/openings/{index}";
        if (input.Kind is null) findings.Missing($"{at}/kind", "The kind of opening");
        var wall = WallOf(at, input, walls);
        var height = findings.Required($"{at}/height", "The height of the opening",
            input.Height, Bounds.LeastOpening, Bounds.MostHeight);
        var sill = findings.Optional($"{at}/sill", "The sill of the opening", input.Sill,
            Length.Zero, Bounds.MostHeight);
        var start = findings.Optional($"{at}/fromStart", "The place of the opening",
            input.FromStart, Length.Zero, Bounds.MostLength);
        if (input.Kind == OpeningKind.EaveLight && wall?.Top == PlaneEnd.OpeningEdge)
        {
            findings.Add($"{at}/wall", "eave-light-taken",
                $"{wall.Title} has an eave light all along already.", wall.Id);
            return;
        }
        if (input is { Kind: OpeningKind.EaveLight, Sill: not null })
            findings.Add($"{at}/sill", "means-nothing",
                "An eave light hangs from the eave; its height says where its sill is.");
        if (IsBand(input))
        {
            if (input.FromStart is not null)
                findings.Missing($"{at}/width", "The width of an eave light at its place");
            if (wall is not null && height is { } band) LowerForLight(at, wall, band, walls);
            return;
        }
        var width = findings.Required($"{at}/width", "The width of the opening",
            input.Width, Bounds.LeastOpening, Bounds.MostLength);
        if (wall is null || width is null || height is null || input.Kind is not { } kind) return;
        if (input.FromStart is not null && start is null) return;
        if (input.Sill is not null && sill is null) return;
        var (bottom, top) = kind == OpeningKind.EaveLight
            ? (wall.Edge.Start.Up - height.Value, wall.Edge.Start.Up)
            : Heights(kind, sill ?? Length.Zero, height.Value);
        var opening = new Opening
        {
            Plane = wall.Id,
            Kind = kind,
            Width = width.Value,
            Bottom = bottom,
            Top = top,
            Along = start is { } from ? new(from, from + width.Value) : null,
        };
        if (Fits(at, opening, wall)) read.Add((index, opening));
    }

    private (Length Bottom, Length Top) Heights(OpeningKind kind, Length sill, Length height)
    {
        var bottom = building.Datum.FromStripBase(sill);
        return (kind is OpeningKind.Window or OpeningKind.Louvre
            ? bottom
            : Length.Max(bottom, Length.Zero), building.Datum.FromStripBase(sill + height));
    }

    private Plane? WallOf(string at, OpeningInput input, List<Plane> walls)
    {
        if (input.Wall is null)
        {
            findings.Missing($"{at}/wall", "The wall of the opening");
            return null;
        }
        var wall = walls.FirstOrDefault(w => w.Id == input.Wall);
        if (wall is null)
        {
            var names = string.Join(", ", walls.Select(w => w.Id));
            findings.Add($"{at}/wall", "no-such-wall",
                $"This building has no wall {input.Wall}; it has {names}."
                + WallPlanes.WhyNot(building, input.Wall), input.Wall, names);
        }
        else if (input.Kind == OpeningKind.EaveLight && wall.Kind != PlaneKind.Sidewall)
        {
            findings.Add($"{at}/wall", "not-a-sidewall",
                $"An eave light lies under an eave, on a sidewall, not on {wall.Id}.", wall.Id,
                string.Join(", ", walls.Where(w => w.Kind == PlaneKind.Sidewall)
                    .Select(w => w.Id)));
            return null;
        }
        return wall;
    }

    private void LowerForLight(string at, Plane wall, Length band, List<Plane> walls)
    {
        var sill = wall.Edge.Start.Up - band;
        if (sill <= wall.Base + Bounds.LeastOpening)
        {
            findings.Broken($"{at}/height", "taller-than-wall",
                $"The eave light of {findings.Say(band)} leaves no wall below it.",
                band, wall.Edge.Start.Up - wall.Base);
            return;
        }
        walls[walls.IndexOf(wall)] = wall with
        {
            Edge = Profile.Level(wall.Run, sill),
            Top = PlaneEnd.OpeningEdge,
        };
    }

    private bool Fits(string at, Opening opening, Plane wall)
    {
        var before = findings.All.Count;
        var kind = Word(opening.Kind);
        var run = wall.Run;
        if (opening.Width >= run)
            findings.Broken($"{at}/width", "wider-than-wall",
                $"The {kind} is {findings.Say(opening.Width)} wide; it must be less than the "
                + $"{findings.Say(run)} of {wall.Title}."
                + (opening.Kind == OpeningKind.EaveLight
                    ? " Leave out its width and place if it runs all along the wall."
                    : ""), opening.Width, run);
        else if (opening.Along is { } along && (along.From <= Length.Zero || along.To >= run))
            findings.Broken($"{at}/fromStart", along.To > run ? "outside-wall" : "touches-corner",
                $"The {kind} reaches from {findings.Say(along.From)} to "
                + $"{findings.Say(along.To)}; it must lie within {wall.Title}, 0 to "
                + $"{findings.Say(run)}, without touching a corner.",
                along.From <= Length.Zero ? along.From : along.To,
                along.From <= Length.Zero ? Length.Zero : run);
        if (opening.Along is { } here && wall.Gap is { } gap && gap.Overlaps(here))
            findings.Broken($"{at}/fromStart", "no-wall-there",
                $"From {findings.Say(gap.From)} to {findings.Say(gap.To)} the open lean-to leaves "
                + $"no {wall.Title}; the {kind} at {findings.Say(here.From)} has no wall.",
                here.From, here.From < gap.From ? gap.From : gap.To);
        if (opening.Along is { } reach && Crossed(wall, reach) is { } partition)
            findings.Broken($"{at}/fromStart", "crosses-partition",
                $"The {kind} reaches from {findings.Say(reach.From)} to {findings.Say(reach.To)}, "
                + $"across the partition at {findings.Say(partition)}: a partition ends at a wall, "
                + "not in an opening. Move one of them.", reach.From, partition);
        if (findings.All.Count > before) return false;
        var highest = opening.Along is { } placed
            ? wall.Edge.LowestOn(placed.From, placed.To)
            : wall.Edge.Highest.Up;
        if (opening.Top > highest)
            findings.Broken($"{at}/height", "taller-than-wall",
                $"The top of the {kind} comes to {findings.Say(opening.Top)} above the strip "
                + $"base, but {wall.Title} is {findings.Say(highest)} high there.",
                opening.Top, highest);
        if (opening.Top <= wall.Base && opening.Kind != OpeningKind.EaveLight)
            findings.Broken($"{at}/height", "below-strips",
                $"The {kind} ends at {findings.Say(opening.Top)}, below where strips start.",
                opening.Top, wall.Base);
        if (wall.IsBand && opening.Bottom < wall.Base)
            findings.Broken($"{at}/sill", "below-band",
                $"The {kind} starts at {findings.Say(opening.Bottom)}, below the band above the "
                + $"lean-to at {findings.Say(wall.Base)}.", opening.Bottom, wall.Base);
        return findings.All.Count == before;
    }

    /// <summary>The partition that ends at this wall between the jambs, along the wall.</summary>
    private Length? Crossed(Plane wall, Interval reach) =>
        wall.Kind == PlaneKind.Sidewall && building.Partition - wall.Origin is { } partition
            && reach.From < partition && partition < reach.To
            ? partition
            : null;

    private void CheckOverlaps()
    {
        for (var i = 0; i < read.Count; i++)
            for (var j = i + 1; j < read.Count; j++)
            {
                var (a, b) = (read[i].Opening, read[j].Opening);
                if (a.Plane != b.Plane || a.Along is not { } alongA || b.Along is not { } alongB)
                    continue;
                if (!alongA.Overlaps(alongB) || a.Bottom >= b.Top || b.Bottom >= a.Top) continue;
                var (first, second) = read[i].Index < read[j].Index
                    ? (read[i], read[j])
                    : (read[j], read[i]);
                findings.Add($"/building/openings/{second.Index}/fromStart", "openings-overlap",
                    $"The {Word(second.Opening.Kind)} at "
                    + $"{findings.Say(second.Opening.Along!.Value.From)} overlaps the "
                    + $"{Word(first.Opening.Kind)} at "
                    + $"{findings.Say(first.Opening.Along!.Value.From)} (openings/{first.Index}).",
                    second.Opening.Along.Value.From.Number(findings.Metric),
                    first.Opening.Along.Value.To.Number(findings.Metric),
                    LengthWords.Unit(findings.Metric));
            }
    }

    /// <summary>The kind in words: overhead door, eave light.</summary>
    public static string Word(OpeningKind kind) => kind switch
    {
        OpeningKind.WalkDoor => "walk door",
        OpeningKind.OverheadDoor => "overhead door",
        OpeningKind.SlidingDoor => "sliding door",
        OpeningKind.BifoldDoor => "bi-fold door",
        OpeningKind.FramedOpening => "framed opening",
        OpeningKind.EaveLight => "eave light",
        _ => kind.ToString().ToLowerInvariant(),
    };
}
