using PostFrame.OrdersApi.Orders;
using Xunit;

namespace PostFrame.ServicesTests.Orders;

public sealed class PieceIdRules
{
    public static TheoryData<long, int> Numbers => new()
    {
        { 1, 1 }, { 1, 46 }, { 31, 32 }, { 32, 1023 }, { 1024, 1024 }, { 999_999, 20_000 },
    };

    [Theory]
    [MemberData(nameof(Numbers))]
    public void An_id_is_short_and_has_no_character_that_can_be_mistaken(long order, int piece)
    {
        var id = PieceId.Of(order, piece);
        Assert.InRange(id.Length, 5, 12);
        Assert.Matches("^[2-9A-HJ-NP-Z]+-[2-9A-HJ-NP-Z]+$", id);
    }

    [Theory]
    [MemberData(nameof(Numbers))]
    public void One_misread_character_is_always_noticed(long order, int piece)
    {
        var id = PieceId.Of(order, piece);
        Assert.True(PieceId.IsSound(id));
        var misread =
            from place in Enumerable.Range(0, id.Length)
            where id[place] != '-'
            from other in PieceId.Alphabet
            where other != id[place]
            select id[..place] + other + id[(place + 1)..];
        Assert.DoesNotContain(misread, PieceId.IsSound);
    }

    [Fact]
    public void Ids_of_different_orders_and_pieces_differ()
    {
        var ids = from order in Enumerable.Range(1, 100)
                  from piece in Enumerable.Range(1, 100)
                  select PieceId.Of(order, piece);
        Assert.Equal(10_000, ids.Distinct().Count());
    }
}
