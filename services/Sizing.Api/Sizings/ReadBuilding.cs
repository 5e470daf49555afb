using PostFrame.Engine;
using PostFrame.Engine.Buildings;
using PostFrame.Problems;

namespace PostFrame.SizingApi.Sizings;

/// <summary>
/// Reads <c>/building</c>. Only the form of each member is judged here; what a building needs and
/// what is possible, the engine says.
/// </summary>
internal static class ReadBuilding
{
    private const int MostOpenings = 200;
    private const int MostPoints = 40;
    private const int MostPanels = 60;

    public static BuildingInput? From(RequestObject? place)
    {
        if (place is not { IsPresent: true })
        {
            return null;
        }

        var building = new BuildingInput
        {
            Name = place.OptionalText("name", 80),
            Width = place.OptionalLength("width"),
            Length = place.OptionalLength("length"),
            EaveHeight = place.OptionalLength("eaveHeight"),
            WidthBasis = place.OptionalChoice<WidthBasis>("widthBasis"),
            EaveHeightDatum = place.OptionalChoice<EaveHeightDatum>("eaveHeightDatum"),
            GirtThickness = place.OptionalLength("girtThickness"),
            PostDepth = place.OptionalLength("postDepth"),
            HeelHeight = place.OptionalLength("heelHeight"),
            PurlinDepth = place.OptionalLength("purlinDepth"),
            StripBaseAboveDatum = place.OptionalLength("stripBaseAboveDatum"),
            StemWallHeight = place.OptionalLength("stemWallHeight"),
            Roof = Roof(place.OptionalObject("roof")),
            Openings = [.. place.OptionalObjects("openings", MostOpenings).Select(Opening)],
            LeanTos = [.. place.OptionalObjects("leanTos", 2).Select(LeanTo)],
            Partition = Partition(place.OptionalObject("partition")),
            Framing = Framing(place.OptionalObject("framing")),
        };
        place.Close();
        return building;
    }

    private static RoofInput? Roof(RequestObject? place)
    {
        if (place is not { IsPresent: true })
        {
            return null;
        }

        var roof = new RoofInput
        {
            Form = place.OptionalChoice<RoofForm>("form"),
            Slope = place.OptionalSlope("slope"),
            SlopeA = place.OptionalSlope("slopeA"),
            SlopeB = place.OptionalSlope("slopeB"),
            RidgeFromSidewallA = place.OptionalLength("ridgeFromSidewallA"),
            EaveHeightB = place.OptionalLength("eaveHeightB"),
            RidgeHeight = place.OptionalLength("ridgeHeight"),
            LowerSlope = place.OptionalSlope("lowerSlope"),
            LowerRun = place.OptionalLength("lowerRun"),
            UpperSlope = place.OptionalSlope("upperSlope"),
            UpperRun = place.OptionalLength("upperRun"),
            HalfOctagon = place.OptionalFlag("halfOctagon") ?? false,
            BrokenSide = place.OptionalChoice<BrokenSide>("brokenSide"),
            Points = Points(place),
            Ridge = place.OptionalChoice<RidgeKind>("ridge"),
            VentFrom = place.OptionalLength("ventFrom"),
            VentTo = place.OptionalLength("ventTo"),
            VentSlotWidth = place.OptionalLength("ventSlotWidth"),
            EaveOverhang = place.OptionalLength("eaveOverhang"),
            RakeOverhang = place.OptionalLength("rakeOverhang"),
            CoverOverhangs = place.OptionalFlag("coverOverhangs") ?? false,
            TranslucentPanels =
                [.. place.OptionalObjects("translucentPanels", MostPanels).Select(Panel)],
        };
        place.Close();
        return roof;
    }

    private static List<ProfilePointInput>? Points(RequestObject roof)
    {
        if (!roof.Has("points"))
        {
            return null;
        }

        return [.. roof.OptionalObjects("points", MostPoints).Select(place =>
        {
            var point = new ProfilePointInput
            {
                Across = place.OptionalLength("across"),
                Up = place.OptionalLength("up"),
            };
            place.Close();
            return point;
        })];
    }

    private static TranslucentPanelInput Panel(RequestObject place)
    {
        var panel = new TranslucentPanelInput
        {
            Plane = place.OptionalText("plane", 40),
            FromStart = place.OptionalLength("fromStart"),
            Width = place.OptionalLength("width"),
            Treatment = place.OptionalChoice<TranslucentTreatment>("treatment"),
        };
        place.Close();
        return panel;
    }

    private static OpeningInput Opening(RequestObject place)
    {
        var opening = new OpeningInput
        {
            Wall = place.OptionalText("wall", 40),
            Kind = place.OptionalChoice<OpeningKind>("kind"),
            Width = place.OptionalLength("width"),
            Height = place.OptionalLength("height"),
            FromStart = place.OptionalLength("fromStart"),
            Sill = place.OptionalLength("sill"),
        };
        place.Close();
        return opening;
    }

    private static LeanToInput LeanTo(RequestObject place)
    {
        var leanTo = new LeanToInput
        {
            Side = place.OptionalChoice<BuildingSide>("side"),
            Width = place.OptionalLength("width"),
            Slope = place.OptionalSlope("slope"),
            Drop = place.OptionalLength("drop"),
            FromEndwall1 = place.OptionalLength("fromEndwall1"),
            Length = place.OptionalLength("length"),
            Inside = place.OptionalChoice<LeanToInside>("inside"),
        };
        place.Close();
        return leanTo;
    }

    private static PartitionInput? Partition(RequestObject? place)
    {
        if (place is not { IsPresent: true })
        {
            return null;
        }

        var partition = new PartitionInput
        {
            FromEndwall1 = place.OptionalLength("fromEndwall1"),
            InsulatedEndwall = place.OptionalWhole("insulatedEndwall", 1, 2),
        };
        place.Close();
        return partition;
    }

    private static FramingInput? Framing(RequestObject? place)
    {
        if (place is not { IsPresent: true })
        {
            return null;
        }

        var framing = new FramingInput
        {
            PurlinSpacing = place.OptionalLength("purlinSpacing"),
            GirtSpacing = place.OptionalLength("girtSpacing"),
            MemberWidth = place.OptionalLength("memberWidth"),
            MemberDepth = place.OptionalLength("memberDepth"),
        };
        place.Close();
        return framing;
    }
}
