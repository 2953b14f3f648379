namespace WitnessMark.Stores;

/// <summary>The texts of a part that are searched, and what finding a word there is worth.</summary>
static class Texts
{
    public static readonly FoundIn[] All = Enum.GetValues<FoundIn>();

    public static string Of(PartWords part, FoundIn text) => text switch
    {
        FoundIn.Name => part.Part.Name,
        FoundIn.Reference => part.Part.Reference,
        FoundIn.Hand => part.Part.Hand switch { Hand.LH => "LH left hand", Hand.RH => "RH right hand", _ => "" },
        FoundIn.Assembly => part.Assembly,
        FoundIn.System => part.System,
        FoundIn.Condition => part.Part.Condition,
        _ => part.Other,
    };

    /// <summary>The words of one text, then, where names are written, its neighbours joined.</summary>
    public static IEnumerable<Word> WordsOf(PartWords part, FoundIn text)
    {
        var words = Words.Of(Of(part, text));
        return text is FoundIn.Hand or FoundIn.Condition ? words : words.Concat(Words.Joined(words));
    }

    /// <summary>0 to 1. What the part is called counts before where it sits, and that before what is said of it; our own choice.</summary>
    public static double Worth(FoundIn text) => text switch
    {
        FoundIn.Name or FoundIn.Reference => 1,
        FoundIn.Hand => 0.9,
        FoundIn.Assembly => 0.7,
        FoundIn.System => 0.6,
        _ => 0.5,
    };

    /// <summary>0 to 1; our own choice.</summary>
    public static double Worth(Likeness likeness) => likeness switch
    {
        Likeness.Same => 1,
        Likeness.Number => 0.95,
        Likeness.Beginning => 0.8,
        Likeness.Within => 0.65,
        Likeness.OneSlip => 0.6,
        _ => 0.45,
    };
}
