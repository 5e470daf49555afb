using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using System.Text.Json;
using System.Text.Json.Serialization;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.TakeOff;
using Text = System.ComponentModel.DescriptionAttribute;

namespace PostFrame.SizingApi.ApiPages;

// What a sizing request may hold, for the API page only; requests are read member by member so
// that every mistake is found. A test holds the two to the same names.

[Text("A building and its insulation. Lengths are texts with their unit: \"10 ft\", "
    + "\"12' 6 1/2\\\"\", \"126 in\", \"4.2 m\". Unknown members are refused.")]
internal sealed record SizingRequest(
    [property: Required] BuildingRequest Building,
    [property: Required] IReadOnlyList<InsulationRequest> Insulation,
    PracticeRequest? Practice);

internal sealed record BuildingRequest(
    [property: Text("Shown on the drawing.")] string? Name,
    [property: Required, Text("Across, as widthBasis says.")] string Width,
    [property: Required, Text("Along the ridge, outside to outside of the endwall girts.")]
    string Length,
    [property: Required, Text("Up to the eave line, from eaveHeightDatum.")] string EaveHeight,
    [property: Text("Between which faces the width was measured. Default outsideOfGirts."),
        JsonConverter(typeof(WireWord<WidthBasis>))] WidthBasis? WidthBasis,
    [property: Text("From where heights are measured. Default stripBase."),
        JsonConverter(typeof(WireWord<EaveHeightDatum>))] EaveHeightDatum? EaveHeightDatum,
    [property: Text("How far girts stand outside the posts.")] string? GirtThickness,
    [property: Text("Depth of a post across the building; for clearSpan.")] string? PostDepth,
    [property: Text("Depth of the truss at the bearing; for datum bearing.")] string? HeelHeight,
    [property: Text("Purlins above the top chord; for datum bearing.")] string? PurlinDepth,
    [property: Text("How far the wall strips start above the datum.")]
    string? StripBaseAboveDatum,
    [property: Text("Masonry or concrete below the wall strips.")] string? StemWallHeight,
    [property: Required] RoofRequest Roof,
    IReadOnlyList<OpeningRequest>? Openings,
    IReadOnlyList<LeanToRequest>? LeanTos,
    PartitionRequest? Partition,
    FramingRequest? Framing);

internal sealed record RoofRequest(
    [property: Required, Text("Decides which of the other members count."),
        JsonConverter(typeof(WireWord<RoofForm>))] RoofForm Form,
    [property: Text("\"4:12\", \"18.5 deg\" or \"33 %\"; gable, monoslope.")] string? Slope,
    [property: Text("offsetRidge; doublePitch broken on side B.")] string? SlopeA,
    [property: Text("offsetRidge; doublePitch broken on side A.")] string? SlopeB,
    [property: Text("offsetRidge, doublePitch.")] string? RidgeFromSidewallA,
    [property: Text("Eave of sidewall B, same datum; offsetRidge, doublePitch.")]
    string? EaveHeightB,
    [property: Text("Peak height instead of a slope, or as a check.")] string? RidgeHeight,
    [property: Text("The part at the eave; gambrel, doublePitch.")] string? LowerSlope,
    [property: Text("Horizontal run of the lower part.")] string? LowerRun,
    [property: Text("The part at the ridge; gambrel, doublePitch.")] string? UpperSlope,
    [property: Text("Horizontal run of the upper part, as a check.")] string? UpperRun,
    [property: Text("gambrel: four equal chords in a half circle.")] bool? HalfOctagon,
    [property: Text("doublePitch: the side that changes slope."),
        JsonConverter(typeof(WireWord<BrokenSide>))] BrokenSide? BrokenSide,
    [property: Text("profile: the cross-section from sidewall A.")]
    IReadOnlyList<PointRequest>? Points,
    [property: JsonConverter(typeof(WireWord<RidgeKind>))] RidgeKind? Ridge,
    [property: Text("Start of a vent on part of the ridge, from endwall 1.")] string? VentFrom,
    [property: Text("Its end.")] string? VentTo,
    [property: Text("Horizontal width of the ridge slot; in place of ventSetback.")]
    string? VentSlotWidth,
    string? EaveOverhang,
    string? RakeOverhang,
    [property: Text("Blanket over the overhangs to the fascia. Default false.")]
    bool? CoverOverhangs,
    IReadOnlyList<PanelRequest>? TranslucentPanels);

internal sealed record PointRequest(string Across, string Up);

internal sealed record PanelRequest(
    [property: Text("roof, roofA or roofB.")] string? Plane,
    [property: Text("From endwall 1.")] string FromStart,
    string Width,
    [property: JsonConverter(typeof(WireWord<TranslucentTreatment>))]
    TranslucentTreatment? Treatment);

internal sealed record OpeningRequest(
    [property: Required, Text("Plane id, such as sidewallA or endwall1.")] string Wall,
    [property: Required, JsonConverter(typeof(WireWord<OpeningKind>))] OpeningKind Kind,
    [property: Text("Framed width.")] string? Width,
    [property: Text("Framed height.")] string? Height,
    [property: Text("Near jamb from endwall 1 or sidewall A, on a wall of a lean-to from where "
        + "that wall starts; left out: not fixed yet.")]
    string? FromStart,
    [property: Text("Bottom of the opening above the datum. Default 0.")] string? Sill);

internal sealed record LeanToRequest(
    [property: JsonConverter(typeof(WireWord<BuildingSide>))] BuildingSide Side,
    string Width,
    string Slope,
    [property: Text("Below the main eave line. Default 0.")] string? Drop,
    [property: Text("Where it starts along the building. Default 0.")] string? FromEndwall1,
    [property: Text("How long it is. Default to the far endwall.")] string? Length,
    [property: Text("What lies between it and the building; asked, never guessed."),
        JsonConverter(typeof(WireWord<LeanToInside>))] LeanToInside Inside);

internal sealed record PartitionRequest(
    string FromEndwall1,
    [property: Text("The endwall of the insulated part: 1 or 2.")] int? InsulatedEndwall);

internal sealed record FramingRequest(
    string? PurlinSpacing, string? GirtSpacing, string? MemberWidth, string? MemberDepth);

internal sealed record InsulationRequest(
    [property: Required, Text("Plane ids; roof stands for every slope of the main roof. "
        + "Each plane takes one product; a second layer is a request of its own.")]
    IReadOnlyList<string> Planes,
    [property: Required, Text("A code of GET /v1/products.")] string Product,
    [property: Text("Nominal width, or \"best\": buy the least area, then pieces.")]
    string? RollWidth,
    [property: JsonConverter(typeof(WireWord<RoofLayout>))] RoofLayout? RoofLayout,
    [property: JsonConverter(typeof(WireWord<BreakLayout>))] BreakLayout? BreakLayout,
    [property: Text("Wall strips start this far above the strip base.")] string? StartHeight,
    [property: Text("What to do with a last strip that covers under 6 in."),
        JsonConverter(typeof(WireWord<LastStrip>))] LastStrip? LastStrip,
    [property: Text("Spray foam: thickness to spray.")] string? Thickness);

[Text("The shop's own allowances and limits, where they differ from the usual ones.")]
internal sealed record PracticeRequest(
    [property: Text("Each piece is rounded up to this.")] string? RoundUpTo,
    string? Tolerance,
    string? EaveTuck,
    string? RidgeLap,
    string? JunctionLap,
    string? BreakLap,
    [property: Text("Back from a vented ridge, along the slope. Beside a ventSlotWidth it must "
        + "agree with half the slot times the slope factor within 1/8 in.")]
    string? VentSetback,
    string? VentFold,
    string? WallTop,
    string? WallBase,
    string? OpeningHead,
    string? CornerWrap,
    string? RakeWrap,
    string? JambMargin,
    string? PartitionLap,
    [property: Text("Added to roof slope lengths for sag.")] double? DrapePercent,
    [property: Text("Sag between two purlins, instead of a percentage: 8s²/(3m) in each space.")]
    string? DrapeSag,
    string? ShortHeader,
    [property: Text("Short headers over one opening become one piece along it where that fits and "
        + "buys no more area. Default true.")]
    bool? MergeShortHeaders,
    string? LongestOverRidge,
    [property: Text("A weight with its unit: \"50 lb\", \"23 kg\".")] string? OnePersonLimit,
    string? TwoPersonLimit,
    string? BagLimit,
    string? BagDiameter,
    string? PalletHeight,
    double? TapeExtraPercent,
    string? TapeRoll,
    string? DoubleFacedRoll,
    string? EndTrim,
    string? MinUsefulOffcut);

/// <summary>Enumerations as they are written on the wire: first letter small.</summary>
internal sealed class WireWord<T>() : JsonStringEnumConverter<T>(new SmallFirst())
    where T : struct, Enum
{
    private sealed class SmallFirst : JsonNamingPolicy
    {
        public override string ConvertName(string name) =>
            name.Length == 1 ? name : char.ToLowerInvariant(name[0]) + name[1..];
    }
}
