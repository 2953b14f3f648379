using System.Globalization;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>What is to be looked at in a split before it is cut: points too rough for its angles, holes by its welds.</summary>
static class SplitCautions
{
    /// <summary>Over this a joint's angle is not known well enough to set it by, radians, 19 in 20 (common practice).</summary>
    const double Rough = 2 * Math.PI / 180;

    /// <summary>Over this a setting tool would hold no angle that means anything, radians, 19 in 20 (common practice).</summary>
    const double Blind = 10 * Math.PI / 180;

    /// <summary>The points tell so little of the joint's angle that no tool is drawn for it.</summary>
    public static bool TooRoughForTool(ModelJoint joint) => 2 * joint.Std > Blind;

    /// <summary>Joints whose angle the measured points do not tell, welded or folded.</summary>
    public static IEnumerable<Caution> RoughAngles(FaceModel model, SplitChoice choice)
    {
        foreach (var j in model.Joints.Where(j => 2 * j.Std > Rough))
        {
            var points = model.Faces[j.First].Ring.Concat(model.Faces[j.Second].Ring).Distinct().Select(i => model.Pressing.Points[i].Name);
            var folded = choice.Folded.Contains(j.Index);
            var how = folded ? "fold it to a template taken from the original" : "set it on the original";
            var none = !folded && TooRoughForTool(j) ? " No setting tool is drawn for it." : "";
            yield return new(CautionKind.OutsideRange,
                $"{j.Name}: the angle is known to ± {Deg(2 * j.Std)}° only. The points are too rough to {(folded ? "fold" : "set")} this joint: measure {string.Join(", ", points)} better or {how}.{none}",
                [j.Name], 2 * j.Std * 180 / Math.PI, Rough * 180 / Math.PI);
        }
    }

    /// <summary>Openings whose rim is nearer a welded edge, as it is cut, than two thicknesses: the weld burns into them (common practice).</summary>
    public static IEnumerable<Caution> HolesNearWelds(FaceModel model, SplitChoice choice)
    {
        var limit = 2 * model.Pressing.Thickness;
        foreach (var j in model.Joints.Where(j => !choice.Folded.Contains(j.Index)))
            foreach (var f in new[] { j.First, j.Second })
            {
                var face = model.Faces[f];
                var (from, to) = (Flat(j.First == f ? j.From : j.To), Flat(j.First == f ? j.To : j.From));
                var inwards = (to - from).Unit.Left * PieceTree.Setback(model, j, f, choice.Folded);
                foreach (var opening in face.Openings)
                {
                    var found = Plane2.Distance(opening.Edge.Flatten(0.01).AsSpan(), from + inwards, to + inwards);
                    if (found >= limit) continue;
                    yield return new(CautionKind.Weld,
                        $"Opening {opening.Id} on {face.Name} is {Mm(found)} mm from the welded edge {j.Name}; nearer than {Mm(limit)} mm (2 thicknesses) the weld burns into it: drill it after welding or move it.",
                        [opening.Id, j.Name], found, limit);
                }

                Vec2 Flat(int point) => ModelMaker.Flat(face.Frame, model.Points[point]);
            }
    }

    static string Deg(double angle) => (angle * 180 / Math.PI).ToString("0.0", CultureInfo.InvariantCulture);

    static string Mm(double mm) => mm.ToString("0.0#", CultureInfo.InvariantCulture);
}
