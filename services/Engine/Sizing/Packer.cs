using PostFrame.Engine.Buildings;
using PostFrame.Engine.Quantities;
using PostFrame.Engine.TakeOff;

namespace PostFrame.Engine;

/// <summary>Coils, bags, pallets and freight of the pieces.</summary>
/// <remarks>
/// Source: takeoff.md 4.6: one piece per bag; wall pieces of consecutive strips may share one
/// within weight and diameter; 48 in coils stand on end, wider ones lie flat. Common practice.
/// </remarks>
internal sealed class Packer(Job job)
{
    private static readonly Length PalletSide = Length.FromInches(48);

    /// <summary>Four coils of this size fill a pallet layer; a shared bag is not made bigger.
    /// </summary>
    private static readonly Length SharedCoil = PalletSide.Times(0.5);

    public Packing? Pack()
    {
        if (job.Pieces.Count == 0) return null;
        var bags = new List<Bag>();
        foreach (var pieces in Shared())
            bags.Add(BagOf(bags.Count + 1, pieces));
        var pallets = PalletsOf(bags).ToArray();
        var cube = bags.Sum(b =>
            b.CoilDiameter.TotalFeet * b.CoilDiameter.TotalFeet * b.Width.TotalFeet);
        return new(
            bags, pallets, cube, Math.Ceiling(pallets.Length / 2.0) * PalletSide.TotalFeet,
            bags.Aggregate(Mass.FromPounds(0), (sum, b) => sum + b.Weight),
            "coil D = √(4·length·coiled thickness/π); coils up to "
            + $"{PalletSide.Say(job.Metric)} wide stand on end on a pallet of that size square, "
            + "wider ones lie flat; two pallets side by side in a trailer", "C");
    }

    /// <summary>Bag after bag as long as the pallet has room, so that strips stay together.
    /// </summary>
    private IEnumerable<Pallet> PalletsOf(IReadOnlyList<Bag> bags)
    {
        var (number, from, taken) = (1, 0, 0.0);
        for (var i = 0; i <= bags.Count; i++)
        {
            var share = i < bags.Count ? 1.0 / PerPallet(bags[i]) : 1;
            if (i > from && taken + share > 1 + 1e-9)
            {
                Bag[] on = [.. bags.Skip(from).Take(i - from)];
                yield return new(number++, [.. on.Select(b => b.Number)],
                    on.Aggregate(Mass.FromPounds(0), (sum, b) => sum + b.Weight));
                (from, taken) = (i, 0);
            }
            taken += share;
        }
    }

    private IEnumerable<IReadOnlyList<Piece>> Shared()
    {
        var bag = new List<Piece>();
        foreach (var piece in job.Pieces)
        {
            if (bag.Count > 0 && !Fits(bag, piece))
            {
                yield return bag;
                bag = [];
            }
            bag.Add(piece);
        }
        if (bag.Count > 0) yield return bag;
    }

    private bool Fits(List<Piece> bag, Piece next)
    {
        var last = bag[^1];
        if (last.Plane != next.Plane || last.Width != next.Width || last.Product != next.Product
            || next.Strip - last.Strip > 1
            || job.Planes.First(p => p.Plane == next.Plane).Kind == PlaneKind.Roof)
            return false;
        Piece[] together = [.. bag, next];
        return !(WeightOf(together) > job.Practice.BagLimit)
            && CoilOf(together) <= Length.Min(job.Practice.BagDiameter, SharedCoil);
    }

    private Bag BagOf(int number, IReadOnlyList<Piece> pieces)
    {
        var weight = WeightOf(pieces);
        return new(
            number, [.. pieces.Select(p => p.Mark)], CoilOf(pieces), pieces[0].Width, weight,
            weight > job.Practice.TwoPersonLimit ? "hoist"
                : weight > job.Practice.OnePersonLimit ? "two people" : "one person");
    }

    private static Mass WeightOf(IEnumerable<Piece> pieces) =>
        pieces.Aggregate(Mass.FromPounds(0), (sum, p) => sum + p.Weight);

    private Length CoilOf(IReadOnlyList<Piece> pieces) => Weights.CoilOf(
        pieces.Aggregate(Length.Zero, (sum, p) => sum + p.Cut),
        job.ProductOf(pieces[0].Product).CoiledThickness!.Value);

    private double PerPallet(Bag bag)
    {
        var across = Math.Max(1, Math.Floor(PalletSide / bag.CoilDiameter));
        var height = bag.Width <= PalletSide ? bag.Width : bag.CoilDiameter;
        var layers = Math.Max(1, Math.Floor(job.Practice.PalletHeight / height));
        return bag.Width <= PalletSide ? across * across * layers : across * layers;
    }
}
