using System.Security.Cryptography;
using System.Text;
using WitnessMark.Maths;

namespace WitnessMark.Stores.Tags;

/// <summary>
/// Eight characters: seven that say which tag, and a check character (ISO/IEC 7064, MOD 37,36), which finds every single wrong
/// character and nearly every swap of two neighbours. The seven are of Crockford's base 32 (0 to 9 and A to Z without I, L, O, U), and a code whose check would be one of those four is
/// not given out: so a hand that writes O for 0, or I or L for 1, is read aright.
/// </summary>
public static class TagSpelling
{
    public const int Length = 8;

    const string Digits = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";

    const string CheckDigits = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";

    /// <summary>The code of a thing: the same thing always gets the same one, also on a phone without a network.</summary>
    /// <param name="attempt">Another code for the same thing, when the first is taken.</param>
    public static string Of(Guid subject, int attempt = 0)
    {
        for (var n = attempt * 100; ; n++)
        {
            var hash = SHA256.HashData([.. subject.ToByteArray(bigEndian: true), .. BitConverter.GetBytes(n).Reverse()]);
            var body = string.Concat(hash.Take(Length - 1).Select(b => Digits[b & 31]));
            if (Check(body) is var check && Digits.Contains(check)) return body + check;
        }
    }

    /// <summary>With a dash in the middle, as it is printed.</summary>
    public static string Printed(string code) => $"{code[..(Length / 2)]}-{code[(Length / 2)..]}";

    /// <summary>A code as scanned or typed: with or without <c>WM:</c> or an address that ends in <c>/t/code</c>, dashes, spaces, in either case.</summary>
    public static Parsed<string> Read(string? text)
    {
        var given = (text ?? "").Trim();
        var tail = given.LastIndexOf("/t/", StringComparison.OrdinalIgnoreCase) is >= 0 and var at ? given[(at + 3)..]
            : given.StartsWith("WM:", StringComparison.OrdinalIgnoreCase) ? given[3..] : given;
        var code = new StringBuilder();
        foreach (var c in tail.ToUpperInvariant())
            if (c is not ('-' or ' ')) code.Append(c switch { 'O' => '0', 'I' or 'L' => '1', _ => c });
        var plain = code.ToString();
        if (plain.Length != Length || plain.Any(c => !Digits.Contains(c)))
            return Refusal.Of("tag code", given, $"it has {Length} letters and figures, such as {Printed(Of(Guid.Empty))}");
        return Check(plain[..^1]) == plain[^1] ? plain : Refusal.Of("tag code", given, "one of its characters is wrong: look at the tag again");
    }

    /// <summary>ISO/IEC 7064 MOD 37,36: P = 36; for each character P = (P + value) mod 36, 36 for 0, then 2P mod 37; the check makes the last sum 1 mod 36.</summary>
    public static char Check(string body)
    {
        const int m = 36;
        var p = m;
        foreach (var c in body)
        {
            var sum = (p + CheckDigits.IndexOf(c)) % m;
            p = (sum == 0 ? m : sum) * 2 % (m + 1);
        }
        return CheckDigits[(m + 1 - p) % m];
    }
}
