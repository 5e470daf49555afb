using PostFrame.Documents.Drawing;
using QRCoder;

namespace PostFrame.Documents.BarCodes;

/// <summary>A QR code drawn as whole squares. Source: ISO/IEC 18004, through QRCoder.</summary>
internal sealed class QrSymbol
{
    private readonly bool[][] dark;

    /// <param name="text">Upper case and digits keep the symbol small.</param>
    /// <param name="forShopFloor">Level Q (recovers about 25 %) instead of M (about 15 %).</param>
    public QrSymbol(string text, bool forShopFloor = false)
    {
        using var code = QRCodeGenerator.GenerateQrCode(
            text, forShopFloor ? QRCodeGenerator.ECCLevel.Q : QRCodeGenerator.ECCLevel.M);
        dark = [.. code.ModuleMatrix.Select(row => row.Cast<bool>().ToArray())];
    }

    /// <summary>Side with the quiet zone of four modules [modules].</summary>
    public int Modules => dark.Length;

    /// <summary>Draws the symbol with its quiet zone from a corner at a module size [pt].</summary>
    public void Draw(Sketch sketch, Spot corner, double module)
    {
        var squares = new List<Frame>();
        for (var row = 0; row < dark.Length; row++)
        {
            for (var column = 0; column < dark.Length;)
            {
                var run = dark[row].Skip(column).TakeWhile(isDark => isDark).Count();
                if (run > 0)
                {
                    squares.Add(new Frame(
                        corner.X + column * module, corner.Y + row * module, run * module, module));
                }

                column += Math.Max(run, 1);
            }
        }

        sketch.Bars(squares);
    }
}
