using System.Collections.Immutable;
using System.CommandLine;
using WitnessMark.FrontOffice.MakeToSize;
using WitnessMark.FrontOffice.ReturnLoan;
using WitnessMark.Maths;
using WitnessMark.Maths.Units;
using WitnessMark.Records;
using WitnessMark.Stores;

namespace WitnessMark.Cli.Stores;

/// <summary>Which borrowed sample of which records, and what is wanted of it.</summary>
sealed class LoanOptions
{
    readonly Option<string> _db = Kept.Db();
    readonly Option<string?> _vehicle = new("--vehicle") { Description = "Name of the vehicle; without it all are looked through." };
    readonly Option<string?> _sample = new("--sample") { Description = "Words of its title, its part or its lender; not needed when only one is here on loan." };
    readonly Option<string> _wanted = new("--wanted") { Description = "± that every dimension is to keep in 19 of 20 cases.", DefaultValueFactory = _ => "0.1 mm" };
    readonly Option<string> _origin = new("--origin") { Description = "Where the vehicle comes from, for the made-to sizes.", DefaultValueFactory = _ => "unknown" };

    public LoanOptions() => _origin.AcceptOnlyFromAmong([.. Origins.All.Select(o => o.Name)]);

    public Symbol[] All => [_db, _vehicle, _sample, _wanted, _origin];

    /// <summary>Every borrowed sample that is still here and that the words fit.</summary>
    public async Task<ImmutableArray<Lent>> Open(ParseResult parsed, CancellationToken stop)
    {
        var wanted = Lengths.Read(parsed.GetRequiredValue(_wanted), field: "--wanted").Value.Mm;
        if (!(wanted is > 0 and <= 1000)) throw new RefusedException(Refusal.Of("--wanted", parsed.GetRequiredValue(_wanted), "give a ± of more than 0 and at most 1000 mm"));
        var path = parsed.GetRequiredValue(_db);
        var room = await Kept.Open(path, stop);
        var lent = ImmutableArray.CreateBuilder<Lent>();
        foreach (var tree in await Kept.Vehicles(path, parsed.GetValue(_vehicle), stop))
        {
            var gone = (await room.Desk.GivenBack.Of(tree.Vehicle.Row.Id, stop)).Select(b => b.SampleId).ToHashSet();
            foreach (var sample in tree.Samples.Select(s => s.Row).Where(s => s.Loan is not null && !gone.Contains(s.Id)))
            {
                var request = await StoredLoan.Open(tree, sample, room.Readings, room.Bench, room.Desk, stop);
                lent.Add(new(room, tree, request with { WantedPlusMinus = wanted, Origin = parsed.GetRequiredValue(_origin) }));
            }
        }
        return Fitting(lent.ToImmutable(), parsed.GetValue(_sample));
    }

    /// <summary>The one that the words fit.</summary>
    public async Task<Lent> One(ParseResult parsed, CancellationToken stop) => await Open(parsed, stop) is [var one] ? one
        : throw new RefusedException(Refusal.Of("--sample", parsed.GetValue(_sample), "several are here on loan; give words of one of their titles"));

    static ImmutableArray<Lent> Fitting(ImmutableArray<Lent> lent, string? words)
    {
        if (lent.IsEmpty) throw new RefusedException(Refusal.Of("--sample", words, "nothing is here on loan"));
        ImmutableArray<Lent> fitting = [.. lent.Where(l => (words ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries).All(w => l.Called.Contains(w, StringComparison.OrdinalIgnoreCase)))];
        return !fitting.IsEmpty ? fitting
            : throw new RefusedException(Refusal.Of("--sample", words, $"give words of one that is here on loan: {string.Join("; ", lent.Select(l => l.Request.Sample.Title))}"));
    }
}

/// <summary>A borrowed sample that is still here.</summary>
sealed record Lent(RecordRoom Room, VehicleTree Tree, LoanRequest Request)
{
    public string Called => $"{Request.Sample.Title} {Request.Part} {Request.Sample.Loan!.Lender}";
}
