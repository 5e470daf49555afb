using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using System.Text.Json.Nodes;
using Microsoft.OpenApi;

namespace PostFrame.OrdersApi;

/// <summary>What an order holds, for the API page only; orders are read member by member.</summary>
internal sealed record OrderPage(
    [property: Required, Description("Your number for it: letters, digits, dots, dashes.")]
    string OrderNumber,
    [property: Required] DateOnly NeededBy,
    [property: Required] OrderPage.ShipToPage ShipTo,
    [property: Required, Description("As in POST /v1/sizings.")] JsonObject Building,
    [property: Required, Description("As in POST /v1/sizings.")] JsonArray Insulation,
    [property: Description("As in POST /v1/sizings.")] JsonObject? Practice = null)
{
    private const string Example = "w1-plain-gable.order.json";

    /// <summary>The key header, and an order that works when pasted.</summary>
    internal static void Describe(OpenApiOperation operation)
    {
        operation.Parameters ??= [];
        operation.Parameters.Add(new OpenApiParameter
        {
            Name = "Idempotency-Key",
            In = ParameterLocation.Header,
            Required = true,
            Description = "1 to 255 visible ASCII characters of your own.",
            Schema = new OpenApiSchema { Type = JsonSchemaType.String, MaxLength = 255 },
            Example = "PF-1001-first-try",
        });
        if (operation.RequestBody?.Content is { } content
            && content.TryGetValue("application/json", out var json))
        {
            using var example = typeof(OrderPage).Assembly.GetManifestResourceStream(Example)!;
            json.Example = JsonNode.Parse(example);
        }
    }

    internal sealed record ShipToPage(
        [property: Required, Description("Printed on every label.")] string Name);
}
