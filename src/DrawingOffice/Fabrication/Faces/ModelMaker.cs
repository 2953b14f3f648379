using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>From a pressing as typed to a sound model, or the first thing that is wrong.</summary>
static class ModelMaker
{
    public static Parsed<FaceModel> Make(Pressing pressing)
    {
        try
        {
            return Sound(pressing);
        }
        catch (RefusedException e)
        {
            return e.Refusal;
        }
    }

    static FaceModel Sound(Pressing p)
    {
        PressingCheck.Figures(p);
        var index = PressingCheck.Index(p);
        var measured = p.Points.Select(x => x.At).ToImmutableArray();
        var rings = Edges.Orient(p, PressingCheck.Rings(p, index));
        PressingCheck.Rows(p, rings);
        var off = OffPlane(p, rings, measured);
        var (points, left) = Plane.Flatten(measured, rings);
        if (left > Plane.Flat * 1000)
            throw Refused("points", $"{left:0.####} mm", "the faces round one point cannot all be flat; measure it again or split a face along a line");
        var frames = rings.Select(r => Frame([.. r.Select(i => points[i])])).ToArray();
        var outlines = rings.Select((r, f) => r.Select(i => Flat(frames[f], points[i])).ToImmutableArray()).ToArray();
        PressingCheck.Outlines(p, outlines);
        var joints = Edges.Joints(p, rings, points, frames, measured);
        var faces = p.Faces.Select((face, f) => new ModelFace(face.Name, rings[f], frames[f], outlines[f], PressingCheck.Openings(face, frames[f], outlines[f], points, index),
            [.. Enumerable.Range(0, rings[f].Length).Select(s => Edges.JointOf(joints, rings[f], f, s, points))])).ToImmutableArray();
        Edges.Hanging(p, faces, joints);
        Meeting.Refuse(faces, points);
        ImmutableArray<Caution> cautions = off <= Plane.Flat ? []
            : [new(CautionKind.OutsideRange, $"Points lie up to {off.ToString("0.00", CultureInfo.InvariantCulture)} mm off the planes of their faces; the faces are taken flat.", [], off, p.FlatWithin)];
        return new(p, points, faces, joints, off, cautions);
    }

    static double OffPlane(Pressing p, ImmutableArray<ImmutableArray<int>> rings, ImmutableArray<Vec3> measured)
    {
        var worst = 0.0;
        for (var f = 0; f < rings.Length; f++)
        {
            var plane = Plane.Through([.. rings[f].Select(i => measured[i])]);
            foreach (var i in rings[f])
            {
                var off = Math.Abs(plane.Off(measured[i]));
                worst = Math.Max(worst, off);
                if (off > p.FlatWithin)
                    throw Refused($"face {p.Faces[f].Name}, point {p.Points[i].Name}", $"{off:0.00} mm off the plane of the others",
                        $"a face must be flat within {p.FlatWithin:0.##} mm; measure again, split the face along a line, or widen flat_within");
            }
        }
        return worst;
    }

    static Motion3 Frame(ReadOnlySpan<Vec3> ring)
    {
        var plane = Plane.Through(ring);
        var along = ring[1] - ring[0];
        var x = (along - plane.Normal * along.Dot(plane.Normal)).Unit;
        return new(x, plane.Normal.Cross(x), plane.Normal, ring[0]);
    }

    public static Vec2 Flat(Motion3 frame, Vec3 p) => frame.Local(p) is var q ? new(q.X, q.Y) : default;

    public static RefusedException Refused(string field, string? value, string wanted) => new(Refusal.Of(field, value, wanted));
}
