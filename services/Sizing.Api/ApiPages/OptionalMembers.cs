using System.Reflection;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace PostFrame.SizingApi.ApiPages;

/// <summary>
/// A member that may be null may be left out. The generator thinks otherwise of the parameters of
/// a record.
/// </summary>
internal static class OptionalMembers
{
    private static readonly NullabilityInfoContext Nullability = new();
    private static readonly Lock Turn = new();

    public static Task AreNotRequired(
        OpenApiSchema schema, OpenApiSchemaTransformerContext context, CancellationToken _)
    {
        foreach (var member in context.JsonTypeInfo.Properties)
        {
            if (member.AttributeProvider is PropertyInfo property && MayBeNull(property))
            {
                schema.Required?.Remove(member.Name);
            }
        }

        return Task.CompletedTask;
    }

    private static bool MayBeNull(PropertyInfo property)
    {
        lock (Turn)
        {
            return Nullability.Create(property).ReadState is NullabilityState.Nullable;
        }
    }
}
