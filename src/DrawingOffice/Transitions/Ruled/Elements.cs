namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>The straight elements across a panel.</summary>
public static class Elements
{
    /// <summary>Elements between the ends of a panel so that no chord on either rim is further than <paramref name="error"/> mm from its arc.</summary>
    /// <param name="into">Takes the elements after the first of the panel, its last included.</param>
    public static void Add(List<Element> into, Skin skin, Panel p, double error)
    {
        var end = new Element(p.FirstTo, p.SecondTo);
        if (!p.Flat)
        {
            var (n, driveFirst) = Driver(skin, p, error);
            var last = new Element(p.FirstFrom, p.SecondFrom);
            for (var k = 1; k <= n; k++)
            {
                var next = k == n ? end : At(skin, p, (double)k / n, driveFirst);
                Between(into, skin, p, driveFirst, last, next, error, 0);
                into.Add(next);
                last = next;
            }
            return;
        }
        into.Add(end);
    }

    /// <summary>The panel in two, cut along an element; the share is of the edge that asks for most chords.</summary>
    public static (Panel Before, Panel After) Cut(Skin skin, Panel p, double share)
    {
        var e = p.Flat
            ? new Element(p.FirstFrom + share * (p.FirstTo - p.FirstFrom), p.SecondFrom + share * (p.SecondTo - p.SecondFrom))
            : At(skin, p, share, p.FirstMoves);
        return (p with { FirstTo = e.First, SecondTo = e.Second }, p with { FirstFrom = e.First, SecondFrom = e.Second });
    }

    static (int Chords, bool First) Driver(Skin skin, Panel p, double error)
    {
        var (first, second) = (Chords(skin.First, p.FirstFrom, p.FirstTo, error), Chords(skin.Second, p.SecondFrom, p.SecondTo, error));
        return first >= second ? (first, p.FirstMoves) : (second, !p.SecondMoves);
    }

    // 0 for a rim that stands still.
    static int Chords(Rim rim, double from, double to, double error)
    {
        if (to <= from) return 0;
        var whole = Math.Floor(from);
        return rim.Sides[rim.Split(whole).Side].Chords(from - whole, to - whole, error);
    }

    // Even steps on one rim may be long ones on the other.
    static void Between(List<Element> into, Skin skin, Panel p, bool driveFirst, Element last, Element next, double error, int depth)
    {
        var (from, to) = driveFirst ? (last.Second, next.Second) : (last.First, next.First);
        if (depth > 12 || Chords(driveFirst ? skin.Second : skin.First, from, to, error) <= 1) return;
        var (lead, start, finish) = driveFirst ? ((last.First + next.First) / 2, p.FirstFrom, p.FirstTo) : ((last.Second + next.Second) / 2, p.SecondFrom, p.SecondTo);
        var middle = At(skin, p, (lead - start) / (finish - start), driveFirst);
        Between(into, skin, p, driveFirst, last, middle, error, depth + 1);
        into.Add(middle);
        Between(into, skin, p, driveFirst, middle, next, error, depth + 1);
    }

    static Element At(Skin skin, Panel p, double share, bool driveFirst)
    {
        if (driveFirst)
        {
            var place = p.FirstFrom + share * (p.FirstTo - p.FirstFrom);
            return new(place, p.SecondMoves ? Partner(skin.First, place, p.FirstFrom, 1, skin.Second, p.SecondFrom, p.SecondTo) : p.SecondFrom);
        }
        var at = p.SecondFrom + share * (p.SecondTo - p.SecondFrom);
        return new(p.FirstMoves ? Partner(skin.Second, at, p.SecondFrom, -1, skin.First, p.FirstFrom, p.FirstTo) : p.FirstFrom, at);
    }

    static double Partner(Rim on, double place, double from, int side, Rim other, double least, double most)
    {
        var whole = Math.Floor(from);
        var along = on.Sides[on.Split(whole).Side].Along(place - whole);
        var found = Touch.Of(on.At(place), on.Frame.Z.Cross(along), on.Frame.Z * side, other).First;
        // The turn of the partner's rim that lies nearest the panel.
        var middle = (least + most) / 2;
        return Math.Clamp(found + other.Count * Math.Round((middle - found) / other.Count), least, most);
    }
}
