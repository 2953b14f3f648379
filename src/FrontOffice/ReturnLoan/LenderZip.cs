using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using WitnessMark.FrontOffice.Printing;
using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;
using WitnessMark.Stores.Photographs.Files;

namespace WitnessMark.FrontOffice.ReturnLoan;

/// <summary>One file with everything measured of a borrowed sample, to go back with it.</summary>
/// <remarks>The same records make the same bytes: nothing in it is dated by the clock.</remarks>
public static class LenderZip
{
    /// <summary>Check sums as the common tool for them reads: <c>sha256sum --check manifest.sha256</c>.</summary>
    public const string Manifest = "manifest.sha256";

    /// <param name="photographs">As kept; what their camera wrote beside the pixels is left out here.</param>
    public static PrintOut Of(LoanRequest request, LoanPapers papers, IEnumerable<Picture> photographs)
    {
        var (pictures, spoilt) = Stripped(photographs);
        ImmutableArray<PrintOut> files = [.. papers.Files, .. pictures];
        var letter = LenderWords.Of(request, papers with { Lacks = [.. papers.Lacks, .. spoilt] }, [.. files.Select(f => f.FileName)]);
        files = files.Insert(0, Text("README.txt", letter));
        var sums = Text(Manifest, string.Concat(files.Select(f => $"{Convert.ToHexStringLower(SHA256.HashData(f.Bytes))}  {f.FileName}\n")));
        return PrintOut.Zip($"{LoanPapers.Slug(request.Sample.Title)}-measured", [.. files, sums]);
    }

    /// <summary>A picture that cannot be read whole is left out, for what stands in it cannot be told.</summary>
    static (List<PrintOut> Files, List<string> Spoilt) Stripped(IEnumerable<Picture> photographs)
    {
        var (files, spoilt) = (new List<PrintOut>(), new List<string>());
        foreach (var picture in photographs)
        {
            try
            {
                var ending = picture.MediaType["image/".Length..] is var kind && kind == "jpeg" ? "jpg" : kind;
                files.Add(new(string.Create(CultureInfo.InvariantCulture, $"photograph-{files.Count + 1}.{ending}"), picture.MediaType, PictureStrip.Of(picture.Bytes.Span)));
            }
            catch (RefusedException e)
            {
                spoilt.Add($"A photograph is left out: {e.Message}");
            }
        }
        return (files, spoilt);
    }

    static PrintOut Text(string name, string text) => new(name, "text/plain", Encoding.UTF8.GetBytes(text));
}
