using System.Diagnostics;
using System.Globalization;
using PostFrame.Documents;

namespace PostFrame.Benchmarks;

/// <summary>Draws 100 labels, their checklist and the flat map, over and over.</summary>
internal static class PaperBenchmark
{
    private const int Rounds = 20;
    private const int PlaneCount = 5;
    private const int StripsPerPlane = 20;

    public static int Run(string[] args)
    {
        if (args.Length > 0)
        {
            Console.Error.WriteLine("paper takes no arguments.");
            return 2;
        }

        var map = Map();
        var labels = Labels(map);
        var list = List(map);
        var load = new ForeignLoad();
        Measure("100 labels, PDF", () => LabelSheet.Pdf(labels));
        Measure("checklist of 100 pieces, PDF", () => Checklist.Pdf(list));
        Measure("flat map, PDF", () => FlatMap.Pdf(map));
        Measure("flat map, SVG", () => FlatMap.Svg(map));
        Console.WriteLine($"other processes' load meanwhile: {load.Cores:0.00} cores of "
            + $"{Environment.ProcessorCount}");
        return 0;
    }

    private static void Measure(string what, Func<byte[]> draw)
    {
        var first = Stopwatch.GetTimestamp();
        var bytes = draw().Length;
        var cold = Stopwatch.GetElapsedTime(first).TotalMilliseconds;
        var times = new List<double>();
        var busy = BusyMs();
        for (var round = 0; round < Rounds; round++)
        {
            var start = Stopwatch.GetTimestamp();
            draw();
            times.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }

        busy = (BusyMs() - busy) / Rounds;
        times.Sort();
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{what,-30} first {cold,6:0} ms  median {times[Rounds / 2],6:0.0} ms  "
                + $"worst {times[^1],6:0.0} ms  processor {busy,6:0.0} ms  "
                + $"{bytes / 1024,5} KiB"));
    }

    /// <summary>Processor time of this process: what a busy machine leaves of a measure.</summary>
    private static double BusyMs()
    {
        using var self = Process.GetCurrentProcess();
        return self.TotalProcessorTime.TotalMilliseconds;
    }

    private static BuildingMap Map() => new()
    {
        Title = "Drawn to be measured",
        Planes = [.. Enumerable.Range(1, PlaneCount).Select(number => new MapPlane
        {
            Id = number switch { 1 => "roof", 2 => "sidewallA", 3 => "sidewallB", 4 => "endwall1",
                _ => "endwall2" },
            Title = $"Plane {number}",
            Kind = number switch { 1 => PlaneKind.Roof, < 4 => PlaneKind.Sidewall,
                _ => PlaneKind.Endwall },
            OutlineIn = [new(0, 0), new(960, 0), new(960, 240), new(0, 240)],
            Strips = [.. Enumerable.Range(0, StripsPerPlane).Select(strip => new MapStrip
            {
                Mark = $"P{number}-{strip + 1:00}",
                LengthText = "20 ft 6 in",
                FromIn = strip * 48,
                ToIn = strip * 48 + 48,
                BottomIn = 0,
                TopIn = 240,
            })],
        })],
    };

    private static LabelSet Labels(BuildingMap map) => new()
    {
        OrderNumber = "PF-1001",
        Revision = 1,
        ShipTo = "Cedar Bend Farm",
        Map = map,
        Labels = [.. map.Planes.SelectMany(plane => plane.Strips.Select(strip => new PieceLabel
        {
            PieceId = $"4K-{strip.Mark[1]}{strip.Mark[3..]}A",
            Mark = strip.Mark,
            Kind = plane.Kind,
            PlaneTitle = plane.Title,
            StripText = $"strip {strip.Mark[3..]} of {StripsPerPlane}",
            CutText = strip.LengthText,
            CutAlsoText = "246 in · 6248 mm",
            WidthText = "48 in",
            WidthAlsoText = "1219 mm",
            ProductText = "3 in faced glass-fibre blanket, white · nominal R-10",
            FacingText = "Facing toward the inside; the tab laps over the next strip",
            WeightLb = 15,
        }))],
    };

    private static PackingList List(BuildingMap map) => new()
    {
        OrderNumber = "PF-1001",
        Revision = 1,
        ShipTo = "Cedar Bend Farm",
        NeededBy = "2026-12-04",
        Map = map,
        StandingLine = "This sheet helps you cut and lay blanket.",
        Planes = [.. map.Planes.Select(plane => new PackedPlane
        {
            PlaneId = plane.Id,
            ProductText = "3 in faced glass-fibre blanket, white",
            TotalLengthText = "410 ft",
            Pieces = [.. plane.Strips.Select((strip, index) => new PackedPiece
            {
                Mark = strip.Mark,
                PieceId = $"4K-{strip.Mark[1]}{strip.Mark[3..]}A",
                CutText = strip.LengthText,
                WidthText = "48 in",
                WeightLb = 15,
                LabelNumber = index + 1,
            })],
        })],
    };
}
