using System.Globalization;
using PostFrame.Engine;
using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;
using Xunit;
using static PostFrame.EngineTests.TakeOff.Ask;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>Source: takeoff.md 2.1 and 2.2.</summary>
public sealed class SlopeAndDatumTests
{
    public static TheoryData<double, double, double> Factors()
    {
        var data = new TheoryData<double, double, double>();
        foreach (var row in ReferenceTable.Rows("slope-factors.csv"))
            data.Add(Number(row["x"]), Number(row["k"]), Number(row["degrees"]));
        return data;

        static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
    }

    [Theory, MemberData(nameof(Factors))]
    public void Slope_factor_and_angle_are_those_of_the_table_in_2_1(
        double x, double k, double degrees)
    {
        var slope = Slope.FromRisePer12(x);
        Assert.Equal(k, slope.Factor, 0.0000005);
        Assert.Equal(degrees, slope.TotalDegrees, 0.0005);
        Assert.Equal(x, Slope.FromDegrees(slope.TotalDegrees).RisePer12, 1e-9);
        Assert.Equal(x, Slope.FromPercent(x / 0.12).RisePer12, 1e-9);
    }

    [Fact]
    public void A_rounded_slope_factor_would_be_out_by_up_to_3_8_in_over_a_60_ft_run_2_1()
    {
        var worst = Enumerable.Range(1, 240).Select(x => Slope.FromRisePer12(x / 10.0).Factor)
            .Max(k => Math.Abs(k - Math.Round(k, 3)) * 720);
        Assert.InRange(worst, 0.34, 0.375);
    }

    [Theory]
    [InlineData(5.5, 131.2975)]
    [InlineData(0, 125.5)]
    public void A_bearing_height_comes_to_the_eave_line_of_2_2(double purlin, double expected)
    {
        var result = Job(360, 480, 120, Gable(4), Cover(48, Walls)).With(b => b with
        {
            EaveHeightDatum = EaveHeightDatum.Bearing,
            HeelHeight = In(6),
            PurlinDepth = In(purlin),
            GirtThickness = In(1.5),
        }).Sized();
        Assert.Equal(expected, result.Building.EaveHeight.TotalInches, 0.00005);
    }

    [Fact]
    public void How_a_bearing_height_or_a_clear_span_came_to_the_girts_is_told_for_a_pencil()
    {
        var told = Job(360, 480, 120, Gable(4), Cover(48, Walls)).With(b => b with
        {
            WidthBasis = WidthBasis.ClearSpan,
            PostDepth = In(5.5),
            EaveHeightDatum = EaveHeightDatum.Bearing,
            HeelHeight = In(6),
            PurlinDepth = In(5.5),
            GirtThickness = In(1.5),
        }).Sized().Assumptions.ToDictionary(a => a.Id, a => a.Text);
        Assert.EndsWith(
            "clear span 360 in + 2 × posts 5 1/2 in + 2 × girts 1 1/2 in", told["width"],
            StringComparison.Ordinal);
        Assert.EndsWith(
            "bearing 120 in + heel 6 in + purlins 5 1/2 in × 1.054093 − girts 1 1/2 in × 4/12",
            told["eaveHeight"], StringComparison.Ordinal);
    }

    [Fact]
    public void A_height_from_the_floor_tells_that_strips_are_taken_to_start_there()
    {
        var told = Assert.Single(Job(360, 480, 120, Gable(4), Cover(48, Walls)).With(b => b with
        {
            EaveHeightDatum = EaveHeightDatum.Floor,
        }).Sized().Assumptions, a => a.Id == "eaveHeight");
        Assert.EndsWith(
            "120 in from the floor, where the strips start", told.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(WidthBasis.OutsideOfPosts, 363, 191.318)]
    [InlineData(WidthBasis.OutsideOfGirts, 360, 189.737)]
    [InlineData(WidthBasis.ClearSpan, 374, 197.115)]
    public void A_width_comes_to_the_outside_of_the_girts_by_2_2(
        WidthBasis basis, double width, double slopeLength)
    {
        var result = Job(360, 480, 120, Gable(4), Cover(48, "roofA")).With(b => b with
        {
            WidthBasis = basis,
            GirtThickness = In(1.5),
            PostDepth = basis == WidthBasis.ClearSpan ? In(5.5) : null,
        }).Sized();
        Assert.Equal(In(width), result.Building.Width);
        Assert.Equal(
            slopeLength, result.PlaneAt("roofA").Outline.Max(p => p.Up.TotalInches), 0.0006);
    }

    [Theory]
    [InlineData(EaveHeightDatum.Grade, 8)]
    [InlineData(EaveHeightDatum.SplashBoard, 2.5)]
    [InlineData(EaveHeightDatum.Floor, -4)]
    public void A_height_from_another_datum_loses_what_the_strip_base_lies_above_it_2_2(
        EaveHeightDatum datum, double stripBaseAbove)
    {
        var result = Job(360, 480, 120, Gable(4), Cover(48, "sidewallA")).With(b => b with
        {
            EaveHeightDatum = datum,
            StripBaseAboveDatum = In(stripBaseAbove),
        }).Sized();
        Assert.Equal(In(120 - stripBaseAbove + 6), result.PieceAt("SA-01").Exact);
    }

    [Fact]
    public void A_ridge_height_stands_for_the_slope_by_2_2()
    {
        var bySlope = Job(360, 480, 120, Gable(4), Cover(48, [.. Walls, "roof"])).Sized();
        var byPeak = Job(
            360, 480, 120, new() { Form = RoofForm.Gable, RidgeHeight = In(180) },
            Cover(48, [.. Walls, "roof"])).Sized();
        Assert.Equal(
            bySlope.Pieces.Select(p => (p.Mark, p.Cut, p.Exact)),
            byPeak.Pieces.Select(p => (p.Mark, p.Cut, p.Exact)));
    }

    [Fact]
    public void A_ridge_height_over_a_bearing_gives_the_slope_that_closes()
    {
        var bearing = new Func<BuildingInput, BuildingInput>(b => b with
        {
            EaveHeightDatum = EaveHeightDatum.Bearing,
            HeelHeight = In(6),
            PurlinDepth = In(5.5),
            GirtThickness = In(1.5),
        });
        var bySlope = Job(360, 480, 120, Gable(4), Cover(48, Walls)).With(bearing).Sized();
        var byPeak = Job(
            360, 480, 120,
            new() { Form = RoofForm.Gable, RidgeHeight = bySlope.Building.RidgeHeight },
            Cover(48, Walls)).With(bearing).Sized();
        Assert.Equal(131.2975, byPeak.Building.EaveHeight.TotalInches, 0.0001);
    }
}
