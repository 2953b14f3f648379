namespace WitnessMark.Web.Client.Outbox.Shelf;

/// <summary>Where the tray lies: the browser's database, or a list in a test.</summary>
public interface IShelf
{
    /// <param name="withSent">What was acknowledged lately too.</param>
    /// <exception cref="NotKeptException">This browser keeps nothing.</exception>
    Task<Lying> Read(bool withSent);

    /// <summary>On the disk once the task has ended.</summary>
    /// <exception cref="NotKeptException">Nothing of it was kept.</exception>
    Task Change(Shift shift);

    /// <exception cref="NotKeptException">It was not kept.</exception>
    Task<UnsentPicture> KeepPicture(byte[] bytes, string type);

    Task<byte[]> Picture(string id);

    Task PictureSent(string id);

    Task RefusePicture(string id, string refusal);

    /// <summary>False while another page of this browser sends.</summary>
    Task<bool> Turn();

    void EndTurn();
}

/// <summary>This device could not keep something; the message says why and what to do.</summary>
public sealed class NotKeptException(string message) : Exception(message);

/// <summary>Carries a text to the host.</summary>
public interface ICarrier
{
    Task<Answer> Carry(HttpMethod method, string address, string json);

    Task<Answer> Carry(string address, byte[] bytes);
}

/// <summary>What became of something that was sent.</summary>
public enum Fate
{
    /// <summary>No answer, or not the host's own.</summary>
    Away,
    Done,
    Clash,
    Refused,

    /// <summary>The host answers, but not to this device.</summary>
    Unpaired,
}

/// <param name="Words">The refusal, or the row that stands as the host sent it.</param>
/// <param name="Version">Of the row that stands.</param>
public readonly record struct Answer(Fate Fate, string? Words = null, int Version = 0);
