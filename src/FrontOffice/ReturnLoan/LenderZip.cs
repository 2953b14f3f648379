using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using WitnessMark.FrontOffice.Printing;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.FrontOffice.ReturnLoan;

/// <summary>One file with everything measured of a borrowed sample, to go back with it.</summary>
/// <remarks>The same records make the same bytes: nothing in it is dated by the clock.</remarks>
public static class LenderZip
{
    /// <summary>Check sums as the common tool for them reads: <c>sha256sum --check manifest.sha256</c>.</summary>
    public const string Manifest = "manifest.sha256";

    /// <param name="photographs">Already without place and serial numbers; in the order they are to be numbered.</param>
    public static PrintOut Of(LoanRequest request, LoanPapers papers, IReadOnlyList<Picture> photographs)
    {
        ImmutableArray<PrintOut> files = [.. papers.Files, .. photographs.Select(Photograph)];
        files = files.Insert(0, Text("README.txt", LenderWords.Of(request, papers, [.. files.Select(f => f.FileName)])));
        var sums = Text(Manifest, string.Concat(files.Select(f => $"{Convert.ToHexStringLower(SHA256.HashData(f.Bytes))}  {f.FileName}\n")));
        return PrintOut.Zip($"{LoanPapers.Slug(request.Sample.Title)}-measured", [.. files, sums]);
    }

    static PrintOut Photograph(Picture picture, int i) => new(
        string.Create(CultureInfo.InvariantCulture, $"photograph-{i + 1}.{(picture.MediaType == "image/jpeg" ? "jpg" : picture.MediaType["image/".Length..])}"), picture.MediaType, picture.Bytes.ToArray());

    static PrintOut Text(string name, string text) => new(name, "text/plain", Encoding.UTF8.GetBytes(text));
}
