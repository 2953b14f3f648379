using WitnessMark.Web.Client.Shell;

namespace WitnessMark.Web.Client.Outbox;

/// <summary>What this phone or desk is called: written into every fact made on it.</summary>
public sealed class ThisDevice(PageScript page)
{
    const string Key = "wm.device";

    /// <summary>As the person named it, else what it looks like: phone or desk.</summary>
    public string Name => page.Kept(Key) is { Length: > 0 } named ? named : page.KindOfDevice();

    public void Rename(string name)
    {
        if (name.Trim() is { Length: > 0 } given) page.Keep(Key, given);
        else page.Forget(Key);
    }
}
