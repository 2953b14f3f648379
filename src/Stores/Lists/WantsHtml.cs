using System.Text;
using System.Text.Encodings.Web;
using System.Text.Unicode;

namespace WitnessMark.Stores;

/// <summary>A wants list as one web page that needs nothing else: it opens without a network, prints, and asks no other machine for anything.</summary>
public static class WantsHtml
{
    const string Style = """
        body{font:16px/1.45 sans-serif;max-width:46rem;margin:1.5rem auto;padding:0 1rem;color:#1c1c1c;background:#fff}
        h1{font-size:1.5rem;margin:0}ol{list-style:none;padding:0}
        li{display:grid;grid-template-columns:9rem 1fr;gap:1rem;padding:.8rem 0;border-top:1px solid #888;break-inside:avoid}
        .photo{border:1px dashed #888;height:6.5rem;display:flex;align-items:center;justify-content:center;color:#595959;font-size:.85rem}
        h2{font-size:1.1rem;margin:0}p{margin:.15rem 0}
        @media(max-width:30rem){li{grid-template-columns:1fr}}
        """;

    static readonly HtmlEncoder Encoder = HtmlEncoder.Create(UnicodeRanges.All);

    public static string Write(WantsList list)
    {
        var title = Text(list.For.Length > 0 ? $"Wanted for {list.For}" : "Wanted");
        var page = new StringBuilder($"""
            <!doctype html>
            <html lang="en-GB">
            <head>
            <meta charset="utf-8">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
            <title>{title}</title>
            <style>
            {Style}
            </style>
            </head>
            <body>
            <h1>{title}</h1>
            <p>{list.On:yyyy-MM-dd}. {(list.Wants.Length == 1 ? "1 part" : $"{list.Wants.Length} parts")}. LH and RH are seen from the driver's seat, looking forward.</p>

            """);
        if (list.Contact.Length > 0) page.Append($"<p>{Text(list.Contact)}</p>\n");
        page.Append("<ol>\n");
        foreach (var want in list.Wants) page.Append(Item(want));
        return page.Append("</ol>\n</body>\n</html>\n").ToString().ReplaceLineEndings("\n");
    }

    static string Item(Want want)
    {
        var hand = want.Hand == Hand.None ? "" : $", {want.Hand}";
        var item = new StringBuilder($"<li><div class=\"photo\">photograph</div><div><h2>{want.Quantity} × {Text(want.What)}{hand}</h2>\n");
        item.Append($"<p>{WantsWords.Of(want.As)}</p>\n");
        foreach (var (label, text) in new[] { ("Reference", want.Reference), ("Made to", want.MadeTo), ("Condition of ours", want.Condition) })
            if (text.Length > 0) item.Append($"<p>{label}: {Text(text)}</p>\n");
        return item.Append("</div></li>\n").ToString();
    }

    static string Text(string text) => Encoder.Encode(WantsWords.Clean(text));
}
