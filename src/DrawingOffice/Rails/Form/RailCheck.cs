using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>What must hold for stations to make a rail; each failing is a sentence.</summary>
static class RailCheck
{
    public const int MostStations = 200;
    const double LeastAngle = 20 * Math.PI / 180;
    const double MostAngle = 120 * Math.PI / 180;
    const double Steepest = 1.7320508;   // tan 60°
    const double MostTurn = Math.PI / 4;

    public static Refusal? Of(Rail rail)
    {
        if (!(rail.Thickness is > 0 and <= FaceTree.Thickest)) return Refusal.Of("thickness", $"{rail.Thickness}", $"give the sheet's thickness in mm, more than 0 and at most {FaceTree.Thickest}");
        if (!(rail.InsideRadius is > 0 and <= 1000)) return Refusal.Of("inside_radius", $"{rail.InsideRadius}", "give the inside radius of the folds in mm, more than 0");
        if (rail.Stations.Length is < 2 or > MostStations) return Refusal.Of("stations", $"{rail.Stations.Length}", $"give 2 to {MostStations} stations");
        foreach (var (name, angle) in new[] { ("lower_angle", rail.LowerAngle), ("upper_angle", rail.UpperAngle), ("lip_angle", rail.LipAngle) })
            if (!(angle is >= LeastAngle - 1e-9 and <= MostAngle + 1e-9)) return Refusal.Of(name, $"{angle * 180 / Math.PI:0.###}°", "give the fold from flat, 20° to 120°");
        for (var k = 0; k < rail.Stations.Length; k++)
            if (OfStation(rail, k) is { } wrong) return wrong.In($"station {k + 1}");
        return null;
    }

    static Refusal? OfStation(Rail rail, int k)
    {
        var s = rail.Stations[k];
        foreach (var (name, value) in new[] { ("at", s.At), ("web", s.Web), ("lower", s.Lower), ("upper", s.Upper), ("lower_lip", s.LowerLip), ("upper_lip", s.UpperLip), ("plan", s.Plan), ("level", s.Level), ("turn", s.Turn), ("ease", s.Ease) })
            if (!(Math.Abs(value) <= Soundness.Largest)) return Refusal.Of(name, $"{value}", "give a number in mm, at most 100 m");
        if (s.Ease < 0) return Refusal.Of("ease", $"{s.Ease:0.###}", "give the radius of the arc, or 0 for a corner");
        var first = rail.Stations[0];
        if (s.LowerLip > 0 != first.LowerLip > 0 || s.UpperLip > 0 != first.UpperLip > 0 || s.LowerLip < 0 || s.UpperLip < 0)
            return Refusal.Of("lip", $"{s.LowerLip:0.###} and {s.UpperLip:0.###}", "give a lip at every station or at none");
        if (Math.Abs(s.Turn - first.Turn) > MostTurn + 1e-9) return Refusal.Of("turn", $"{s.Turn * 180 / Math.PI:0.###}°", "give the turn of the section, up to 45° from the first station's");
        if (OfSizes(rail, s) is { } size) return size;
        if (k == 0) return null;
        var before = rail.Stations[k - 1];
        var step = s.At - before.At;
        if (!(step > 0.1)) return Refusal.Of("at", $"{s.At:0.###}", $"stations go in rising order, each beyond the last by more than 0.1 mm; the one before is at {before.At:0.###}");
        if (Math.Abs(s.Plan - before.Plan) > Steepest * step) return Refusal.Of("plan", $"{s.Plan:0.###}", "from station to station the rail may run up to 60° off its base line");
        if (Math.Abs(s.Level - before.Level) > Steepest * step) return Refusal.Of("level", $"{s.Level:0.###}", "from station to station the rail may run up to 60° off its base line");
        return null;
    }

    static Refusal? OfSizes(Rail rail, Station s)
    {
        var (t, r) = (rail.Thickness, rail.InsideRadius);
        var (lower, upper, lip) = (Setback.Outside(rail.LowerAngle, r, t), rail.Kind == RailKind.L ? 0 : Setback.Outside(rail.UpperAngle, r, t), Setback.Outside(rail.LipAngle, r, t));
        if (!(s.Web > lower + upper)) return Refusal.Of("web", $"{s.Web:0.###}", $"the folds alone take up {lower + upper:0.##} mm");
        if (TooNarrow("lower", s.Lower, lower, s.LowerLip, lip) is { } wrong) return wrong;
        if (rail.Kind == RailKind.L)
            return s.Upper == 0 && s.UpperLip == 0 ? null : Refusal.Of("upper", $"{Math.Max(s.Upper, s.UpperLip):0.###}", "an L has a lower flange only");
        if (TooNarrow("upper", s.Upper, upper, s.UpperLip, lip) is { } wrongUpper) return wrongUpper;
        if (rail.Kind == RailKind.TopHat && !(s.LowerLip > 0 && s.UpperLip > 0)) return Refusal.Of("lip", $"{Math.Min(s.LowerLip, s.UpperLip):0.###}", "a top hat needs its brims: give lower_lip and upper_lip");
        return Crosses(rail, s) ? Refusal.Of("section", $"web {s.Web:0.##}, flanges {s.Lower:0.##} and {s.Upper:0.##}", "the flanges or lips run into each other or into the web; make them narrower or the web higher") : null;
    }

    static Refusal? TooNarrow(string name, double flange, double fold, double lip, double lipFold)
    {
        var least = fold + (lip > 0 ? lipFold : 0);
        if (!(flange > least)) return Refusal.Of(name, $"{flange:0.###}", $"a flange must be wider than its folds, here {least:0.##} mm (radius and thickness)");
        return lip > 0 && !(lip > lipFold) ? Refusal.Of($"{name}_lip", $"{lip:0.###}", $"a lip must be wider than its fold, here {lipFold:0.##} mm (radius and thickness)") : null;
    }

    /// <summary>The section's middle line, sharp-cornered, comes nearer to itself than the thickness.</summary>
    static bool Crosses(Rail rail, Station s)
    {
        var lower = Side(rail, s.Lower, s.LowerLip, rail.LowerAngle, 1, new(0, 0), new(0, -1));
        var upper = Side(rail, s.Upper, s.UpperLip, rail.UpperAngle, rail.Kind == RailKind.Z ? -1 : 1, new(0, s.Web), new(0, 1));
        Vec2[] line = [.. lower.Reverse(), .. upper];
        for (var i = 0; i + 1 < line.Length; i++)
            for (var j = i + 2; j + 1 < line.Length; j++)
                if (Plane2.Touch(line[i], line[i + 1], line[j], line[j + 1], rail.Thickness)) return true;
        return false;
    }

    static Vec2[] Side(Rail rail, double flange, double lip, double angle, int towards, Vec2 corner, Vec2 outward)
    {
        var eye = new Vec2(towards, 0);
        var end = corner + (outward * Math.Cos(angle) + eye * Math.Sin(angle)) * flange;
        if (lip == 0) return [corner, end];
        var turned = angle + (rail.Kind == RailKind.TopHat ? -1 : 1) * rail.LipAngle;
        return [corner, end, end + (outward * Math.Cos(turned) + eye * Math.Sin(turned)) * lip];
    }

    /// <summary>A flange inside a bend must not reach its middle.</summary>
    public static Refusal? Room(RailForm form)
    {
        foreach (var edge in form.Folds)
            foreach (var part in edge.Parts)
            {
                if (part.InCrease) continue;
                var place = edge.Place(part.Middle, part.Step);
                var (o, e, _) = edge.Shape!.At(edge.DevelopedAt(part.Middle), edge.FlangeAt(part.Middle));
                if (1 - place.CurveOut * o - place.CurveEye * e < 0.2 || 1 - place.CurveOut * edge.DevelopedAt(part.Middle) < 0.2)
                    return Refusal.Of("ease", $"an arc near {edge.BaseAt(part.Middle):0} mm along", $"the {edge.Name} flange inside it reaches nearly to its middle; give a larger radius or a narrower flange");
            }
        return null;
    }
}
