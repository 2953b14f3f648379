using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.PrintRoom.Letters;

/// <summary>The letters that alphabet.txt holds; its head says how they are written down.</summary>
sealed class Alphabet
{
    const double SmallScale = 0.62;
    const double Raised = 10 * (1 - SmallScale);
    const double Lowered = -2;

    readonly Dictionary<Rune, Glyph> _letters = [];
    readonly Dictionary<Rune, (ImmutableArray<Curve> Strokes, bool Lifted)> _accents = [];

    public static Alphabet Own { get; } = Read();

    /// <summary>What stands for a letter that is missing: a crossed box, not to be overlooked.</summary>
    public static Glyph Box { get; } = new(5, Spelled("0,0 5,0 5,10 0,10 0,0 5,10 | 0,10 5,0"));

    public IReadOnlyDictionary<Rune, Glyph> Letters => _letters;

    Alphabet(IEnumerable<string> lines)
    {
        var section = "";
        foreach (var line in lines)
        {
            if (line.Length == 0 || line.StartsWith("//", StringComparison.Ordinal)) continue;
            if (line[0] == '[' && line.Length > 2 && line[1] != ' ') section = line;
            else Enter(section, line);
        }
    }

    public bool Accent(Rune mark, out ImmutableArray<Curve> strokes, out bool lifted)
    {
        var known = _accents.TryGetValue(mark, out var accent);
        (strokes, lifted) = accent;
        return known;
    }

    /// <summary>The base of an accent: a dotless i or j under one that stands above.</summary>
    public Glyph Bare(char letter, bool lifted) => _letters[new((lifted, letter) switch { (true, 'i') => 'ı', (true, 'j') => 'ȷ', _ => letter })];

    public Glyph Numerator(char digit) => _letters[new(digit)].Small(SmallScale, Raised);

    public Glyph Denominator(char digit) => _letters[new(digit)].Small(SmallScale, 0);

    static Alphabet Read()
    {
        using var stream = typeof(Alphabet).Assembly.GetManifestResourceStream("alphabet")!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return new(reader.ReadToEnd().Split('\n', StringSplitOptions.TrimEntries));
    }

    void Enter(string section, string line)
    {
        var words = line.Split(' ', 3);
        switch (section)
        {
            case "[spaces]": _letters.Add(Named(words[0]), new(Number(words[1]), [])); break;
            case "[letters]": _letters.Add(Named(words[0]), new(Number(words[1]), Spelled(words[2]))); break;
            case "[same]": _letters.Add(Named(words[0]), _letters[Named(words[1])]); break;
            case "[above]": EnterAccent(line, true); break;
            case "[below]": EnterAccent(line, false); break;
            case "[composed]": EnterComposed(line); break;
            case "[small]": EnterSmall(words[0], words[1]); break;
            case "[fractions]": EnterFraction(Named(words[0]), words[1]); break;
            default: throw new FormatException($"alphabet: {section} is no section");
        }
    }

    void EnterAccent(string line, bool lifted)
    {
        var words = line.Split(' ', 2);
        _accents.Add(Code(words[0]), (Spelled(words[1]), lifted));
    }

    void EnterComposed(string line)
    {
        var words = line.Split(' ');
        var (strokes, lifted) = _accents[Code(words[0])];
        foreach (var pair in words.Skip(1))
            _letters.Add(new(pair[0]), _letters[new(pair[1])].Under(strokes, lifted));
    }

    void EnterSmall(string raised, string lowered)
    {
        for (var digit = 0; digit < 10; digit++)
        {
            var figure = _letters[new((char)('0' + digit))];
            _letters.Add(new(raised[digit]), figure.Small(SmallScale, Raised));
            _letters.Add(new(lowered[digit]), figure.Small(SmallScale, Lowered));
        }
    }

    void EnterFraction(Rune letter, string figures)
    {
        var halves = figures.Split('/');
        _letters.Add(letter, Fraction.Of(this, halves[0], halves[1]));
    }

    static Rune Named(string word) => word.StartsWith("U+", StringComparison.Ordinal) ? Code(word[2..]) : Rune.GetRuneAt(word, 0);

    static Rune Code(string hex) => new(int.Parse(hex, NumberStyles.HexNumber, CultureInfo.InvariantCulture));

    static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    internal static ImmutableArray<Curve> Spelled(string strokes) => [.. strokes.Split(" | ").Select(Strokes.Read)];
}
