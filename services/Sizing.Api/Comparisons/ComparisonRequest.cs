using System.ComponentModel.DataAnnotations;
using Text = System.ComponentModel.DescriptionAttribute;

namespace PostFrame.SizingApi.Comparisons;

// What a comparison request may hold, for the API page only; requests are read member by member so
// that every mistake is found. A test holds the two to the same names.

[Text("One plane, the weather, and the lines to compare. Quantities are texts with their unit: "
    + "\"24 in\", \"4:12\", \"2400 ft2\", \"55 °F\". Unknown members are refused.")]
internal sealed record ComparisonRequest(
    [property: Text("ashrae (default) or iso6946: one for the whole answer.")] string? Basis,
    [property: Required] ComparedPlaneRequest Plane,
    [property: Text("Where it stands; own design values win over the station's.")]
    ComparedClimateRequest? Climate,
    [property: Text("How the room is used and kept; for moisture and energy.")]
    ComparedRoomRequest? Room,
    [property: Text("What heat is bought as; for energy and payback.")] ComparedFuelRequest? Fuel,
    [property: Text("The code row to hold the plane against.")] ComparedCodeRequest? Code,
    [property: Text("The rest of the building, the same for every line.")]
    ComparedBuildingRequest? Building,
    [property: Text("Our products.")] IReadOnlyList<ComparedOptionRequest>? Options,
    [property: Text("Quotes as they were typed; leave out what was not said.")]
    IReadOnlyList<ComparedRivalRequest>? Rivals,
    [property: Text("Open every number to formula, inputs, source and mark.")] bool? Working,
    [property: Text("Pictures as SVG texts; default true.")] bool? Pictures,
    [property: Text("us (default) or metric: of words and pictures; figures name their own.")]
    string? Units);

internal sealed record ComparedPlaneRequest(
    [property: Required, Text("roof or wall.")] string Kind,
    [property: Text("\"4:12\", \"18.5 deg\"; of a roof.")] string? Slope,
    [property: Text("\"2400 ft2\"; for energy and prices.")] string? Area,
    [property: Text("light, medium or dark outside.")] string? Colour,
    [property: Required] ComparedFramingRequest Framing);

internal sealed record ComparedFramingRequest(
    [property: Text("wood (default) or steel; steel takes tested values only.")] string? Material,
    [property: Text("Steel roofs: standingSeamWithBlocks or throughFastened.")] string? System,
    [property: Text("Width of a purlin or girt, \"1.5 in\".")] string? Width,
    [property: Text("Centre to centre, \"24 in\".")] string? Spacing,
    [property: Text("Across the plane, \"3.5 in\".")] string? Depth);

internal sealed record ComparedClimateRequest(
    string? PostalCode, string? CountyFips, string? StationWmo, string? Zone,
    [property: Text("\"-20 °F\".")] string? WinterDesign,
    [property: Text("\"90 °F\".")] string? SummerDesign,
    [property: Text("Sun on the plane in summer [W/m²].")] double? Sun,
    [property: Text("To the balance point, \"3629 °F·d\".")] string? HeatingDegreeDays);

internal sealed record ComparedRoomRequest(
    [property: Text("dryStorage, workshop, dwelling, livestock or washBay.")] string? Use,
    bool? Heated, string? HeatedTo, string? CooledTo,
    [property: Text("Instead of use: excess vapour pressure when it freezes outdoors [Pa].")]
    double? MoistureExcess,
    [property: Text("A heater without a flue.")] ComparedBurnerRequest? Burner);

internal sealed record ComparedBurnerRequest(
    [property: Text("naturalGas, propane or kerosene.")] string Fuel,
    [property: Text("\"60000 Btu/h\".")] string Input,
    [property: Text("\"40000 ft3\".")] string Volume, double AirChangesPerHour);

internal sealed record ComparedFuelRequest(
    [property: Required, Text("naturalGas, propane, heatingOil, electricity or heatPump.")]
    string Kind,
    [property: Required, Text("Share of the fuel's heat that reaches the room, at most 1; of a "
        + "heat pump its seasonal COP, 1 to 6.")]
    double Efficiency,
    [property: Text("Per therm, gallon or kilowatt-hour.")] double? PricePerUnit,
    [property: Text("Outdoor temperature that needs no heating, \"50 °F\".")] string? BalancePoint);

internal sealed record ComparedCodeRequest(
    [property: Required, Text("ashrae90.1 or ieccCommercial.")] string Standard,
    [property: Required, Text("2016, 2018, 2019 or 2021.")] string Edition,
    [property: Required] string Conditioning, [property: Required] string Construction);

internal sealed record ComparedBuildingRequest(
    IReadOnlyList<ComparedElementRequest>? OtherElements, string? Volume,
    double? AirChangesPerHour, string? SlabEdge);

internal sealed record ComparedElementRequest(string Name, string Area, double AssemblyR);

internal sealed record ComparedOptionRequest(
    [property: Required, Text("A code of GET /v1/products.")] string Product, string? Name,
    string? RoomFace, string? CladdingFace, double? Perm, string? Placement,
    IReadOnlyList<ComparedSpaceRequest>? AirSpaces, double? Price, double? PricePerFt2,
    string? Area);

internal sealed record ComparedRivalRequest(
    string? Name,
    [property: Required, Text("blanket, batt, closedCellFoam, openCellFoam, polyisoBoard, "
        + "xpsBoard, epsBoard, cellulose, bubbleSheet or foilSheet.")] string Kind,
    [property: Text("The R that was claimed [h·ft²·°F/Btu].")] double? ClaimedR,
    [property: Text("\"Cuts radiant heat by … %\".")] double? ClaimedRadiantCut,
    string? Thickness,
    [property: Text("brightFoil, metallizedFilm, dampFoil, wetFoil, dustyFoil, galvanizedSteel, "
        + "paintedSteel, whiteFacing, bare or wood.")] string? RoomFace,
    string? CladdingFace, double? Perm,
    [property: Text("overFraming, betweenFraming or underFraming.")] string? Placement,
    [property: Text("Empty for none; leave out when nothing was said.")]
    IReadOnlyList<ComparedSpaceRequest>? AirSpaces,
    double? Price, double? PricePerFt2, string? Area);

internal sealed record ComparedSpaceRequest(
    [property: Text("room or cladding.")] string? Side, string? Thickness,
    [property: Text("enclosed, slightlyVentilated, ventilated or claddingRibs.")] string? Kind,
    [property: Text("The face opposite the insulation; painted or wood when left out.")]
    string? Facing);
