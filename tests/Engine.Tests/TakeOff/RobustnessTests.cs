using System.Reflection;
using CsCheck;
using PostFrame.Engine;
using PostFrame.Engine.Quantities;
using Xunit;

namespace PostFrame.EngineTests.TakeOff;

/// <summary>Whatever is sent, there is a result or there are violations, never an exception.
/// </summary>
public sealed class RobustnessTests
{
    private static readonly Length[] Lengths =
    [
        Length.FromNanometres(long.MaxValue), Length.FromNanometres(long.MinValue + 1),
        Length.Zero, Length.FromNanometres(1), Length.FromInches(-12), Length.FromInches(1e7),
        Length.FromInches(50), Length.FromInches(600),
    ];

    private static readonly double[] Numbers =
        [double.NaN, double.PositiveInfinity, -1e300, 0, 1e-300, 7, 1e9];

    [Fact]
    public void No_request_makes_it_throw() =>
        Gen.Select(RichJobs.Any, Gen.Int, Gen.Int[0, 4]).Sample((job, seed, slips) =>
        {
            var random = new Random(seed);
            for (var i = 0; i < slips; i++) job = (SizingInput)Spoilt(job, random);
            var outcome = Sizing.Size(job);
            Assert.True(outcome.Result is null == outcome.Violations.Count > 0);
        }, iter: 1000);

    /// <summary>A copy of a record with one member, somewhere in it, made null or absurd.</summary>
    private static object Spoilt(object record, Random random)
    {
        var copy = record.GetType().GetMethod("<Clone>$")!.Invoke(record, null)!;
        var members = record.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(p => p.CanWrite).ToArray();
        var member = members[random.Next(members.Length)];
        var value = member.GetValue(record);
        if (value is not null && value.GetType().Namespace == "PostFrame.Engine"
            && value is not Array && value.GetType().IsClass && random.Next(8) > 0)
            member.SetValue(copy, Spoilt(value, random));
        else if (value is IReadOnlyList<OpeningInput> { Count: > 0 } openings)
            member.SetValue(copy, new[] { (OpeningInput)Spoilt(openings[0], random) });
        else if (value is IReadOnlyList<InsulationInput> { Count: > 0 } lines)
            member.SetValue(copy, new[] { lines[0], (InsulationInput)Spoilt(lines[^1], random) });
        else if (value is IReadOnlyList<LeanToInput> { Count: > 0 } leans)
            member.SetValue(copy, new[] { (LeanToInput)Spoilt(leans[0], random) });
        else
            member.SetValue(copy, Absurd(member.PropertyType, value, random));
        return copy;
    }

    private static object? Absurd(Type type, object? value, Random random)
    {
        var plain = Nullable.GetUnderlyingType(type) ?? type;
        if (plain == typeof(Length)) return Lengths[random.Next(Lengths.Length)];
        if (plain == typeof(Slope)) return Slope.FromRatio(Numbers[random.Next(Numbers.Length)]);
        if (plain == typeof(Mass)) return Mass.FromPounds(Numbers[random.Next(Numbers.Length)]);
        if (plain == typeof(double)) return Numbers[random.Next(Numbers.Length)];
        if (plain == typeof(bool)) return random.Next(2) == 0;
        if (plain == typeof(int)) return random.Next();
        if (plain.IsEnum) return Enum.ToObject(plain, random.Next(7));
        return type == typeof(PracticeInput) ? value : null;
    }
}
