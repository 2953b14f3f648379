using System.Buffers.Text;
using System.Security.Cryptography;

namespace WitnessMark.Web.Pairing;

/// <summary>
/// The key that a paired device holds in a cookie: 256 random bits. The __Host- prefix (RFC 6265bis) lets only this very host set it, over
/// HTTPS alone; no script can read it, and no page from elsewhere sends it. Only its hash is kept here: whoever reads the records cannot act as the device.
/// </summary>
static class DeviceKey
{
    public const string Cookie = "__Host-wm-device";

    const int Bytes = 32;

    /// <summary>The longest that browsers keep a cookie (RFC 6265bis).</summary>
    static readonly TimeSpan Life = TimeSpan.FromDays(400);

    public static string New() => Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Bytes));

    /// <summary>Null when it can be no key.</summary>
    public static string? HashOf(string? key)
    {
        if (key is null || key.Length > 64 || !Base64Url.IsValid(key)) return null;
        var bytes = Base64Url.DecodeFromChars(key);
        return bytes.Length == Bytes ? Convert.ToHexStringLower(SHA256.HashData(bytes)) : null;
    }

    public static void Give(HttpResponse response, string key) => response.Cookies.Append(Cookie, key, new()
    {
        Secure = true,
        HttpOnly = true,
        SameSite = SameSiteMode.Strict,
        Path = "/",
        MaxAge = Life,
    });
}
