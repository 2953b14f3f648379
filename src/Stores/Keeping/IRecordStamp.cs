namespace WitnessMark.Stores.Keeping;

/// <summary>Tells whether the records have changed, without reading them.</summary>
public interface IRecordStamp
{
    /// <summary>
    /// Another text after every change that has been kept, by whichever program, and the same one until then. Taken before a read, it
    /// stands for what was read or for something older, never for something newer.
    /// </summary>
    string Now();
}
