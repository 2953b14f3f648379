namespace WitnessMark.Web.Client.Shell.Ways;

/// <summary>What a page is about, read from its address.</summary>
public readonly record struct Spot(Guid? Vehicle, Guid? Part, Guid? Sample)
{
    /// <param name="path">Relative to the app, e.g. <c>vehicle/{id}/part/{id}</c>.</param>
    public static Spot Of(string path)
    {
        var steps = path.Split('?', '#')[0].Split('/');
        return new(After("vehicle"), After("part"), After("sample"));

        Guid? After(string word)
        {
            var at = Array.IndexOf(steps, word);
            return at >= 0 && at + 1 < steps.Length && Guid.TryParse(steps[at + 1], out var id) ? id : null;
        }
    }
}
