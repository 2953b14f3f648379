namespace WitnessMark.DrawingOffice.Survey.Network.Wear;

/// <summary>
/// What wear does to each kind of reading. Metal goes: a hole or slot grows, an outside shrinks, and so does the metal between
/// a hole and an edge. An edge counts as an outside edge with the metal on the side it is read from. A place moves either way:
/// a hole worn by w on one side by w/2, a corner by w, both in an unknown direction.
/// </summary>
/// <remarks>
/// A corner of a worn, rusted, bent or repaired edge has gone with the edge, unless it has a condition of its own. Wear of two surfaces in
/// one reading is taken together as one of the summed mean (its spread is then on the wide side). Conditions (square, on …) are what
/// the person says of the part as made, and stand as said. Each reading is taken to have wear of its own: two at one spot share theirs,
/// and the ± will be on the small side. Signs and projections are derived, the usual scales are common practice.
/// </remarks>
sealed class WearRules
{
    readonly Sample _sample;
    readonly Layout _layout;
    readonly (FeatureCondition Condition, double Scale)[] _state;

    public WearRules(Sample sample, Layout layout)
    {
        (_sample, _layout) = (sample, layout);
        _state = [.. sample.Features.Select(StateOf)];
    }

    enum Way { Larger, Smaller, EitherWay, Place }

    readonly record struct Surface(int Feature, Way Way);

    public RowWear Of(Reading reading)
    {
        if (_state.All(s => s.Condition == FeatureCondition.Sound) || Observations.IsCondition(reading.Kind)) return default;
        var surfaces = Surfaces(reading).Where(s => _state[s.Feature].Condition != FeatureCondition.Sound).ToList();
        if (surfaces.Count == 0) return default;
        double larger = 0, smaller = 0, variance = 0;
        foreach (var s in surfaces)
        {
            var (condition, scale) = _state[s.Feature];
            if (Observations.IsAngle(reading.Kind)) variance += Square(scale / LengthOf(s.Feature));
            else if (condition == FeatureCondition.Bent) variance += scale * scale;
            else if (s.Way == Way.Larger) larger += scale;
            else if (s.Way == Way.Smaller) smaller += scale;
            // An exponential of mean s has the second moment 2 s²; across a random direction in the plane half of it.
            else if (s.Way == Way.EitherWay) variance += 2 * scale * scale;
            else variance += Square(_layout.Features[s.Feature].Kind == FeatureKind.Point ? scale : scale / 2);
        }
        var sides = Math.Sign(larger) - Math.Sign(smaller);
        if (sides == 0) variance += 2 * (larger * larger + smaller * smaller);
        var says = surfaces.Any(s => _state[s.Feature].Condition == FeatureCondition.Repaired) ? MadeBound.Nothing
            : sides > 0 ? MadeBound.AtMost
            : sides < 0 ? MadeBound.AtLeast
            : MadeBound.About;
        return new RowWear(sides, sides == 0 ? 0 : larger + smaller, Math.Sqrt(variance), says);
    }

    IEnumerable<Surface> Surfaces(Reading r)
    {
        var from = _layout.IndexOf(r.From);
        var to = r.To is null || r.Kind == ReadingKind.Picked ? -1 : _layout.IndexOf(r.To);
        return r.Kind switch
        {
            ReadingKind.Diameter or ReadingKind.SlotWidth or ReadingKind.SlotLength => [new(from, Way.Larger)],
            ReadingKind.OutsideOverHoles => [Side(from, Way.Larger), Side(to, Way.Larger)],
            ReadingKind.InsideBetweenHoles => [Side(from, Way.Smaller), Side(to, Way.Smaller)],
            ReadingKind.EdgeToHole => [Side(from, Way.Smaller), new(to, Way.Smaller)],
            ReadingKind.CentreToEdge => [Centre(from), new(to, Way.Smaller)],
            ReadingKind.AcrossEdges => [new(from, Way.Smaller), new(to, Way.Smaller)],
            ReadingKind.CentreDistance => [Centre(from), Centre(to)],
            ReadingKind.LengthAlongEdge or ReadingKind.Chord => Ends(from).Select(Centre),
            ReadingKind.Rise => [new(from, Way.EitherWay), .. Ends(from).Select(e => new Surface(e, Way.EitherWay))],
            ReadingKind.Radius => [new(from, Way.EitherWay)],
            ReadingKind.Picked => [new(from, Way.Place)],
            _ => [new(from, Way.EitherWay), new(to, Way.EitherWay)],
        };
    }

    /// <summary>The side of a round thing that jaws touch. A corner loses metal; of an arc it is not known whether it is hollow.</summary>
    Surface Side(int feature, Way hole) => new(feature, _layout.Features[feature].Kind switch
    {
        FeatureKind.Hole => hole,
        FeatureKind.Point => Way.Smaller,
        _ => Way.EitherWay,
    });

    Surface Centre(int feature) => new(feature, _layout.Features[feature].Kind == FeatureKind.Point ? Way.Smaller : Way.Place);

    IEnumerable<int> Ends(int feature)
    {
        var (a, b) = _layout.Corners(feature);
        return [a, b];
    }

    /// <summary>mm that an angle is read over: the edge or slot by the sketch, else the part.</summary>
    double LengthOf(int feature)
    {
        var f = _layout.Features[feature];
        var read = _sample.Readings.Where(r => r.From == f.Id && r.Kind is ReadingKind.LengthAlongEdge or ReadingKind.SlotLength && r.From == f.Id).Select(r => r.Value).FirstOrDefault();
        if (read > 0) return read;
        if (f.SketchLength is { } length and > 0) return length;
        if (!_layout.IsCornerEdge(feature)) return _layout.Lever;
        var (a, b) = _layout.Corners(feature);
        return _layout.Features[a].Sketch is { } p && _layout.Features[b].Sketch is { } q && p.DistanceTo(q) is var apart and > 0 ? apart : _layout.Lever;
    }

    (FeatureCondition, double) StateOf(Feature f)
    {
        if (f.Condition != FeatureCondition.Sound || f.Kind != FeatureKind.Point) return (f.Condition, ScaleOf(f));
        var worst = _sample.Features.Where(e => e.Kind == FeatureKind.Edge && (e.From == f.Id || e.To == f.Id) && e.Condition != FeatureCondition.Sound)
            .OrderByDescending(e => e.Condition == FeatureCondition.Repaired).ThenByDescending(ScaleOf).FirstOrDefault();
        return worst is null ? (FeatureCondition.Sound, 0) : (worst.Condition, ScaleOf(worst));
    }

    static double ScaleOf(Feature f) => f.Condition is FeatureCondition.Sound or FeatureCondition.Repaired ? 0 : f.Wear ?? UsualWear.Of(f.Condition);

    static double Square(double v) => v * v;
}
