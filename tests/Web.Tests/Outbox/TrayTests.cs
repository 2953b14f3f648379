using System.Net;
using CsCheck;
using WitnessMark.Stores;
using WitnessMark.Stores.Notes;
using WitnessMark.Stores.Orders;
using WitnessMark.Tests;
using WitnessMark.Web.Client.Outbox;
using WitnessMark.Web.Client.Outbox.Shelf;

namespace WitnessMark.Web.Tests.Outbox;

/// <summary>What was kept reaches the host once, whatever the link does, and no decision overwrites another.</summary>
[Truth(Grade.Property, "exactly once: a retry of a request with an idempotent id leaves one record; optimistic versions: a save on an older version changes nothing")]
public class TrayTests
{
    static readonly Guid Vehicle = Guid.Parse("0192f0c1-0000-7000-8000-000000000001"), Sample = Guid.Parse("0192f0c1-0000-7000-8000-000000000002");

    readonly HastyClock _clock = new();

    [Fact]
    public void Over_any_losses_and_closings_every_entry_of_three_devices_is_recorded_once() =>
        Gen.Select(Gen.Int[0, int.MaxValue - 1], Gen.Double[0, 0.7], Gen.Int[0, 2].Array[5, 60]).Sample((seed, loss, deeds) => OnePage.Run(async () =>
        {
            var chance = new Random(seed);
            var host = new FlakyHost(chance, loss);
            var shelves = Enumerable.Range(0, 3).Select(_ => new ListShelf()).ToArray();
            var trays = shelves.Select(s => Page(s, host)).ToArray();
            var made = new List<Guid>();
            foreach (var device in deeds)
            {
                // The page may be closed in the middle of a sending, and opened again.
                if (chance.Next(5) == 0) await (trays[device] = Page(shelves[device], host)).Open();
                var tray = trays[device];
                var reading = new ReadingEntry(tray.NewId(), Sample, "distance", "H1", "H2", "58.2", "", "calliper", "", _clock.GetUtcNow(), $"phone {device}");
                made.Add(reading.Id);
                Assert.Null(await tray.Append(reading));
                var note = Note(tray, $"Note {made.Count}");
                made.Add(note.Id);
                Assert.Null(await tray.Append(note));
                if (chance.Next(3) > 0) continue;
                var back = new Withdrawal(tray.NewId(), reading.Id, "misread", _clock.GetUtcNow(), $"phone {device}");
                made.Add(back.Id);
                Assert.Null(await tray.Append(back));
            }
            foreach (var shelf in shelves)
            {
                var last = Page(shelf, host);
                await last.Open();
                await last.Send();
                Assert.Equal(0, last.Lying.Waiting + last.Lying.NeedYou);
            }
            Assert.Equal(made.Order(), host.Recorded.Select(r => r.Id).Order());
        }), iter: 60, threads: 1);

    [Fact]
    public void One_device_never_clashes_with_itself() =>
        Gen.Select(Gen.Int[0, int.MaxValue - 1], Gen.Double[0, 0.7], Gen.Int[1, 20]).Sample((seed, loss, changes) => OnePage.Run(async () =>
        {
            var host = new FlakyHost(new Random(seed), loss);
            var shelf = new ListShelf();
            var tray = Page(shelf, host);
            var firm = new Firm(Guid.NewGuid(), Vehicle, "Hartle platers", "zinc", "", "");
            for (var i = 1; i <= changes; i++)
                Assert.Null(await tray.Save(firm with { Notes = $"{i}" }, tray.Lying.Decisions.Values.FirstOrDefault()?.BasedOn ?? host.Versions(Address(firm)).Count));
            await Idle(tray);
            Assert.Equal(0, tray.Lying.NeedYou);
            Assert.Contains($"\"notes\":\"{changes}\"", host.Versions(Address(firm))[^1]);
        }), iter: 60, threads: 1);

    [Fact]
    public void Two_devices_that_change_one_row_while_away_both_keep_theirs_and_the_person_chooses() => OnePage.Run(async () =>
    {
        var host = new FlakyHost(new Random(1), 0);
        var (one, other) = (Page(new ListShelf(), host), Page(new ListShelf(), host));
        var firm = new Firm(Guid.NewGuid(), Vehicle, "Hartle platers", "zinc", "", "");
        Assert.Null(await one.Save(firm));
        await Idle(one);
        host.Away = true;
        Assert.Null(await one.Save(firm with { Does = "nickel" }, 1));
        Assert.Null(await other.Save(firm with { Does = "chrome" }, 1));
        host.Away = false;
        one.Wake();
        await Idle(one);
        other.Wake();
        await Idle(other);
        Assert.Equal(2, host.Versions(Address(firm)).Count);
        // Whichever came second is asked.
        var second = Assert.Single(new[] { one, other }, t => t.Lying.NeedYou == 1);
        var clash = Assert.Single(second.Lying.Decisions.Values);
        Assert.Equal(["chrome", "nickel"], new[] { Does(clash.Text), Does(clash.Theirs!) }.Order());
        await second.KeepMine(clash.Address);
        await Idle(second);
        Assert.Empty(second.Lying.Decisions);
        Assert.Equal(["zinc", Does(clash.Theirs!), Does(clash.Text)], host.Versions(Address(firm)).Select(Does));
    });

    [Fact]
    public void One_bad_entry_among_many_is_shown_and_the_others_go() => OnePage.Run(async () =>
    {
        // A word that no id in hexadecimal can spell.
        var host = new FlakyHost(new Random(1), 0) { Away = true, Refuses = t => t.Contains("worst") ? "words: \"worst\"; write better ones." : null };
        var tray = Page(new ListShelf(), host);
        for (var i = 0; i < 70; i++) Assert.Null(await tray.Append(Note(tray, i == 41 ? "worst" : $"Note {i}")));
        host.Away = false;
        tray.Wake();
        await Idle(tray);
        Assert.Equal(69, host.Recorded.Count);
        var refused = Assert.Single(tray.Lying.Entries.Values);
        Assert.Contains("write better", refused.Refusal);
        await tray.Again(refused, refused.Text.Replace("worst", "good"));
        await Idle(tray);
        Assert.Equal(70, host.Recorded.Count);
        Assert.Empty(tray.Lying.Entries);
    });

    [Fact]
    public void A_device_that_was_dropped_keeps_everything_and_says_so() => OnePage.Run(async () =>
    {
        var host = new FlakyHost(new Random(1), 0) { Unpaired = true };
        var tray = Page(new ListShelf(), host);
        Assert.Null(await tray.Append(Note(tray, "Taken while dropped")));
        await Task.Yield();
        Assert.Equal(1, tray.Lying.Waiting);
        host.Unpaired = false;
        tray.Wake();
        await Idle(tray);
        Assert.False(tray.Unpaired);
        Assert.Single(host.Recorded);
    });

    [Fact]
    public void A_full_device_says_so_keeps_nothing_half_and_still_hands_over_what_the_host_takes() => OnePage.Run(async () =>
    {
        var host = new FlakyHost(new Random(1), 0) { Away = true };
        var shelf = new ListShelf { Full = true };
        var tray = Page(shelf, host);
        Assert.Equal("There is no room.", await tray.Append(Note(tray, "Typed and still in the form")));
        Assert.Empty(tray.Lying.Entries);
        host.Away = false;
        Assert.Null(await tray.Append(Note(tray, "The host takes it")));
        Assert.Single(host.Recorded);
        shelf.Full = false;
        host.Away = true;
        Assert.Null(await tray.Append(Note(tray, "Before it was full")));
        (shelf.Full, host.Away) = (true, false);
        tray.Wake();
        await Idle(tray);
        Assert.Equal((2, 0), (host.Recorded.Count, shelf.Lies.Entries.Count));
    });

    [Fact]
    public void Pictures_go_before_the_entries_that_name_them_and_withdrawals_after_their_readings() => OnePage.Run(async () =>
    {
        var host = new FlakyHost(new Random(1), 0) { Away = true };
        var tray = Page(new ListShelf(), host);
        var reading = new ReadingEntry(tray.NewId(), Sample, "distance", "H1", "H2", "58.2", "", "calliper", "", _clock.GetUtcNow(), "phone");
        Assert.Null(await tray.Append(new Withdrawal(tray.NewId(), reading.Id, "", _clock.GetUtcNow(), "phone")));
        Assert.Null(await tray.Append(reading));
        Assert.True((await tray.Keep([0xFF, 0xD8, 0xFF, 0xE0, 1, 2, 3])).Ok);
        host.Away = false;
        tray.Wake();
        await Idle(tray);
        Assert.Equal(["api/pictures", $"api/samples/{Sample}/readings", "api/withdrawals"], host.Order);
    });

    [Fact]
    public void What_waits_handed_over_as_a_file_is_recorded_once_whichever_way_it_comes() => OnePage.Run(async () =>
    {
        var host = new FlakyHost(new Random(1), 0) { Away = true };
        var (phone, desk) = (Page(new ListShelf(), host), Page(new ListShelf(), host));
        for (var i = 0; i < 5; i++) Assert.Null(await phone.Append(Note(phone, $"Note {i}")));
        var file = await phone.HandOver("phone");
        host.Away = false;
        Assert.Equal(5, await desk.TakeIn(file));
        await Idle(desk);
        phone.Wake();
        await Idle(phone);
        Assert.Equal(5, host.Recorded.Count);
        Assert.Equal(0, phone.Lying.Waiting + desk.Lying.Waiting);
        await Assert.ThrowsAsync<Maths.RefusedException>(() => desk.TakeIn("{}"));
        await Assert.ThrowsAsync<Maths.RefusedException>(() => desk.TakeIn(file.Replace("/desk/Note", "/changes")));
    });

    [Theory]
    [InlineData(HttpStatusCode.OK, "<html>Sign on to the camp site's network</html>", Fate.Away)]
    [InlineData(HttpStatusCode.OK, "{}", Fate.Away)]
    [InlineData(HttpStatusCode.Forbidden, "<html>blocked</html>", Fate.Away)]
    [InlineData(HttpStatusCode.TooManyRequests, """{"refusal":"Too many."}""", Fate.Away)]
    [InlineData(HttpStatusCode.InsufficientStorage, """{"refusal":"The disk is full."}""", Fate.Away)]
    [InlineData(HttpStatusCode.Unauthorized, """{"refusal":"Not paired."}""", Fate.Unpaired)]
    [InlineData(HttpStatusCode.BadRequest, """{"refusal":"note: empty; write a few words."}""", Fate.Refused)]
    [InlineData(HttpStatusCode.OK, """{"new":0}""", Fate.Done)]
    [Truth(Grade.Published, "RFC 9110, 15.5.2 (401), 15.6 (5xx); RFC 6585, 4 (429); RFC 4918, 11.5 (507)")]
    public void Only_the_hosts_own_word_counts(HttpStatusCode status, string text, Fate fate) => Assert.Equal(fate, HttpCarrier.Read(status, text).Fate);

    Tray Page(ListShelf shelf, FlakyHost host) => new(shelf, host.Link(), _clock);

    Note Note(Tray tray, string words) => new(tray.NewId(), Vehicle, null, words, _clock.GetUtcNow(), "phone");

    static string Does(string firm) => firm.Split("\"does\":\"")[1].Split('"')[0];

    static string Address(Firm firm) => $"api/vehicles/{Vehicle}/desk/Firm/{firm.Id}";

    /// <summary>Until nothing that can be sent waits.</summary>
    static async Task Idle(Tray tray)
    {
        await tray.Send();
        while (tray.Lying.Waiting > 0) await Task.Yield();
    }
}
