using System.Net;
using System.Text;

namespace WitnessMark.Web.Pictures;

/// <summary>What is shown in place of a picture that cannot be shown: a crossed sheet and a sentence.</summary>
static class Placeholder
{
    public const string MediaType = "image/svg+xml";

    public static byte[] Of(string why) => Encoding.UTF8.GetBytes(
        $"""
        <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 320 240" width="320" height="240"><title>{WebUtility.HtmlEncode(why)}</title>
        <rect width="320" height="240" fill="#f3f0e6"/><path d="M110 50h100v76h-100zM110 50l100 76M210 50l-100 76" fill="none" stroke="#55616b" stroke-width="3"/>
        <text x="160" y="170" text-anchor="middle" font-family="sans-serif" font-size="17" fill="#17232e">Cannot be shown</text>
        <text x="160" y="194" text-anchor="middle" font-family="sans-serif" font-size="14" fill="#55616b">The original is kept as it is.</text></svg>
        """);
}
