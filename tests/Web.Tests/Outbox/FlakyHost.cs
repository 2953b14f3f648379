using System.Net;
using System.Text.Json;
using WitnessMark.Web.Client.Outbox.Shelf;

namespace WitnessMark.Web.Tests.Outbox;

/// <summary>
/// A host behind a bad link, by the rules of the records: an id once, the same id with other words refused, a decision only on the version
/// that stands. The link loses requests on their way and answers on theirs.
/// </summary>
sealed class FlakyHost(Random chance, double loss)
{
    readonly Dictionary<string, List<string>> _decisions = [];

    /// <summary>Every time an id was new, in the order of arrival.</summary>
    public List<(Guid Id, string Text)> Recorded { get; } = [];

    public List<string> Order { get; } = [];

    public HashSet<string> Pictures { get; } = [];

    /// <summary>Why an entry is refused; null when it is not.</summary>
    public Func<string, string?> Refuses { get; set; } = _ => null;

    public bool Away { get; set; }

    public bool Unpaired { get; set; }

    public int Asked { get; private set; }

    public IReadOnlyList<string> Versions(string address) => _decisions.GetValueOrDefault(address) ?? [];

    public ICarrier Link() => new Carrier(this);

    (HttpStatusCode, string) Post(string address, string json)
    {
        using var body = JsonDocument.Parse(json);
        List<JsonElement> rows = body.RootElement.ValueKind == JsonValueKind.Array ? [.. body.RootElement.EnumerateArray()] : [body.RootElement];
        var fresh = rows.Select(r => (Id: r.GetProperty("id").GetGuid(), Text: r.GetRawText())).ToList();
        if (fresh.Select(r => Refuses(r.Text)).FirstOrDefault(w => w is not null) is { } why) return Refused(why);
        if (fresh.Any(r => Recorded.Any(k => k.Id == r.Id && k.Text != r.Text))) return Refused("The same id with other words.");
        foreach (var row in fresh.Where(r => Recorded.All(k => k.Id != r.Id)))
        {
            Recorded.Add(row);
            Order.Add(address);
        }
        return (HttpStatusCode.OK, """{"new":1}""");
    }

    (HttpStatusCode, string) Put(string address, string json)
    {
        using var body = JsonDocument.Parse(json);
        var (row, basedOn) = (body.RootElement.GetProperty("row").GetRawText(), body.RootElement.GetProperty("basedOn").GetInt32());
        if (Refuses(row) is { } why) return Refused(why);
        if (!_decisions.TryGetValue(address, out var versions)) versions = _decisions[address] = [];
        var clash = versions.Count != basedOn && !(versions.Count > 0 && versions[^1] == row);
        if (!clash && !(versions.Count > 0 && versions[^1] == row)) versions.Add(row);
        return (clash ? HttpStatusCode.Conflict : HttpStatusCode.OK, $$"""{"standing":{"row":{{versions[^1]}},"version":{{versions.Count}}},"clash":{{(clash ? "true" : "false")}}}""");
    }

    static (HttpStatusCode, string) Refused(string why) => (HttpStatusCode.BadRequest, JsonSerializer.Serialize(new Dictionary<string, string> { ["refusal"] = why }));

    async Task<Answer> Through(Func<(HttpStatusCode, string)> host)
    {
        await Task.Yield();
        Asked++;
        if (Away || chance.NextDouble() < loss) return new(Fate.Away);
        if (Unpaired) return HttpCarrier.Read(HttpStatusCode.Unauthorized, """{"refusal":"Not paired."}""");
        var (status, text) = host();
        await Task.Yield();
        return chance.NextDouble() < loss ? new(Fate.Away) : HttpCarrier.Read(status, text);
    }

    sealed class Carrier(FlakyHost host) : ICarrier
    {
        public Task<Answer> Carry(HttpMethod method, string address, string json) =>
            host.Through(() => method == HttpMethod.Put ? host.Put(address, json) : host.Post(address, json));

        public Task<Answer> Carry(string address, byte[] bytes) => host.Through(() =>
        {
            host.Pictures.Add(Stores.Keeping.PictureKind.Id(bytes));
            host.Order.Add(address);
            return (HttpStatusCode.OK, """{"id":"x"}""");
        });
    }
}
