using System.Text;
using WitnessMark.FrontOffice.Printing;
using WitnessMark.Stores;

namespace WitnessMark.FrontOffice.ShareWants;

/// <summary>The wants list as files to hand out.</summary>
public static class ShareWants
{
    public static PrintOut Html(WantsList list) => new("wants.html", "text/html", Encoding.UTF8.GetBytes(WantsHtml.Write(list)));

    /// <summary>The table begins with a byte-order mark, for without it common spreadsheets misread every letter beyond ASCII.</summary>
    public static PrintOut Csv(WantsList list) => new("wants.csv", "text/csv", [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(WantsCsv.Write(list))]);
}
