using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Intent.Words;

/// <summary>The words of a verdict.</summary>
static class Sentences
{
    public static string Of(Subject subject) => subject switch
    {
        Subject.ExternalThread => "an external thread",
        Subject.InternalThread => "an internal thread",
        Subject.HolePitch => "a hole pitch",
        Subject.Angle => "an angle",
        _ => $"a {subject.ToString().ToLowerInvariant()}",
    };

    public static string Verdict(MadeTo told)
    {
        if (told.Best is not { } best || told.OffList > best.Probability)
            return $"Made to none of the listed sizes ({Odds(told.OffList / (1 - told.OffList))}): it seems made to {Measure(told.Question, told.OffListSize)}.";
        if (told.Next is { } next)
            return $"Cannot tell {best.Name} from {List(told.Doubts.Select(d => d.Second), "or")} ({Odds(told.Doubts[0].Odds)} against the nearest): {next.Words}.{Left(told, next)}";
        if (!told.Doubts.IsEmpty) return told.Doubts[0].Words;
        var also = best.AlsoCalled.IsEmpty ? "" : $", also called {List(best.AlsoCalled, "and")}";
        var off = told.OffList > 0.2 ? $" It may be on no list ({Odds(told.OffList / (1 - told.OffList))})." : "";
        return $"Made to {best.Name}{also} ({Odds(best.Odds)}).{Worn(best)}{off}";
    }

    public static string Doubtful(Subject subject, Doubt doubt)
    {
        var said = $"Cannot tell {doubt.First} from {doubt.Second} ({Odds(doubt.Odds)}): ";
        if (!doubt.Deciders.IsEmpty) return $"{said}{doubt.Deciders[0].Words}.";
        said += $"no better measurement of this one can, for {Of(subject)} varies in the making by as much as they differ";
        if (doubt.MoreItems is { } n) return $"{said}; measure {n} more made to the same size.";
        if (doubt.OriginChance < 0.5) return $"{said}.";
        var (most, least) = (doubt.ByOrigin.MaxBy(o => o.Odds)!, doubt.ByOrigin.MinBy(o => o.Odds)!);
        return $"{said}; its origin would tell ({most.Origin} {Odds(most.Odds)}, {least.Origin} {Odds(least.Odds)}): weigh it together with other sizes off the same vehicle.";
    }

    public static string ToMeasure(Subject subject, Facet facet, double needed, Tool tool)
    {
        var how = tool.Std > needed ? $"finer than the usual {tool.Name}" : tool.Name;
        var over = tool.Threads is { } n ? $" over {n} threads" : "";
        return $"measure {Place(subject, facet)}{over} to within ±{Precision(subject, facet, 2 * needed)} ({how})";
    }

    /// <summary>Odds as a person says them.</summary>
    public static string Odds(double odds) => odds switch
    {
        > 10_000 => "more than 10,000 to 1",
        >= 10 => $"{odds:#,0} to 1",
        >= 1.5 => $"{odds:0.#} to 1",
        >= 1 / 1.5 => "about even",
        >= 0.1 => $"1 to {1 / odds:0.#}",
        _ => $"1 to {Math.Min(1 / odds, 99_999):#,0}",
    };

    /// <summary>Odds within a million million either way: more is no knowledge, and infinity cannot be written down.</summary>
    public static double Bounded(double odds) => double.IsNaN(odds) ? 1 : Math.Clamp(odds, 1e-12, 1e12);

    public static string List(IEnumerable<string> names, string last)
    {
        var all = names.ToArray();
        return all.Length < 2 ? string.Concat(all) : $"{string.Join(", ", all[..^1])} {last} {all[^1]}";
    }

    // What the next measurement will leave open.
    static string Left(MadeTo told, Decider next)
    {
        var left = told.Doubts.Where(d => d.Deciders.All(x => x.Facet != next.Facet)).ToArray();
        if (left.Length == 0) return "";
        var then = left[0].Deciders.FirstOrDefault() is { } after ? $"; for that {after.Words}"
            : left[0].OriginChance >= 0.5 ? "; for that weigh it together with other sizes off the same vehicle"
            : "";
        return $" It will still not tell {told.Best!.Name} from {List(left.Select(d => d.Second), "or")}{then}.";
    }

    static string Place(Subject subject, Facet facet) => (subject, facet) switch
    {
        (_, Facet.Pitch) => "the pitch",
        (_, Facet.Flank) => "the flank angle",
        (Subject.Hole, _) => "the diameter where nothing has rubbed (the far end of the hole, or across the load)",
        (Subject.Pin, _) => "the diameter where it never ran (its end, or under the head)",
        (Subject.ExternalThread, Facet.Core) => "the root diameter on threads that no nut has reached",
        (Subject.ExternalThread, _) => "the outside diameter on threads that no nut has reached",
        (Subject.InternalThread, _) => "the bore of the nut away from its worn mouth",
        (Subject.Sheet, _) => "the thickness in bright metal under a washer, a lap or paint",
        (Subject.Length, _) => "the length at an edge that is neither rusted nor knocked",
        (Subject.Angle, _) => "the angle",
        (Subject.Radius, _) => "the radius",
        _ => "the distance",
    };

    static string Worn(Ranked best) =>
        best.Wear.Where(w => w.Value > 2 * w.Std).Select(w => w.Value).DefaultIfEmpty().Max() is var worn and > 0
            ? $" Wear or rust has moved it about {worn:0.00} mm."
            : "";

    static string Measure(Question question, Uncertain value) => question.Subject == Subject.Angle
        ? $"{Degrees(value.Value):0.0}° ± {Degrees(value.Expanded):0.0}°"
        : $"{value.Value:0.00} ± {value.Expanded:0.00} mm";

    static string Precision(Subject subject, Facet facet, double half) => facet == Facet.Flank || subject == Subject.Angle
        ? $"{Degrees(half):0.0}°"
        : $"{half:0.###} mm";

    static double Degrees(double radians) => radians * 180 / Math.PI;
}
