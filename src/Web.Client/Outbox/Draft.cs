using WitnessMark.Web.Client.Shell;

namespace WitnessMark.Web.Client.Outbox;

/// <summary>What was typed into a form and not yet kept: it is there again after the back button or a reload, until the window is closed.</summary>
public sealed class Draft(PageScript page)
{
    /// <summary>A unit separator: nobody types it.</summary>
    const char Between = '\u001f';

    /// <summary>The fields as they were left, as many as asked for; null when nothing was.</summary>
    public string[]? Left(string form, int fields) => page.Draft(form)?.Split(Between) is { } typed && typed.Length == fields ? typed : null;

    public void Keep(string form, params string[] fields)
    {
        if (fields.All(f => f.Length == 0)) Forget(form);
        else page.KeepDraft(form, string.Join(Between, fields));
    }

    public void Forget(string form) => page.KeepDraft(form, null);
}
