using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using WitnessMark.Maths;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Pairing;

/// <summary>What came of a typed code.</summary>
/// <param name="Why">Null: it was right.</param>
/// <param name="Wait">How long no code is looked at; nought when it was.</param>
public readonly record struct Tried(Refusal? Why, TimeSpan Wait = default);

/// <summary>
/// The one code that stands at a time: five minutes, one use, five wrong tries. Whoever tries them all from many machines at once is held up
/// by a wait that grows with each wrong try and counts for everybody. Only a keyed hash of the code is kept, in memory.
/// </summary>
public sealed class CodeDesk(TimeProvider clock)
{
    public const int Digits = 8, Tries = 5;

    public static readonly TimeSpan Life = TimeSpan.FromMinutes(5), LongestWait = TimeSpan.FromSeconds(30);

    /// <summary>Wrong tries are forgotten after as long without one.</summary>
    static readonly TimeSpan Forgotten = TimeSpan.FromMinutes(10);

    readonly Lock _one = new();
    readonly byte[] _key = RandomNumberGenerator.GetBytes(32);
    byte[]? _hash;
    DateTimeOffset _until, _lastWrong, _noneBefore;
    int _triesLeft, _wrong;
    string _ended = "no code was asked for";

    public CodeState State
    {
        get
        {
            lock (_one) return Stands(clock.GetUtcNow()) ? new(true, _triesLeft, _until) : new(false, 0, null);
        }
    }

    /// <summary>A new code; the one before it is void.</summary>
    public (string Digits, DateTimeOffset Until) New()
    {
        var digits = RandomNumberGenerator.GetInt32(100_000_000).ToString("D8", CultureInfo.InvariantCulture);
        lock (_one)
        {
            (_hash, _until, _triesLeft) = (Hash(digits), clock.GetUtcNow() + Life, Tries);
            return (digits, _until);
        }
    }

    public void Withdraw()
    {
        lock (_one) End("it was withdrawn at the desk");
    }

    /// <summary>Spends the code when it is the right one.</summary>
    /// <param name="typed">With or without spaces and hyphens.</param>
    public Tried Try(string typed)
    {
        var digits = string.Concat(typed.Where(c => !char.IsWhiteSpace(c) && c != '-'));
        // No try is lost on a slip that cannot be a code.
        if (digits.Length != Digits || !digits.All(char.IsAsciiDigit)) return new(Refusal.Of("code", typed, $"type the {Digits} digits that the desk shows"));
        lock (_one)
        {
            var now = clock.GetUtcNow();
            if (!Stands(now)) return new(Refusal.Of("code", typed, $"{_ended}; ask the desk for a new one"));
            if (now < _noneBefore) return new(new("Too many codes were tried; wait a little and try again."), _noneBefore - now);
            if (CryptographicOperations.FixedTimeEquals(Hash(digits), _hash))
            {
                _wrong = 0;
                End("it was used already");
                return new(null);
            }
            return Wrong(typed, now);
        }
    }

    Tried Wrong(string typed, DateTimeOffset now)
    {
        _wrong = now - _lastWrong > Forgotten ? 1 : _wrong + 1;
        _lastWrong = now;
        _noneBefore = now + TimeSpan.FromSeconds(Math.Min(1 << Math.Min(_wrong, 10), LongestWait.TotalSeconds));
        if (--_triesLeft == 0) End($"{Tries} wrong ones were tried");
        return new(Refusal.Of("code", typed, _triesLeft == 0 ? $"{Tries} wrong ones were tried; ask the desk for a new one"
            : $"look at the desk again, {(_triesLeft == 1 ? "1 try is" : $"{_triesLeft} tries are")} left"));
    }

    bool Stands(DateTimeOffset now)
    {
        if (_hash is not null && now >= _until) End($"it ran out after {Life.TotalMinutes:0} minutes");
        return _hash is not null;
    }

    void End(string why) => (_hash, _ended) = (null, why);

    byte[] Hash(string digits) => HMACSHA256.HashData(_key, Encoding.ASCII.GetBytes(digits));
}
