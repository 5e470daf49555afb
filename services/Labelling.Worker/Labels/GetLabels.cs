using System.Text.Json;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Net.Http.Headers;
using PostFrame.Messaging;
using PostFrame.Problems;

namespace PostFrame.LabellingWorker.Labels;

/// <summary>What is printed for an order, newest revision.</summary>
public sealed record LabelsAnswer
{
    public required string OrderNumber { get; init; }

    public required int Revision { get; init; }

    /// <summary>The plan whose cutting order they follow.</summary>
    public required int PlanNumber { get; init; }

    public required DateTimeOffset PrintedAt { get; init; }

    public required int LabelCount { get; init; }

    /// <summary>Where the labels are, one 4 × 6 in page per piece.</summary>
    public required string LabelsPdf { get; init; }

    /// <summary>Where packing list and checklist are.</summary>
    public required string ChecklistPdf { get; init; }

    /// <summary>In cutting order, as in the file.</summary>
    public required IReadOnlyList<PrintedLabel> Labels { get; init; }
}

/// <summary>One label; the number is its page.</summary>
public sealed record PrintedLabel
{
    public required int Number { get; init; }

    public required string PieceId { get; init; }

    public required string Mark { get; init; }

    public required string Plane { get; init; }

    public required string CutText { get; init; }

    public required string WidthText { get; init; }

    /// <summary>The roll it is cut from, in cutting order within product and width.</summary>
    public int? Roll { get; init; }

    /// <summary>The roll's label on the rack; absent where any new roll will do.</summary>
    public string? StockId { get; init; }

    /// <summary>The maker's lot, where it is known.</summary>
    public string? Lot { get; init; }
}

/// <summary>Hands out whole printed sets; a set that is not whole does not exist here.</summary>
internal static class GetLabels
{
    private const string Pdf = "application/pdf";

    public static void Map(WebApplication app, SqliteStore store)
    {
        var labels = app.MapGroup("/v1/labels").WithGroupName(Labelling.Name).WithTags("Labels");
        labels.MapGet("/{orderNumber}.pdf", (string orderNumber) =>
                File(store, orderNumber, "labels", set => set.LabelsPdf))
            .WithName("getLabelsPdf")
            .WithSummary("The labels of an order's newest printed revision")
            .WithDescription("One 4 × 6 in page per piece, in cutting order.")
            .Produces(StatusCodes.Status200OK, contentType: Pdf)
            .MapRefusals(ProblemKind.LabelsNotFound);
        labels.MapGet("/{orderNumber}/checklist.pdf", (string orderNumber) =>
                File(store, orderNumber, "checklist", set => set.ChecklistPdf))
            .WithName("getChecklistPdf")
            .WithSummary("Packing list and checklist by plane, with the cautions")
            .Produces(StatusCodes.Status200OK, contentType: Pdf)
            .MapRefusals(ProblemKind.LabelsNotFound);
        labels.MapGet("/{orderNumber}", (string orderNumber) => Summary(store, orderNumber))
            .WithName("getLabels")
            .WithSummary("Which labels are printed for an order")
            .MapRefusals(ProblemKind.LabelsNotFound);
    }

    private static Results<FileContentHttpResult, ProblemAnswer> File(
        SqliteStore store, string orderNumber, string what, Func<PrintedSet, byte[]> bytes)
    {
        var set = store.Read(view => LabelStore.Newest(view, orderNumber));
        if (set is null)
        {
            return NotFound(store, orderNumber);
        }

        return TypedResults.File(
            bytes(set),
            Pdf,
            $"{set.OrderNumber}-r{set.Revision}-{what}.pdf",
            lastModified: DateTimeOffset.FromUnixTimeMilliseconds(set.PrintedAtUnixMs),
            entityTag: new EntityTagHeaderValue($"\"{what}-{set.Revision}-{set.Plan}\""));
    }

    private static Results<Ok<LabelsAnswer>, ProblemAnswer> Summary(
        SqliteStore store, string orderNumber)
    {
        var set = store.Read(view => LabelStore.Newest(view, orderNumber));
        if (set is null)
        {
            return NotFound(store, orderNumber);
        }

        var address = $"/v1/labels/{Uri.EscapeDataString(set.OrderNumber)}";
        return TypedResults.Ok(new LabelsAnswer
        {
            OrderNumber = set.OrderNumber,
            Revision = (int)set.Revision,
            PlanNumber = (int)set.Plan,
            PrintedAt = DateTimeOffset.FromUnixTimeMilliseconds(set.PrintedAtUnixMs),
            LabelCount = (int)set.LabelCount,
            LabelsPdf = $"{address}.pdf",
            ChecklistPdf = $"{address}/checklist.pdf",
            Labels = JsonSerializer.Deserialize<List<PrintedLabel>>(
                set.Summary, MessageJson.Options) ?? [],
        });
    }

    private static ProblemAnswer NotFound(SqliteStore store, string orderNumber) => new(
        ProblemKind.LabelsNotFound,
        store.Read(view => LabelStore.Failure(view, orderNumber))
            ?? $"No labels are printed for the order \"{orderNumber}\".");
}
