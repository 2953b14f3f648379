using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;
using WitnessMark.DrawingOffice.Intent.Patterns.Offers;
using WitnessMark.DrawingOffice.Intent.Tables;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Words;

/// <summary>From a key that a person typed to the conditions it stands for. Refuses one that names what is not there.</summary>
sealed class KeyReader(Shape shape, Making making)
{
    /// <summary>mm: how far off the measured value a listed one is looked for.</summary>
    const double Widest = 10;

    /// <summary>One hypothesis that holds the whole key.</summary>
    public Hypothesis Whole(string key)
    {
        var each = Each(key, everyPair: false);
        foreach (var f in each.SelectMany(h => h.Parts).SelectMany(p => p.Touched))
            if (shape.IsRepaired(f)) throw Refused(key, $"{shape.Id(f)} is repaired, or a corner of a repaired edge, and what it was made to is not known from it; mark it sound if it is");
        // Pair after pair: what lies on the middle line stands there twice.
        var features = each[0].Kind == PatternKind.Symmetric ? each[0].Features.Concat(each.Skip(1).SelectMany(h => h.Features.Skip(2))) : each.SelectMany(h => h.Features).Distinct();
        return each[0] with { Features = [.. features], Parts = [.. each.SelectMany(h => h.Parts)] };
    }

    /// <summary>The key taken apart: to refuse a group is to refuse each pair in it.</summary>
    public ImmutableArray<Hypothesis> Each(string key, bool everyPair = true)
    {
        var (kind, features, about, value) = Split(key);
        var x = shape.Start;
        Hypothesis Made(int[] of, params Tie[] parts) => new(kind, [.. of], [.. parts], 0) { About = about, Nominal = null };
        IEnumerable<int[]> pairs = everyPair ? Pairs(features) : features.Zip(features.Skip(1), (a, b) => new[] { a, b });
        switch (kind)
        {
            case PatternKind.EqualSize:
                Sized(key, features);
                return [.. pairs.Select(p => Made(p, Sizes.Equal(shape, p[0], p[1], 0)))];
            case PatternKind.RoundSize:
                Sized(key, features);
                return [.. features.Select(f => SizeOf(key, kind, f, value))];
            case PatternKind.Parallel or PatternKind.Square:
                Directed(key, features);
                return [.. pairs.Select(p => Made(p, Directions.Apart(shape, p[0], p[1], kind == PatternKind.Square ? Math.PI / 2 : 0, 0)))];
            case PatternKind.SetAngle:
                Directed(key, features);
                var angle = Degrees(key, value);
                var between = Math.IEEERemainder(shape.Turn(features[1], x) - shape.Turn(features[0], x), Math.PI);
                return [Made(features[..2], Directions.Apart(shape, features[0], features[1], Math.Sign(between) * angle, 0)) with { Nominal = new(angle, value!, Ladder.DegreeSeries) }];
            case PatternKind.InLine or PatternKind.OnEdge:
                var (frame, along) = FrameOf(key, about);
                return [.. pairs.Select(p => Made(p, frame.Sum(along, 0, 0, (p[0], 1), (p[1], -1))) with { Across = along, Frame = frame })];
            case PatternKind.EquallySpaced:
                Wanted(key, features, 3);
                var (row, rowAlong) = FrameOf(key, about);
                return [.. Enumerable.Range(0, features.Length - 2).Select(i => Made(features[i..(i + 3)], row.Sum(!rowAlong, 0, 0, (features[i + 1], 2), (features[i], -1), (features[i + 2], -1))) with { Across = !rowAlong, Frame = row })];
            case PatternKind.Symmetric:
                Wanted(key, features, 4);
                if (features.Length % 2 != 0) throw Refused(key, "name features pair after pair");
                var (axis, axisAlong) = FrameOf(key, about);
                return [.. Enumerable.Range(1, features.Length / 2 - 1).Select(i => Made([features[0], features[1], features[2 * i], features[2 * i + 1]],
                    axis.Sum(!axisAlong, 0, 0, (features[0], 1), (features[1], 1), (features[2 * i], -1), (features[2 * i + 1], -1))) with { Across = !axisAlong, Frame = axis })];
            case PatternKind.PitchCircle or PatternKind.EqualSteps:
                Wanted(key, features, 3);
                var ring = Rings.Of(shape, Centre(key, about), [.. features], kind == PatternKind.EqualSteps);
                return [Made(features, [.. ring.Conditions()]) with { Ring = ring }];
            case PatternKind.Tangent:
                if (shape.Kind(features[0]) != FeatureKind.Edge || shape.Kind(features[1]) != FeatureKind.Arc) throw Refused(key, "name an edge and then an arc");
                return [Made(features[..2], Touches.Tangent(shape, features[0], features[1], x))];
            case PatternKind.Concentric:
                return [Made(features[..2], [.. Touches.Concentric(shape, features[0], features[1])])];
            default:
                return [Distance(key, features, about, value)];
        }
    }

    static IEnumerable<int[]> Pairs(int[] all) => all.SelectMany((a, i) => all.Skip(i + 1).Select(b => new[] { a, b }));

    Hypothesis Distance(string key, int[] features, string? about, string? value)
    {
        if (about?.StartsWith("circle round", StringComparison.Ordinal) == true)
        {
            Wanted(key, features, 3);
            var ring = Rings.Of(shape, Centre(key, about["circle round ".Length..]), [.. features], false);
            var across = Listed(key, Subject.Length, 2 * ring.Radius(features[0], shape.Start), value);
            return new(PatternKind.RoundDistance, [.. features], [ring.Diameter(across.Value, 0)], 0) { About = about, Nominal = across, Ring = ring };
        }
        var (frame, along) = FrameOf(key, about);
        var way = frame.Station(features[1], !along, shape.Start) - frame.Station(features[0], !along, shape.Start);
        var nominal = Listed(key, Subject.Length, Math.Abs(way), value);
        return new(PatternKind.RoundDistance, [.. features[..2]], [frame.Sum(!along, Math.Sign(way) * nominal.Value, 0, (features[1], 1), (features[0], -1))], 0)
        {
            About = about,
            Nominal = nominal,
            Across = !along,
            Frame = frame,
        };
    }

    Hypothesis SizeOf(string key, PatternKind kind, int f, string? value)
    {
        var over = shape.Kind(f) == FeatureKind.Hole ? making.Over : 0;
        var nominal = Listed(key, shape.Kind(f) == FeatureKind.Arc ? Subject.Radius : Subject.Hole, shape.Size(f, shape.Start), value);
        return new(kind, [f], [Sizes.Is(shape, f, nominal.Value + over, 0)], 0) { Nominal = nominal };
    }

    static Nominal Listed(string key, Subject subject, double near, string? value)
    {
        foreach (var c in Catalogue.Between(subject, Facet.Size, Math.Max(0.1, near - Widest), near + Widest))
            if (Keys.ValueOf(c.Name) == value) return new(c.Size, c.Name, c.Series);
        throw Refused(key, FormattableString.Invariant($"end it with = and a listed size near {near:0.##} mm, such as =12mm or =1-1/2in"));
    }

    static double Degrees(string key, string? value) =>
        double.TryParse(value?.TrimEnd('°'), System.Globalization.CultureInfo.InvariantCulture, out var d) && d is > 0 and < 180
            ? d * Math.PI / 180 : throw Refused(key, "end it with = and an angle in degrees, such as =45°");

    (Frame Frame, bool Along) FrameOf(string key, string? about)
    {
        if (about?.Split(' ', 2) is not [("along" or "across") and var way, var name]) throw Refused(key, "say the direction, such as @along.E1 or @across.E1");
        for (var cut = -1; cut < name.Length; cut = cut < 0 ? 1 : cut + 1)
        {
            if (cut < 0 && shape.Find(name) is { } whole && shape.HasTurn(whole)) return (new(shape, whole, -1, [], []), way == "along");
            if (cut > 0 && name[cut] == '-' && shape.Find(name[..cut]) is { } a && shape.Find(name[(cut + 1)..]) is { } b) return (new(shape, a, b, [], []), way == "along");
        }
        throw Refused(key, $"{name} is no edge or slot of this plan, nor two places joined by a dash");
    }

    int Centre(string key, string? about) => about switch
    {
        "their middle" => -1,
        { } id when shape.Find(id) is { } f && shape.Kind(f) != FeatureKind.Edge => f,
        _ => throw Refused(key, "say the centre, such as @H5 or @their.middle"),
    };

    (PatternKind, int[], string?, string?) Split(string key)
    {
        var (rest, value) = key.Split('=', 2) is [var r, var v] ? (r, v) : (key, null);
        var (list, about) = rest.Split('@', 2) is [var l, var a] ? (l, a.Replace('.', ' ')) : (rest, null);
        if (list.Split(':', 2) is not [var word, var ids] || Keys.KindOf(word) is not { } kind)
            throw Refused(key, $"begin it with one of {string.Join(", ", Keys.Words)} and a colon");
        int[] features = [.. ids.Split(',').Select(id => shape.Find(id.Trim()) ?? throw Refused(key, $"there is no feature {id.Trim()} in this plan, or it is loose"))];
        if (kind != PatternKind.RoundSize) Wanted(key, features, 2);
        return (kind, features, about, value);
    }

    static void Wanted(string key, int[] features, int least)
    {
        if (features.Length < least || features.Distinct().Count() < Math.Min(3, least)) throw Refused(key, $"it takes {least} features or more");
    }

    void Sized(string key, int[] features)
    {
        foreach (var f in features)
            if (!shape.HasSize(f)) throw Refused(key, $"{shape.Id(f)} has no size that was read");
    }

    void Directed(string key, int[] features)
    {
        foreach (var f in features)
            if (!shape.HasTurn(f)) throw Refused(key, $"{shape.Id(f)} is no edge or slot and has no direction");
    }

    static RefusedException Refused(string key, string wanted) => new(Refusal.Of("pattern", key, wanted));
}
