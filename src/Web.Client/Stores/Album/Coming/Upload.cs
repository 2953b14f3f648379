namespace WitnessMark.Web.Client.Stores.Album.Coming;

public enum UploadState { Waiting, Sending, Kept, Refused, Away, Stopped }

/// <summary>One file on its way to the records. State on purpose: a person may still change its words while it is sent.</summary>
/// <param name="file">The browser's number for it.</param>
public sealed class Upload(int file, Guid vehicle, Guid fact, string name, long size, DateTimeOffset? modified)
{
    public int File => file;

    public Guid Vehicle => vehicle;

    /// <summary>The id of the fact that will say of it; made here, so that sending it twice keeps it once.</summary>
    public Guid Fact => fact;

    public string Name => name;

    public long Size => size;

    /// <summary>As the browser tells of the file; null when it tells nothing sane.</summary>
    public DateTimeOffset? Modified => modified;

    public UploadState State { get; set; }

    /// <summary>0 to 1.</summary>
    public double Share { get; set; }

    public string? Why { get; set; }

    public Guid? PartId { get; set; }

    public string Words { get; set; } = "";

    /// <summary>The picture's id once its bytes are kept.</summary>
    public string? Picture { get; set; }

    /// <summary>When it was taken, by the camera, else the file, else now.</summary>
    public DateTimeOffset? At { get; set; }

    public bool Open => State is UploadState.Waiting or UploadState.Sending;

    public bool CanRetry => State is UploadState.Refused or UploadState.Away or UploadState.Stopped;

    public string Said => State switch
    {
        UploadState.Waiting => "waiting",
        UploadState.Sending => $"{Share:P0} sent",
        UploadState.Kept => "kept",
        UploadState.Stopped => "stopped; nothing of it was kept",
        UploadState.Away => "the host does not answer; it is still here, try again when it is back",
        _ => "not kept",
    };
}
