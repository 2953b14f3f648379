using System.Collections.Immutable;
using WitnessMark.FrontOffice.Printing;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Tags;
using WitnessMark.Stores;
using WitnessMark.Stores.Tags;

namespace WitnessMark.FrontOffice.PrintTags;

/// <summary>Things to tag on a sheet of labels.</summary>
/// <param name="Standing">The vehicle's tags so far.</param>
/// <param name="Start">The first free label of the first sheet, from 1.</param>
public sealed record PrintTagsRequest(
    Guid Vehicle, ImmutableArray<TagWanted> Wanted, ImmutableArray<TagCode> Standing, LabelGrid Grid, int Start, DateTimeOffset At, string Device)
{
    /// <summary>Where the works answers on the person's network: a scanned tag then opens the thing at once. Null: the tag holds its code alone.</summary>
    public string? Address { get; init; }
}

/// <param name="Tags">One for each label, in order.</param>
/// <param name="New">Those to be kept before the sheets are used.</param>
public sealed record PrintTagsResult(ImmutableArray<TagCode> Tags, ImmutableArray<TagCode> New, ImmutableArray<Sheet> Sheets)
{
    public PrintOut Pdf(DateTimeOffset? created) => PrintOut.Pdf("tags", Sheets, created);
}

/// <summary>Label sheets with a code for each thing. A thing keeps the code it has.</summary>
public static class PrintTags
{
    /// <summary>Most labels of one printing: it is a stack of paper already.</summary>
    public const int Most = 10_000;

    /// <exception cref="RefusedException">Nothing to print, a start off the sheet, a wrong address, or a label too small for its code.</exception>
    public static PrintTagsResult Run(PrintTagsRequest request)
    {
        if (request.Wanted.Length > Most) throw new RefusedException(Refusal.Of("labels", $"{request.Wanted.Length}", $"print at most {Most} at once"));
        var address = Address(request.Address);
        var tags = ImmutableArray.CreateBuilder<TagCode>(request.Wanted.Length);
        var codes = TagBook.Open(request.Standing);
        foreach (var wanted in request.Wanted) tags.Add(codes.For(Tag(request, wanted)));
        var had = request.Standing.Select(t => t.Id).ToHashSet();
        ImmutableArray<TagCode> fresh = [.. tags.Where(t => !had.Contains(t.Id)).DistinctBy(t => t.Id)];
        var labels = tags.Zip(request.Wanted, (t, w) => new Label($"{address}{t.Code}", TagSpelling.Printed(t.Code), w.Title, w.Remark)).ToList();
        return new(tags.ToImmutable(), fresh, LabelSheets.Draw(labels, request.Grid, request.Start));
    }

    /// <summary>The id follows from the thing and the moment, so that a printing sent twice is kept once.</summary>
    static TagCode Tag(PrintTagsRequest r, TagWanted w) => new(
        NamedId.Of(w.Subject, $"tag {w.Kind} {r.Device} {r.At:O}"), r.Vehicle, "", w.Kind, w.Subject, w.Title, r.At, r.Device);

    static string Address(string? text)
    {
        if (text is null) return "WM:";
        var wanted = "give an address such as https://192.168.1.20:5001";
        return Uri.TryCreate(text.Trim(), UriKind.Absolute, out var uri) && uri.Scheme is ("http" or "https") && uri.Query == "" && uri.Fragment == ""
            ? $"{uri.AbsoluteUri.TrimEnd('/')}/t/" : throw new RefusedException(Refusal.Of("address", text, wanted));
    }
}
