using PostFrame.Engine;
using PostFrame.Engine.TakeOff;
using PostFrame.Problems;

namespace PostFrame.SizingApi.Sizings;

/// <summary>The parts of a take-off beside its pieces and planes.</summary>
internal static class WriteNotes
{
    public static AssumptionLine Assumption(Assumption assumption) => new()
    {
        Id = assumption.Id,
        Text = assumption.Text,
        Value = assumption.Value,
        Unit = assumption.Unit,
        Mark = assumption.Mark,
    };

    public static WarningLine Warning(Warning warning) => new()
    {
        Id = warning.Id,
        Text = warning.Text,
        Plane = warning.Plane,
    };

    public static CautionLine Caution(Caution caution) => new()
    {
        Id = caution.Id,
        Topic = caution.Topic,
        Text = caution.Text,
        Basis = caution.Basis,
        Source = caution.Source,
    };

    public static StockLine Stock(Engine.StockLine stock) => new()
    {
        Product = stock.Product,
        WidthIn = LengthWords.Inches(stock.Width),
        WidthMm = LengthWords.Millimetres(stock.Width),
        RollLengthIn = LengthWords.Inches(stock.RollLength),
        RollLengthMm = LengthWords.Millimetres(stock.RollLength),
        EndTrimIn = LengthWords.Inches(stock.EndTrim),
        EndTrimMm = LengthWords.Millimetres(stock.EndTrim),
        MinUsefulOffcutIn = LengthWords.Inches(stock.MinUsefulOffcut),
        MinUsefulOffcutMm = LengthWords.Millimetres(stock.MinUsefulOffcut),
    };

    public static AreaGoodsLine AreaGoods(AreaGoods goods) => new()
    {
        Product = goods.Product,
        Title = goods.Title,
        Planes = goods.Planes,
        NetFt2 = WriteTakeOff.Rounded(goods.Net.TotalSquareFeet, 2),
        ThicknessIn = LengthWords.Inches(goods.Thickness),
        Quantity = goods.Quantity,
        Unit = goods.Unit,
        How = goods.How,
        Mark = goods.Mark,
    };

    public static AccessoryLine Accessory(Accessory accessory) => new()
    {
        Id = accessory.Id,
        Title = accessory.Title,
        Needed = WriteTakeOff.Rounded(accessory.Needed, 2),
        NeededUnit = accessory.NeededUnit,
        Quantity = accessory.Quantity,
        Unit = accessory.Unit,
        How = accessory.How,
        Mark = accessory.Mark,
    };

    public static PackingLine Packing(Packing packing) => new()
    {
        Bags = [.. packing.Bags.Select(bag => new BagLine
        {
            Number = bag.Number,
            Marks = bag.Marks,
            CoilDiameterIn = LengthWords.Inches(bag.CoilDiameter),
            WidthIn = LengthWords.Inches(bag.Width),
            WeightLb = WriteTakeOff.Rounded(bag.Weight.TotalPounds, 1),
            Handling = bag.Handling,
        })],
        Pallets = packing.Pallets.Count,
        PalletLoads = [.. packing.Pallets.Select(pallet => new PalletLine
        {
            Number = pallet.Number,
            Bags = pallet.Bags,
            WeightLb = WriteTakeOff.Rounded(pallet.Weight.TotalPounds, 1),
        })],
        FreightFt3 = WriteTakeOff.Rounded(packing.FreightFt3, 1),
        TrailerFt = WriteTakeOff.Rounded(packing.TrailerFeet, 1),
        WeightLb = WriteTakeOff.Rounded(packing.Weight.TotalPounds, 1),
        How = packing.How,
        Mark = packing.Mark,
    };

    public static SavingLine Saving(PossibleSaving saving) => new()
    {
        Opening = saving.Opening,
        Plane = saving.Plane,
        Strips = saving.Strips,
        LengthIn = LengthWords.Inches(saving.Length),
        GrossFt2 = WriteTakeOff.Rounded(saving.Gross.TotalSquareFeet, 2),
        Text = saving.Text,
    };

    public static ChoiceLine Choice(LastStripChoice choice) => new()
    {
        Plane = choice.Plane,
        Choice = WireNames<LastStrip>.Of(choice.Choice),
        Taken = choice.Taken,
        CutLengthIn = LengthWords.Inches(choice.CutLength),
        GrossFt2 = WriteTakeOff.Rounded(choice.Gross.TotalSquareFeet, 2),
        Text = choice.Text,
    };

    public static PriceBlock Price(Price price) => new()
    {
        ListId = price.ListId,
        ListVersion = price.ListVersion,
        Currency = price.Currency,
        Note = price.Note,
        Lines = [.. price.Lines.Select(line => new PriceLineBody(
            line.Item, line.Quantity, line.Unit, line.UnitPrice, line.Amount))],
        Total = price.Total,
        NotPriced = price.NotPriced,
    };
}
