using System.Globalization;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;
using Xunit;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>The catalogue's figures against takeoff.md 4.1, 4.2 and 2.6.</summary>
public sealed class CatalogueTests
{
    public static TheoryData<string> Codes => [.. ProductCatalogue.All.Select(p => p.Code)];

    [Fact]
    public void Codes_are_kebab_case_and_their_own()
    {
        Assert.All(ProductCatalogue.All, p => Assert.Matches("^[a-z0-9]+(-[a-z0-9]+)*$", p.Code));
        Assert.Equal(
            ProductCatalogue.All.Count,
            ProductCatalogue.All.Select(p => p.Code).Distinct().Count());
    }

    [Theory, MemberData(nameof(Codes))]
    public void Every_figure_has_a_mark_and_a_source(string code)
    {
        var p = ProductCatalogue.Find(code)!;
        (string Mark, string Source)[] figures =
        [
            (p.Thickness.Mark, p.Thickness.Source), (p.NominalR.Mark, p.NominalR.Source),
            (p.Construction.Mark, p.Construction.Source),
            (p.PoundsPerSquareFoot.Mark, p.PoundsPerSquareFoot.Source),
            (p.Perm.Mark, p.Perm.Source),
            (p.RoomFaceEmittance.Mark, p.RoomFaceEmittance.Source),
            (p.CladdingFaceEmittance.Mark, p.CladdingFaceEmittance.Source),
        ];
        Assert.All(figures, f => Assert.Contains(f.Mark, new[] { "P", "C", "M", "D" }));
        Assert.All(figures, f => Assert.NotEmpty(f.Source));
    }

    [Fact]
    public void Blanket_is_as_the_table_of_4_1_has_it()
    {
        foreach (var row in ReferenceTable.Rows("blanket-products.csv"))
            foreach (var facing in new[] { "white", "foil" })
            {
                var p = ProductCatalogue.Find($"blanket-{row["inches"]}-{facing}")!;
                Assert.Equal(Number("inches"), p.Thickness.Value.TotalInches);
                Assert.InRange(p.NominalR.Value.TotalRValue,
                    Number("r_least") - 1e-9, Number("r_most") + 1e-9);
                Assert.Equal(Number("pounds_per_ft2"), p.PoundsPerSquareFoot.Value);
                Assert.All(p.Rolls, r => Assert.InRange(
                    r.RollLength.TotalFeet, Number("roll_least"), Number("roll_most")));
                Assert.Superset(new HashSet<double> { 36, 48, 60, 72 },
                    p.Rolls.Select(r => r.Width.TotalInches).ToHashSet());

                double Number(string column) =>
                    double.Parse(row[column], CultureInfo.InvariantCulture);
            }
    }

    [Fact]
    public void Bubble_sheet_comes_in_rolls_of_100_to_125_ft_as_4_2_has_it() =>
        Assert.All(
            ProductCatalogue.All.Where(p => p.Kind == ProductKind.BubbleSheet)
                .SelectMany(p => p.Rolls),
            r => Assert.InRange(r.RollLength.TotalFeet, 100, 125));

    [Fact]
    public void Bubble_sheet_by_itself_is_R_1_0_to_1_2_and_never_above_1_5()
    {
        // Common practice, no source; takeoff.md 4.2: "only about R-1".
        var bubble = ProductCatalogue.All.Where(p => p.Kind == ProductKind.BubbleSheet);
        Assert.All(bubble, p => Assert.InRange(p.NominalR.Value.TotalRValue, 1.0, 1.2));
    }

    [Theory, MemberData(nameof(Codes))]
    public void Rolls_of_a_metric_width_have_a_metric_length(string code)
    {
        foreach (var roll in ProductCatalogue.Find(code)!.Rolls)
            Assert.Equal(0, roll.RollLength.Nanometres % (roll.Metric
                ? Length.FromMillimetres(1000).Nanometres
                : Length.FromFeet(1).Nanometres));
    }

    [Theory]
    [InlineData(StripConstruction.TabOutside)]
    [InlineData(StripConstruction.TwoTabs)]
    [InlineData(StripConstruction.LapInside)]
    [InlineData(StripConstruction.FlangeOutside)]
    public void Every_construction_of_2_6_is_offered_in_feet_and_in_metres(
        StripConstruction construction)
    {
        var products = ProductCatalogue.All.Where(p => p.Construction.Value == construction)
            .ToArray();
        Assert.NotEmpty(products);
        Assert.All(products, p => Assert.Equal(
            [false, true], p.Rolls.Select(r => r.Metric).Distinct().Order()));
    }

    [Theory]
    [InlineData("blanket-3-white-two-tabs", 48, 48, 54)]
    [InlineData("bubble-foil-flange", 48, 48, 50)]
    [InlineData("blanket-3-white", 48, 48, 51)]
    [InlineData("bubble-foil", 48, 46, 48)]
    public void Coverage_and_facing_follow_the_construction_of_2_6(
        string code, double width, double coverage, double facing)
    {
        var p = ProductCatalogue.Find(code)!;
        Assert.Equal(coverage, p.CoverageOf(Length.FromInches(width)).TotalInches);
        Assert.Equal(facing, p.FacingWidthOf(Length.FromInches(width)).TotalInches);
    }

    [Theory]
    [InlineData(StripConstruction.TabOutside, 48, 51)]
    [InlineData(StripConstruction.TwoTabs, 48, 54)]
    [InlineData(StripConstruction.LapInside, 46, 48)]
    [InlineData(StripConstruction.FlangeOutside, 48, 51)]
    public void Each_construction_covers_what_2_6_says(
        StripConstruction construction, double coverage, double facing)
    {
        var p = ProductCatalogue.Find("blanket-3-white")! with
        {
            Construction = new(construction, "C", "test"),
            LapInsideWidth = Length.FromInches(2),
        };
        Assert.Equal(coverage, p.CoverageOf(Length.FromInches(48)).TotalInches);
        Assert.Equal(facing, p.FacingWidthOf(Length.FromInches(48)).TotalInches);
    }

    [Fact]
    public void An_unknown_code_finds_nothing() => Assert.Null(ProductCatalogue.Find("blanket-9"));
}
