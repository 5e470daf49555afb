namespace PostFrame.CuttingWorker.Planning;

/// <summary>One way to cut one roll: which items, and how many of each.</summary>
internal sealed record Pattern(int Bin, int[] Item, int[] Count)
{
    /// <summary>Of one roll so cut, in units.</summary>
    public long Room(Instance instance) => instance.Bins[Bin].Capacity - Used(instance);

    public long Used(Instance instance)
    {
        long used = 0;
        for (var k = 0; k < Item.Length; k++)
            used += Count[k] * instance.Length[Item[k]];
        return used;
    }
}
