namespace WitnessMark.Web.Client.DrawingOffice.Sheets;

static class FileNames
{
    /// <summary>Letters, digits and dashes of a title; no folder can hide in it.</summary>
    public static string Of(string title)
    {
        var plain = string.Concat(title.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-'));
        var name = string.Join('-', plain.Split('-', StringSplitOptions.RemoveEmptyEntries));
        return name.Length == 0 ? "sample" : name[..Math.Min(name.Length, 60)];
    }
}
