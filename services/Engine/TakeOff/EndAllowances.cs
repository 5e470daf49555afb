using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;

namespace PostFrame.Engine.TakeOff;

/// <summary>What each end of a piece adds to its length.</summary>
/// <remarks>Source: takeoff.md 2.4 and 2.5.</remarks>
internal sealed class EndAllowances(Building building, Practice practice)
{
    /// <summary>Allowances at the lower end of a piece.</summary>
    public IEnumerable<Allowance> AtBottom(Plane plane, PlaneEnd end) =>
        At(end, plane.Slopes.Count > 0 ? plane.Slopes[0] : null);

    /// <summary>Allowances at the upper end of a piece.</summary>
    public IEnumerable<Allowance> AtTop(Plane plane, PlaneEnd end) =>
        At(end, plane.Slopes.Count > 0 ? plane.Slopes[^1] : null);

    private IEnumerable<Allowance> At(PlaneEnd end, SlopePart? slope)
    {
        switch (end)
        {
            case PlaneEnd.Eave:
                yield return One("eaveTuck", "tucked over the eave purlin", practice.EaveTuck);
                break;
            case PlaneEnd.Ridge:
                yield return One("ridgeLap", "lapped past the closed ridge", practice.RidgeLap);
                break;
            case PlaneEnd.VentedRidge:
                yield return Setback(slope!);
                yield return One("ventFold", "folded back at the vent slot", practice.VentFold);
                break;
            case PlaneEnd.Junction:
                yield return One(
                    "junctionLap", "lapped where the lean-to meets the building",
                    practice.JunctionLap);
                break;
            case PlaneEnd.Break:
                yield return One("breakLap", "lapped at the break", practice.BreakLap);
                break;
            case PlaneEnd.WallTop:
                yield return One("wallTop", "over the top of the wall", practice.WallTop);
                break;
            case PlaneEnd.WallBase:
                yield return One("wallBase", "folded at the skirt board", practice.WallBase);
                break;
            case PlaneEnd.OpeningEdge:
                yield return One("openingHead", "folded at the opening", practice.OpeningHead);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(end), end, "Unknown end.");
        }
    }

    /// <summary>Half the slot along the slope, when a slot was given: v = (t/2)·k.</summary>
    private Allowance Setback(SlopePart slope) => building.VentSlot is { } slot
        ? new(
            "ventSetback",
            $"less half the slot {Say(slot)} × slope factor {slope.Slope.Factor:0.000000}",
            -slot.Times(slope.Slope.Factor / 2), "asked")
        : new(
            "ventSetback", "less the set-back from the vented ridge", -practice.VentSetback,
            practice.MarkOf("ventSetback"));

    private Allowance One(string id, string text, Length value) =>
        new(id, text, value, practice.MarkOf(id));

    private string Say(Length length) => length.Say(practice.Metric);
}
