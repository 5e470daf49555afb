using PostFrame.LabellingWorker.Labels;
using PostFrame.LabellingWorker.Messages;
using UglyToad.PdfPig;
using Xunit;

namespace PostFrame.ServicesTests.Labelling;

/// <summary>What of an order reaches the paper, read back by PdfPig.</summary>
public sealed class PrintedPaperTests
{
    [Fact]
    public void Nominal_R_and_facing_stand_on_the_label()
    {
        var text = LabelOf(plane => plane with { NominalR = 10, Facing = "White side down" });
        Assert.Contains("nominal R-10 before installation", text);
        Assert.Contains("White side down", text);
    }

    /// <summary>By hand: R-10 ÷ 5.678263 = 1.761 m²·K/W (NIST SP 811, appendix B.9).</summary>
    [Fact]
    public void Everything_on_a_metric_label_is_metric()
    {
        var text = LabelOf(plane => plane with { NominalR = 10, ProductTitle = "76 mm blanket" },
            piece => piece with { CutText = "10059 mm", WidthText = "1200 mm" });
        Assert.Contains("nominal R 1.76 m²·K/W before installation", text);
        Assert.DoesNotMatch(@"\d ?(in|ft|lb)\b|R-\d+ ", text);
    }

    /// <summary>The band of a sidewall above a dropped lean-to is one strip of 48 ft, 48 in wide:
    /// every other strip stands, and covers no more of the run than it is wide.</summary>
    [Theory]
    [InlineData(576, "full", "strip 1 of 10 · lies along the wall")]
    [InlineData(144, "header", "header, above the opening · lies along the wall")]
    [InlineData(48.0001, "full", "strip 1 of 1048 ft 0 in")]
    public void A_strip_that_lies_along_its_wall_says_so(double runIn, string role, string told) =>
        Assert.Contains(told, LabelOf(plane => plane, piece => piece with
        {
            Role = role,
            FromNm = 0,
            ToNm = (long)(runIn * 25_400_000),
            WidthNm = 48 * 25_400_000L,
            CutText = "48 ft 0 in",
        }));

    [Fact]
    public void A_label_without_nominal_R_claims_none() =>
        Assert.DoesNotContain("nominal R", LabelOf(plane => plane with { NominalR = null }));

    [Fact]
    public void A_ridge_vent_is_drawn_on_the_planes_checklist()
    {
        var vent = new ConfirmedLine
        {
            Kind = "ridgeVent",
            FromNm = 0,
            ToNm = 12_192_000_000,
            UpNm = 4_819_000_000,
        };
        var text = ChecklistOf(order => order with
        {
            Planes = [order.Planes[0] with { Lines = [vent] }, .. order.Planes.Skip(1)],
        });
        Assert.Contains("ridge vent", text);
    }

    [Fact]
    public void What_holds_for_this_building_stands_before_the_cautions()
    {
        var text = ChecklistOf(order => order with { Notes = ["Cut the panels out."] });
        Assert.Contains("This building• Cut the panels out.", text);
    }

    [Fact]
    public void Accessories_stand_on_the_packing_list()
    {
        var text = ChecklistOf(order => order with
        {
            Accessories = [new ConfirmedAccessory { Name = "Lap tape", Quantity = "4 rolls" }],
        });
        Assert.Contains("Lap tape4 rolls", text);
    }

    /// <summary>
    /// By hand: 10 pieces of 396 in are 330 ft; 20 of 126 in on two walls 105 ft each.
    /// </summary>
    [Fact]
    public void Lengths_of_a_plane_are_added_up()
    {
        var text = ChecklistOf(order => order);
        Assert.Contains("330 ft", text);
        Assert.Contains("105 ft", text);
    }

    /// <summary>By hand: ten roof pieces of 1500 in are 1250 ft.</summary>
    [Fact]
    public void Thousands_are_told_apart()
    {
        var text = ChecklistOf(order => order with
        {
            Pieces = [.. order.Pieces.Select(piece => piece with
            {
                CutNm = piece.Plane == "roof" ? 1500 * 25_400_000L : piece.CutNm,
            })],
        });
        Assert.Contains("1,250 ft", text);
    }

    /// <summary>By hand: 100 lb × 0.45359237 = 45.4 kg, rounded up.</summary>
    [Theory]
    [InlineData("6858 mm", "46 kg")]
    [InlineData("22 ft 6 in", "100 lb")]
    public void An_order_is_weighed_in_the_units_of_its_job(string cut, string weight)
    {
        var text = ChecklistOf(order => order with
        {
            Cautions = [],
            Pieces = [.. order.Pieces.Select(piece => piece with
            {
                CutText = cut,
                WeightLb = 100,
            })],
        });
        Assert.Contains(weight, text);
        Assert.DoesNotContain(weight.EndsWith("kg") ? " lb" : " kg", text);
    }

    /// <summary>270 in is 6858 mm, exactly: 1 in is 25.4 mm.</summary>
    [Theory]
    [InlineData("22 ft 6 in", "60 in", "270 in · 6858 mm", "1524 mm")]
    [InlineData("6858 mm", "1524 mm", "6.858 m", "1.524 m")]
    public void Each_length_stands_in_another_unit_too(
        string cut, string width, string cutAlso, string widthAlso)
    {
        var text = LabelOf(plane => plane, piece => piece with
        {
            CutNm = 6_858_000_000,
            WidthNm = 1_524_000_000,
            CutText = cut,
            WidthText = width,
        });
        Assert.All([cut, width, cutAlso, widthAlso], part => Assert.Contains(part, text));
    }

    [Fact]
    public void The_standing_caution_stands_at_the_foot_and_not_twice_in_the_list()
    {
        var text = ChecklistOf(order => order with
        {
            Cautions =
            [
                new ConfirmedCaution
                {
                    Id = "standing", Topic = "Its topic", Text = "They decide.", Basis = "ours",
                },
            ],
        });
        Assert.Contains("They decide.", text);
        Assert.DoesNotContain("Its topic", text);
    }

    /// <summary>
    /// A lean-to as long as its half of the wall is drawn below that half, not below its start.
    /// </summary>
    [Theory]
    [InlineData(null, 0)]
    [InlineData(6_096_000_000, 0.5)]
    public void A_plane_is_drawn_where_its_order_says_it_starts(long? startNm, double share)
    {
        var (order, _) = LabellingHost.Example();
        var wall = order.Data.Planes.First(plane => plane.Plane == "sidewallA");
        var lean = wall with
        {
            Plane = "leanSidewallA",
            StartNm = startNm,
            Outline = [.. wall.Outline.Select(corner => corner with
            {
                AcrossNm = corner.AcrossNm / 2,
            })],
        };
        var map = PrintedPaper.Map(order.Data with { Planes = [wall, lean] });
        var run = map.Planes[0].OutlineIn.Max(corner => corner.AcrossIn);
        Assert.Equal(share, map.Planes.Single(plane => plane.Id == lean.Plane).StartIn / run, 9);
    }

    private static string LabelOf(
        Func<ConfirmedPlane, ConfirmedPlane> plane,
        Func<ConfirmedPiece, ConfirmedPiece>? piece = null)
    {
        var (order, plan) = LabellingHost.Example();
        var changed = order.Data with
        {
            Planes = [.. order.Data.Planes.Select(plane)],
            Pieces = [.. order.Data.Pieces.Select(piece ?? (same => same))],
        };
        using var labels = PdfDocument.Open(PrintedPaper.Draw(changed, plan.Data).LabelsPdf);
        return labels.GetPage(1).Text;
    }

    private static string ChecklistOf(Func<OrderConfirmedData, OrderConfirmedData> change)
    {
        var (order, plan) = LabellingHost.Example();
        using var checklist = PdfDocument.Open(
            PrintedPaper.Draw(change(order.Data), plan.Data).ChecklistPdf);
        return string.Concat(checklist.GetPages().Select(page => page.Text));
    }
}
