using System.Reflection;
using MassTransit;

namespace PostFrame.ContractsTests.Messages;

/// <summary>A record by which a service reads or announces a message.</summary>
internal sealed record PipelineRecord(string Service, string Action, string Message, Type Type)
{
    private static readonly (string Service, string Assembly)[] Services =
    [
        ("orders", "PostFrame.OrdersApi"), ("cutting", "PostFrame.CuttingWorker"),
        ("labelling", "PostFrame.LabellingWorker"), ("operations", "PostFrame.Operations"),
    ];

    /// <summary>
    /// Every record with a message's name. A service reads what one of its consumers takes, and
    /// announces the rest: no record is carried for anything else.
    /// </summary>
    public static IReadOnlyList<PipelineRecord> All { get; } =
        [.. Services.SelectMany(service => Of(service.Service, Assembly.Load(service.Assembly)))];

    private static IEnumerable<PipelineRecord> Of(string service, Assembly assembly)
    {
        var types = assembly.GetTypes();
        var read = types.SelectMany(type => type.GetInterfaces())
            .Where(type => type.IsGenericType
                && type.GetGenericTypeDefinition() == typeof(IConsumer<>))
            .Select(type => type.GetGenericArguments()[0]).ToHashSet();
        return from type in types
               where type.GetCustomAttribute<MessageUrnAttribute>() is not null
               select new PipelineRecord(
                   service, read.Contains(type) ? "reads" : "announces",
                   MessageUrn.ForType(type).AbsoluteUri["urn:message:".Length..], type);
    }

    /// <summary>As the operation is called in <c>pipeline.asyncapi.yaml</c>.</summary>
    public string Operation => $"{Service}.{Action}.{Message}";
}
