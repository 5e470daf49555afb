using System.Text.Json.Nodes;
using Xunit;
using static PostFrame.ServicesTests.Comparisons.ComparisonRequests;

namespace PostFrame.ServicesTests.Comparisons;

/// <summary>
/// Whatever is combined, the answer is figures or a refusal, never a failure of ours.
/// </summary>
public sealed class ComparisonFuzz
{
    private static readonly (string Pointer, string[] Values)[] Choices =
    [
        ("/basis", ["\"ashrae\"", "\"iso6946\""]),
        ("/plane/slope", ["\"0.1:12\"", "\"4:12\"", "\"12:12\"", "\"24:12\"", "\"60 deg\""]),
        ("/plane/colour", ["\"light\"", "\"dark\""]),
        ("/plane/framing/width", ["\"1.5 in\"", "\"5.5 in\""]),
        ("/plane/framing/spacing", ["\"12 in\"", "\"60 in\""]),
        ("/plane/framing/depth", ["\"1.5 in\"", "\"11.25 in\""]),
        ("/climate/postalCode", ["\"55802\"", "\"33130\"", "\"99501\"", "\"03602\"", "\"98101\""]),
        ("/climate/winterDesign", ["\"-58 °F\"", "\"0 °F\"", "\"70 °F\"", "\"21 °C\""]),
        ("/climate/summerDesign", ["\"40 °F\"", "\"130 °F\"", "\"75 °F\""]),
        ("/climate/sun", ["0", "1400"]),
        ("/room/use", ["\"washBay\"", "\"dryStorage\"", "\"livestock\""]),
        ("/room/heatedTo", ["\"33 °F\"", "\"100 °F\"", "\"70 °F\""]),
        ("/room/cooledTo", ["\"50 °F\"", "\"100 °F\""]),
        ("/room/burner", ["""
            {"fuel":"propane","input":"200000 Btu/h","volume":"9000 ft3","airChangesPerHour":0.1}
            """]),
        ("/rivals/0/kind", ["\"foilSheet\"", "\"blanket\"", "\"closedCellFoam\"", "\"epsBoard\""]),
        ("/rivals/0/claimedR", ["0.1", "200"]),
        ("/rivals/0/thickness", ["\"0.001 in\"", "\"5/16 in\"", "\"12 in\"", "\"19 in\""]),
        ("/rivals/0/roomFace", ["\"bare\"", "\"wetFoil\""]),
        ("/rivals/0/perm", ["0", "0.02", "200"]),
        ("/rivals/0/placement",
            ["\"overFraming\"", "\"betweenFraming\"", "\"underFraming\""]),
        ("/rivals/0/airSpaces",
        [
            """
            [{"side":"cladding","thickness":"5.9 in","kind":"enclosed","facing":"brightFoil"}]
            """,
            """
            [{"side":"room","thickness":"0.5 in","kind":"slightlyVentilated"},
             {"side":"cladding","thickness":"1.5 in","kind":"ventilated"}]
            """,
            """[{"side":"room","thickness":"3.5 in","kind":"enclosed"}]""",
        ]),
        ("/options/0/product", ["\"bubble-foil\"", "\"board-2-xps\"", "\"spray-foam-open\""]),
        ("/options/1/airSpaces", ["[]"]),
    ];

    [Fact]
    public void Any_mixture_of_extremes_is_answered()
    {
        var random = new Random(20261125);
        var answered = 0;
        for (var round = 0; round < 200; round++)
        {
            var request = Example(ShopRoof).With("/working", round % 7 == 0);
            foreach (var (pointer, values) in Choices)
            {
                if (random.Next(3) > 0) continue;
                request.With(pointer, JsonNode.Parse(values[random.Next(values.Length)]));
            }
            var (body, refusal) = SizingApi.Comparisons.Comparisons.Answer(Bytes(request));
            Assert.True(body is not null || refusal is not null);
            if (body is null) continue;
            answered++;
            var text = System.Text.Encoding.UTF8.GetString(body);
            Assert.DoesNotContain("NaN", text);
            Assert.DoesNotContain("Infinity", text);
        }
        Assert.InRange(answered, 100, 200);
    }
}
