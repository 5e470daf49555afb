using System.Globalization;
using PostFrame.Documents.BarCodes;
using PostFrame.Documents.Drawing;
using PostFrame.Documents.Maps;

namespace PostFrame.Documents.Labels;

/// <summary>
/// Draws one label, from the top: plane, mark, length, map and QR, facts, bar code.
/// </summary>
internal sealed class LabelPage(
    LabelSet set, SmallMap map, PieceLabel label, int number)
{
    private const double WidthPt = 288;
    private const double HeightPt = 432;
    private const double Edge = 9;
    private const double Right = WidthPt - Edge;
    private const double Inner = WidthPt - 2 * Edge;

    /// <summary>Where the small map stands, left of a QR code of the smallest size.</summary>
    public static readonly Frame MapRoom = new(Edge, 213, 202, 102);

    /// <summary>20 mm and a little, so that a driver's rounding cannot fall short of 20.</summary>
    private const double MarkCapPt = 20.3 / 25.4 * 72;

    /// <summary>
    /// Source: NIOSH lifting equation, load constant 51 lb; 50 lb is common practice.
    /// </summary>
    private const double OnePersonLb = 50;

    private readonly Sketch sketch = new(WidthPt, HeightPt);
    private readonly double dotPt = 72 / 25.4 / set.PrinterDotsPerMm;

    public Sketch Draw()
    {
        Plane();
        Length();
        MapAndQr();
        Facts();
        BarCode();
        SafetyLine();
        return sketch;
    }

    private void Plane()
    {
        PlaneLook.Band(sketch, new Frame(Edge, Edge, Inner, 20), label.Kind);
        Squeezed(Lettering.Clean(label.PlaneTitle).ToUpperInvariant(), 61, 36);
        Mark();
        Fitted(label.StripText, new(Edge, 147), Inner, 14, bold: true);
        Rule(153);
    }

    /// <summary>A mark as Orders makes them is as high as it must be; anything else is kept small,
    /// because its letters may hang below the line.</summary>
    private void Mark()
    {
        var mark = Lettering.Clean(label.Mark);
        var isPlain = mark.All(c => char.IsAsciiLetterUpper(c) || char.IsAsciiDigit(c) || c == '-');
        Squeezed(mark, 130, isPlain ? MarkCapPt / Lettering.CapHeight : 32);
    }

    private void Length()
    {
        var widthRoom = 82.0;
        Fitted(label.CutText, new(Edge, 189), Inner - widthRoom, 44, bold: true);
        Fitted(label.CutAlsoText, new(Edge, 207), Inner - widthRoom, 12);
        Fitted($"× {label.WidthText}", new(Right, 182), widthRoom - 8, 24, true, Anchor.End);
        Fitted("wide", new(Right, 193), widthRoom - 8, 9, false, Anchor.End);
        Fitted(label.WidthAlsoText, new(Right, 207), widthRoom - 8, 12, false, Anchor.End);
        Rule(212);
    }

    private void MapAndQr()
    {
        var qr = new QrSymbol(label.PieceId);
        var module = WholeDots(0.75);
        var side = qr.Modules * module;
        var corner = new Spot(WholeDot(Right - side), WholeDot(213));
        qr.Draw(sketch, corner, module);
        Weight(new Frame(corner.X, corner.Y + side + 2, Right - corner.X, 37));
        map.Draw(sketch, label.Mark);
    }

    private void Facts()
    {
        Rule(318);
        var total = set.Labels.Count.ToString(CultureInfo.InvariantCulture);
        var order = $"Order {set.OrderNumber} · revision {set.Revision}";
        Fitted($"Piece {number} of {total}", new(Edge, 333), 128, 16, bold: true);
        Fitted(order, new(Right, 333), Inner - 134, 11, true, Anchor.End);
        Fitted(set.ShipTo, new(Edge, 343.5), Inner, 9.5);
        var product = Product();
        for (var row = 0; row < product.Length; row++)
        {
            Fitted(product[row], new(Edge, 353 + row * 9), Inner, 9);
        }

        Fitted(label.FacingText, new(Edge, product.Length > 1 ? 371 : 362), Inner, 9);
    }

    /// <summary>A title too long for one row has its R below it.</summary>
    private string[] Product()
    {
        var whole = Lettering.Clean(label.ProductText);
        return Lettering.Width(whole, 9, bold: false) <= Inner ? [whole] : whole.Split(" · ", 2);
    }

    private void Weight(Frame box)
    {
        var weight = Masses.Of(label.WeightLb, set.IsMetric);
        if (label.WeightLb <= OnePersonLb)
        {
            Fitted(weight, new(box.Centre.X, box.Y + 19), box.Width, 19, true, Anchor.Middle);
            if (!set.IsMetric)
            {
                var also = Masses.Of(label.WeightLb, isMetric: true);
                Fitted(also, new(box.Centre.X, box.Y + 31), box.Width, 10, false, Anchor.Middle);
            }

            return;
        }

        sketch.Fill(box, Ink.Black);
        Person(new(box.X + 7, box.Y + 3));
        Person(new(box.X + 19, box.Y + 3));
        White(weight, new((box.X + 26 + box.Right) / 2, box.Y + 18), box.Width - 29, 14);
        White("TWO PEOPLE", new(box.Centre.X, box.Bottom - 3), box.Width - 6, 9);
    }

    private void White(string text, Spot middle, double room, double size)
    {
        var (shown, fitted) = Lettering.Fit(text, room, size, size * 0.55, bold: true);
        sketch.Text(new Words(shown, middle, fitted)
        {
            Bold = true,
            Colour = Ink.White,
            Anchor = Anchor.Middle,
        });
    }

    /// <summary>A white figure 22 pt high, from the top of its head.</summary>
    private void Person(Spot top)
    {
        sketch.Dot(new(top.X, top.Y + 3), 3, Ink.White);
        sketch.Fill(new Frame(top.X - 5, top.Y + 7, 10, 8), Ink.White);
        sketch.Fill(new Frame(top.X - 3, top.Y + 15, 6, 7), Ink.White);
    }

    private void BarCode()
    {
        var values = Code128.Values(label.PieceId);
        var modules = Code128.Modules(values);
        var module = WholeDots(0.5);
        while (module * modules > Inner && module > dotPt)
        {
            module -= dotPt;
        }

        var left = WholeDot((WidthPt - module * modules) / 2);
        var frame = new Frame(left, WholeDot(376), module * modules, 27.5);
        Code128.Draw(sketch, frame, values, module);
        Centred(label.PieceId, new(WidthPt / 2, 414.5), 13.5);
    }

    private void SafetyLine() => sketch.Text(new Words(
        "Blanket hides holes and holds nothing: never step on it. Gloves, eye cover, dust mask.",
        new(WidthPt / 2, 425),
        6.9)
    {
        Anchor = Anchor.Middle,
    });

    /// <summary>Full height always; letters too wide for the label are made narrower.</summary>
    private void Squeezed(string text, double baseline, double size)
    {
        var wide = Lettering.Width(text, size, bold: true);
        var scale = Math.Min(1, Inner / wide);
        const double narrowest = 0.55;
        if (scale < narrowest)
        {
            var (shorter, smaller) = Lettering.Fit(
                text, Inner / narrowest, size, size * 0.6, bold: true);
            (text, size, scale) = (shorter, smaller, narrowest);
        }

        var bearing = size * scale * 0.07;
        sketch.Text(new Words(text, new(Edge - bearing, baseline), size)
        {
            Bold = true,
            ScaleX = scale,
        });
    }

    private void Fitted(
        string text,
        Spot at,
        double room,
        double size,
        bool bold = false,
        Anchor anchor = Anchor.Start)
    {
        var (shown, fitted) = Lettering.Fit(Lettering.Clean(text), room, size, size * 0.55, bold);
        sketch.Text(new Words(shown, at, fitted) { Bold = bold, Anchor = anchor });
    }

    private void Centred(string text, Spot at, double size) =>
        sketch.Text(new Words(text, at, size) { Bold = true, Anchor = Anchor.Middle });

    private void Rule(double y) => sketch.Line(new(Edge, y), new(Right, y), 0.8);

    /// <summary>A module of about this size [mm] that is whole printer dots [pt].</summary>
    private double WholeDots(double mm) =>
        Math.Max(1, Math.Round(mm * set.PrinterDotsPerMm)) * dotPt;

    /// <summary>The nearest place on the printer's grid of dots [pt].</summary>
    private double WholeDot(double pt) => Math.Round(pt / dotPt) * dotPt;
}
