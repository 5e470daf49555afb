using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Xunit;
using static PostFrame.ServicesTests.Comparisons.ComparisonRequests;

namespace PostFrame.ServicesTests.Comparisons;

/// <summary>No figure without its method and source: every number of an answer opens.</summary>
public sealed class OpenedFigures
{
    /// <summary>
    /// Numbers that are no figures: the name of a month, and a claim as it was typed. An assumption
    /// carries its own source and mark in its row.
    /// </summary>
    private static readonly string[] Exempt = ["month", "worstMonth", "claimedR"];

    private static readonly string[] Marks = ["R", "M", "M✓", "C", "P", "D", "A", "G"];

    public static TheoryData<string> Requests => new(ManyRequests.All.Keys);

    [Theory]
    [MemberData(nameof(Requests))]
    public void Every_number_is_opened_once_and_follows_from_its_step(string name)
    {
        var answer = ManyRequests.All[name]().Answer();
        var steps = Steps(answer);
        var opened = steps
            .Where(step => step.TryGetProperty("opens", out _))
            .SelectMany(step => step.GetProperty("opens").EnumerateArray()
                .Select(opens => (Pointer: opens.GetProperty("pointer").GetString()!,
                    Step: step, Opens: opens)))
            .ToLookup(x => x.Pointer);
        var numbers = Numbers(answer, "").ToDictionary();

        Assert.NotEmpty(numbers);
        Assert.DoesNotContain(numbers.Keys, pointer => opened[pointer].Count() != 1);
        Assert.Empty(opened.Select(x => x.Key).Except(numbers.Keys));
        Assert.All(numbers, number =>
        {
            var (_, step, opens) = opened[number.Key].Single();
            var value = step.Number("value") * Perhaps(opens, "times", 1)
                + Perhaps(opens, "plus", 0);
            Assert.Equal(number.Value.GetDouble(), value, Rounding(number.Value));
        });
    }

    [Theory]
    [MemberData(nameof(Requests))]
    public void Every_step_names_formula_source_and_mark(string name) =>
        Assert.All(Steps(ManyRequests.All[name]().Answer()), step =>
        {
            Assert.NotEmpty(step.GetProperty("quantity").GetString()!);
            Assert.NotEmpty(step.GetProperty("formula").GetString()!);
            Assert.NotEmpty(step.GetProperty("source").GetString()!);
            Assert.Contains(step.GetProperty("mark").GetString(), Marks);
        });

    /// <summary>Each formula worked anew from the inputs shown, without the engine.</summary>
    [Theory]
    [MemberData(nameof(Requests))]
    public void Every_step_can_be_worked_with_a_pencil(string name) =>
        Assert.All(Steps(ManyRequests.All[name]().Answer()), step =>
        {
            var formula = step.GetProperty("formula").GetString()!;
            if (PencilWork.IsLookedUp(formula)) return;
            (string Symbol, double Value)[] inputs = [.. step.GetProperty("inputs")
                .EnumerateArray()
                .Select(i => (i.GetProperty("symbol").GetString()!, i.Number("value")))];
            var worked = PencilWork.Of(formula, inputs);
            var value = step.Number("value");
            // The inputs and the value have six digits; what each may be off by is carried through.
            var tolerance = 5e-5 * Math.Abs(value) + inputs.Index().Sum(x => Math.Abs(
                PencilWork.Of(formula, [.. inputs.Select((input, i) => i == x.Index
                    ? (input.Symbol, input.Value * (1 + 5e-6)) : input)]) - worked));
            Assert.True(
                Math.Abs(worked - value) <= tolerance,
                $"{step.GetProperty("quantity")}: {formula} gives {worked}, not {value}");
        });

    [Theory]
    [MemberData(nameof(Requests))]
    public void No_step_shows_more_digits_than_a_pencil_needs(string name) =>
        Assert.All(
            Steps(ManyRequests.All[name]().Answer()).SelectMany(step =>
                step.GetProperty("inputs").EnumerateArray().Append(step)),
            at => Assert.InRange(
                at.GetProperty("value").GetRawText().Count(char.IsAsciiDigit), 1, 12));

    [Theory]
    [MemberData(nameof(Requests))]
    public void Every_assumption_names_its_source(string name) => Assert.All(
        ManyRequests.All[name]().Answer().GetProperty("assumptions").EnumerateArray(), row =>
        {
            Assert.NotEmpty(row.GetProperty("source").GetString()!);
            Assert.Contains(row.GetProperty("mark").GetString(), Marks);
        });

    [Fact]
    public void Figures_a_conclusion_speaks_of_are_in_the_answer()
    {
        var answer = Example(ShopRoof).Answer();
        var numbers = Numbers(answer, "").Select(n => n.Pointer).ToHashSet();
        var spoken = answer.GetProperty("conclusions").EnumerateArray()
            .SelectMany(said => said.GetProperty("figures").EnumerateArray())
            .Select(figure => figure.GetString()!).ToList();
        Assert.NotEmpty(spoken);
        Assert.Subset(numbers, spoken.ToHashSet());
    }

    private static List<JsonElement> Steps(JsonElement answer) =>
    [
        .. answer.GetProperty("working").EnumerateArray(),
        .. answer.GetProperty("lines").EnumerateArray()
            .SelectMany(line => line.GetProperty("working").EnumerateArray()),
    ];

    private static IEnumerable<(string Pointer, JsonElement Value)> Numbers(
        JsonElement at, string pointer) => at.ValueKind switch
        {
            JsonValueKind.Number => [(pointer, at)],
            JsonValueKind.Array => at.EnumerateArray()
                .SelectMany((item, i) => Numbers(item, $"{pointer}/{i}")),
            JsonValueKind.Object => at.EnumerateObject()
                .Where(member => !Exempt.Contains(member.Name)
                    && member.Name is not ("working" or "assumptions"))
                .SelectMany(member => Numbers(member.Value, $"{pointer}/{member.Name}")),
            _ => [],
        };

    private static double Perhaps(JsonElement at, string name, double otherwise) =>
        at.TryGetProperty(name, out var value) ? value.GetDouble() : otherwise;

    /// <summary>Half of the last place shown, and six digits of working.</summary>
    private static double Rounding(JsonElement number)
    {
        var text = number.GetRawText();
        var places = text.Contains('.') ? text.Length - text.IndexOf('.') - 1 : 0;
        return 0.5001 * Math.Pow(10, -places) + 2e-5 * Math.Abs(
            double.Parse(text, CultureInfo.InvariantCulture));
    }
}
