using System.Text.Json;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;
using WitnessMark.Stores.Photographs;
using WitnessMark.Stores.Photographs.Files;
using WitnessMark.Web.Client.Outbox;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Client.Stores.Album.Coming;

/// <summary>Sends chosen pictures one after the other, whichever page is open meanwhile; each ends as kept, refused with a sentence, or still here.</summary>
public sealed class Uploads : IDisposable
{
    /// <summary>A camera's notes stand in the first segments of a JPEG, each of 64 kB at most.</summary>
    const int HeadBytes = 160_000;

    readonly PictureScript _script;
    readonly DeskServer _desk;
    readonly Tray _tray;
    readonly ThisDevice _here;
    readonly TimeProvider _clock;
    readonly DotNetObjectReference<Uploads> _self;
    readonly List<Upload> _rows = [];
    bool _sending;

    public Uploads(PictureScript script, DeskServer desk, Tray tray, ThisDevice here, TimeProvider clock)
    {
        (_script, _desk, _tray, _here, _clock) = (script, desk, tray, here, clock);
        _self = DotNetObjectReference.Create(this);
    }

    public event Action? Changed;

    /// <summary>One more picture stands in the album of this vehicle.</summary>
    public event Action<Guid>? Kept;

    /// <summary>Where what is chosen next belongs, and what is said of it.</summary>
    public Guid Vehicle { get; set; }

    public Guid? PartId { get; set; }

    public string Words { get; set; } = "";

    public IReadOnlyList<Upload> Of(Guid vehicle) => [.. _rows.Where(r => r.Vehicle == vehicle)];

    public Task<IJSInProcessObjectReference> Watch(ElementReference area) => _script.Watch(area, _self);

    [JSInvokable]
    public void Chosen(int[] files, string[] names, double[] sizes, double[] modified)
    {
        for (var i = 0; i < files.Length; i++)
        {
            var at = modified[i] > 0 ? CameraTime.Sane(DateTimeOffset.FromUnixTimeMilliseconds((long)modified[i]).ToOffset(_clock.GetLocalNow().Offset), _clock.GetLocalNow()) : null;
            _rows.Add(new(files[i], Vehicle, _tray.NewId(), names[i], (long)sizes[i], at) { PartId = PartId, Words = Words });
        }
        Changed?.Invoke();
        _ = Send();
    }

    [JSInvokable]
    public void Told(int file, double share)
    {
        if (_rows.Find(r => r.File == file) is not { } row) return;
        row.Share = share;
        Changed?.Invoke();
    }

    public void Retry(Upload row)
    {
        (row.State, row.Why, row.Share) = (UploadState.Waiting, null, 0);
        Changed?.Invoke();
        _ = Send();
    }

    public void Stop(Upload row)
    {
        if (row.State == UploadState.Sending) _script.Stop(row.File);
        row.State = UploadState.Stopped;
        Changed?.Invoke();
    }

    /// <summary>Off the list; what is kept stays kept.</summary>
    public void Clear(Upload row)
    {
        Stop(row);
        _script.Drop(row.File);
        _rows.Remove(row);
        Changed?.Invoke();
    }

    public void ClearKept(Guid vehicle)
    {
        _rows.RemoveAll(r => r.Vehicle == vehicle && r.State == UploadState.Kept);
        Changed?.Invoke();
    }

    public void Dispose() => _self.Dispose();

    async Task Send()
    {
        if (_sending) return;
        _sending = true;
        try
        {
            while (_rows.Find(r => r.State == UploadState.Waiting) is { } next)
            {
                next.State = UploadState.Sending;
                Changed?.Invoke();
                var (state, why) = await One(next);
                // Stopped by the person while the last answer was on its way.
                if (next.State == UploadState.Sending) (next.State, next.Why) = (state, why);
                Changed?.Invoke();
                if (next.State != UploadState.Kept) continue;
                _script.Drop(next.File);
                Kept?.Invoke(next.Vehicle);
            }
        }
        finally
        {
            _sending = false;
        }
    }

    async Task<(UploadState, string?)> One(Upload row)
    {
        if (row.Picture is null)
        {
            var head = await _script.Head(row.File, HeadBytes);
            if (PictureKind.MediaType(head).Refusal is { } other) return (UploadState.Refused, other.Sentence);
            if (row.Size > PictureKind.Largest)
                return (UploadState.Refused, Refusal.Of("picture", $"{row.Size / 1e6:0.#} MB", $"at most {PictureKind.Largest / 1_000_000} MB are kept; take it at a smaller size").Sentence);
            var now = _clock.GetLocalNow();
            row.At = PictureHead.Taken(head)?.Sane(now) ?? row.Modified ?? now;
            var (status, text) = await _script.Send(row.File, "api/pictures", _self);
            var reply = status switch
            {
                < 0 => new(default, false, null),
                // Nobody answered: the out-tray may still take the bytes for later.
                0 => await _desk.Keep(await _script.Bytes(row.File, PictureKind.Largest)),
                200 => new(JsonSerializer.Deserialize(text, DeskJson.Default.KeptPicture), false, null),
                _ => Refused(status, text),
            };
            if (reply.Value is not { } kept) return status < 0 ? (UploadState.Stopped, null) : reply.Away ? (UploadState.Away, null) : (UploadState.Refused, reply.Refusal);
            (row.Picture, row.Share) = (kept.Id, 1);
        }
        var fact = new PictureTaken(row.Fact, row.Vehicle, row.PartId, row.Picture, row.Words.Trim(), row.At ?? _clock.GetLocalNow(), _here.Name);
        if (fact.Wrong() is { } wrong) return (UploadState.Refused, wrong.Sentence);
        return await _tray.Append(fact) is { } refusal ? (UploadState.Refused, refusal) : (UploadState.Kept, null);
    }

    static Reply<KeptPicture> Refused(int status, string text)
    {
        if (status >= 500) return new(null, true, null);
        try
        {
            return new(null, false, JsonSerializer.Deserialize(text, WireJson.Default.Refused)?.Refusal ?? $"The host refused it ({status}).");
        }
        catch (JsonException)
        {
            return new(null, false, $"The host refused it ({status}).");
        }
    }
}
