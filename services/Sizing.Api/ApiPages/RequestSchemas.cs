using Microsoft.OpenApi;

namespace PostFrame.SizingApi.ApiPages;

/// <summary>
/// Makes the schemas of requests say what the readers do: a member that may be left out is not
/// required, null is not taken for one, and unknown members are refused.
/// </summary>
internal static class RequestSchemas
{
    private const string Ending = "Request";

    public static void Tighten(OpenApiDocument document)
    {
        foreach (var (name, schema) in document.Components?.Schemas ?? EmptySchemas)
        {
            if (name.EndsWith(Ending, StringComparison.Ordinal)
                && schema is OpenApiSchema { Properties: { } members } request)
            {
                request.AdditionalPropertiesAllowed = false;
                foreach (var (member, form) in members.ToList())
                {
                    if (WithoutNull(form) is { } sent)
                    {
                        members[member] = sent;
                        request.Required?.Remove(member);
                    }
                }
            }
        }
    }

    private static readonly Dictionary<string, IOpenApiSchema> EmptySchemas = [];

    /// <summary>The schema without its null, or null when it has none.</summary>
    private static IOpenApiSchema? WithoutNull(IOpenApiSchema form)
    {
        if (form is OpenApiSchema { Type: { } type } own && type.HasFlag(JsonSchemaType.Null))
        {
            own.Type = type & ~JsonSchemaType.Null;
            return own;
        }

        return form.OneOf is [{ Type: JsonSchemaType.Null }, var other] ? other : null;
    }
}
