using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace PostFrame.Problems;

/// <summary>Says on an endpoint which problems it answers, for its API page.</summary>
public static class ProblemRoutes
{
    public static TBuilder MapRefusals<TBuilder>(
        this TBuilder endpoint, params ReadOnlySpan<ProblemKind> kinds)
        where TBuilder : IEndpointConventionBuilder
    {
        foreach (var status in kinds.ToArray().Select(kind => kind.Status).Distinct())
        {
            endpoint.Add(builder => builder.Metadata.Add(new ProducesResponseTypeMetadata(
                status, typeof(ProblemBody), [ProblemAnswer.MediaType])));
        }

        return endpoint;
    }
}
