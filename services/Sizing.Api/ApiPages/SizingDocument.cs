using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;
using PostFrame.Problems;
using PostFrame.SizingApi.Comparisons;
using PostFrame.SizingApi.Desk;
using PostFrame.SizingApi.Products;

namespace PostFrame.SizingApi.ApiPages;

/// <summary>What the sizing document says beyond what the routes say themselves.</summary>
internal static class SizingDocument
{
    public static void Configure(OpenApiOptions options)
    {
        ApiDocument.Introduce(
            options, "Sizing", "From a building to the pieces of blanket to cut for it.");
        options.CreateSchemaReferenceId = type => type.Type.IsGenericType
            && type.Type.GetGenericTypeDefinition() == typeof(Figure<>)
            ? "Figure" + char.ToUpperInvariant(type.Type.GenericTypeArguments[0].Name[0])
                + type.Type.GenericTypeArguments[0].Name[1..]
            : OpenApiOptions.CreateDefaultSchemaReferenceId(type);
        options.AddDocumentTransformer((document, _, _) =>
        {
            RequestSchemas.Tighten(document);
            return Task.CompletedTask;
        });
        options.AddSchemaTransformer(OptionalMembers.AreNotRequired);
        options.AddOperationTransformer((operation, context, _) =>
        {
            if (operation.RequestBody?.Content is { } content
                && content.TryGetValue("application/json", out var json))
            {
                var examples = context.Description.RelativePath == "v1/comparisons"
                    ? ComparisonExamples.All.Select(example => (
                        example.Id, Title: example.Id, example.Request))
                    : DeskExamples.All;
                json.Examples = examples.ToDictionary(
                    example => example.Id,
                    IOpenApiExample (example) => new OpenApiExample
                    {
                        Summary = example.Title,
                        Value = example.Request.DeepClone(),
                    });
            }

            return Task.CompletedTask;
        });
    }
}
