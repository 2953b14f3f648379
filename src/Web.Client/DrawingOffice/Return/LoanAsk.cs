using System.Collections.Immutable;
using WitnessMark.FrontOffice.MeasureSolid;
using WitnessMark.FrontOffice.ReturnLoan;
using WitnessMark.Stores;
using WitnessMark.Stores.Loans;
using WitnessMark.Stores.Photographs;
using WitnessMark.Stores.Shapes;
using WitnessMark.Web.Client.Outbox;
using WitnessMark.Web.Client.Shell;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Client.DrawingOffice.Return;

/// <summary>What is kept about the vehicle's samples beside what was read of them: points left open, photographs, and sheets in space.</summary>
public sealed record LoanDesk(ImmutableArray<Versioned<NotNeeded>> NotNeeded, ImmutableArray<SamplePhotograph> Photographs, ImmutableArray<TypedShape> Shapes)
{
    public static LoanDesk Empty { get; } = new([], [], []);

    /// <summary>What the host has; the reply says when it does not answer.</summary>
    public static async Task<Reply<LoanDesk>> Fetch(DeskServer desk, Guid vehicle)
    {
        var rows = await desk.Decisions<NotNeeded>(vehicle);
        if (rows.Away || rows.Refusal is not null) return new(null, rows.Away, rows.Refusal);
        var pictures = await desk.Decisions<SamplePhotograph>(vehicle);
        if (pictures.Away || pictures.Refusal is not null) return new(null, pictures.Away, pictures.Refusal);
        var shapes = await desk.Decisions<TypedShape>(vehicle);
        return shapes.Away || shapes.Refusal is not null ? new(null, shapes.Away, shapes.Refusal)
            : new(new(rows.Value, [.. pictures.Value.Select(p => p.Row).Where(p => !p.Dropped)], [.. shapes.Value.Select(s => s.Row)]), false, null);
    }

    public ImmutableArray<string> PicturesOf(Guid sample) => [.. Photographs.Where(p => p.SampleId == sample).Select(p => p.Picture).Distinct()];

    public LoanRequest Of(BenchFile file) => new(file.Sample.Row, file.Sketch.Row, file.History, file.Instruments, RowsOf(file.Sample.Row.Id), PicturesOf(file.Sample.Row.Id)) { Folded = file.Folded.Row.Text, Solid = SolidOf(file.Sample.Row.Id) };

    public string? SolidOf(Guid sample) => StoredSolid.Of(Shapes, sample);

    public ImmutableArray<NotNeeded> RowsOf(Guid sample) => [.. NotNeeded.Select(r => r.Row).Where(r => r.SampleId == sample)];
}

/// <summary>What this browser knows of the person's wishes.</summary>
static class Wished
{
    public static string Origin(PageScript page, Guid vehicle) => page.Kept($"wm.origin.{vehicle:N}") ?? "unknown";
}
