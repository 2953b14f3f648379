using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.DrawingOffice.Survey.Solid.Network;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Drafting.Solid;

/// <summary>Makes the drawing's part of a plan in space.</summary>
public static class FromSolidPlan
{
    /// <summary>Faces are parallel enough to have a distance, radians (1°).</summary>
    const double Parallel = Math.PI / 180;

    /// <param name="whole">Of it the believed plan is drawn.</param>
    /// <exception cref="RefusedException">The adjustment has not settled.</exception>
    public static SolidPart Of(SolidPlan whole)
    {
        var plan = whole.Believed;
        if (!plan.Convergence.Converged) throw new RefusedException(Refusal.Of("plan", plan.Convergence.Words, "readings that settle are needed before it is drawn"));
        var (frame, face, corner) = SolidFrame.Of(plan);
        var wires = plan.Wireframe();
        var corners = plan.Features.Where(f => f.Kind == SolidKind.Point).ToDictionary(f => f.Id, f => f.At);
        (string, string)[] edges = [.. plan.Sample.Features.Where(f => f is { Kind: SolidKind.Edge, From: not null, To: not null }).Select(f => (f.From!, f.To!))];
        ImmutableArray<SolidFace> faces = [.. wires.Faces.Select(f => Face(plan, f, corners, edges))];
        return new(
            plan.Sample.Title,
            [.. plan.Features.Where(f => f.Kind == SolidKind.Point).Select(f => new SolidPoint(f.Id, frame.Local(f.At), Std(f), f.Loose))],
            [.. wires.Edges.Select(e => new SolidLine(e.Id, frame.Local(e.From), frame.Local(e.To), plan.Of(e.Id).Length, e.Loose))],
            [.. wires.Circles.Select(c => Round(plan, frame, c.Id, c.Centre, c.Axis, 0)), .. wires.Tubes.Select(t => Round(plan, frame, t.Id, (t.From + t.To) / 2, (t.To - t.From).Unit, t.From.DistanceTo(t.To)))],
            [.. faces.Select(f => f with { At = frame.Local(f.At), Normal = Turned(frame, f.Normal), Outline = [.. f.Outline.Select(frame.Local)] })],
            [.. Pairs(plan, faces)],
            face is null ? [] : [.. Heights(plan, face)],
            [.. Notes(whole, face, corner)]);
    }

    static Vec3 Turned(Motion3 frame, Vec3 d) => new(frame.X.Dot(d), frame.Y.Dot(d), frame.Z.Dot(d));

    static double? Std(SolidPlaced f) => f.Loose ? null : f.Ellipsoid.Major.Length;

    static SolidRound Round(SolidPlan plan, Motion3 frame, string id, Vec3 at, Vec3 axis, double length) =>
        new(id, frame.Local(at), Turned(frame, axis), plan.Of(id).Size, length, length > 0 ? null : Std(plan.Of(id)), plan.Of(id).Loose);

    static SolidFace Face(SolidPlan plan, WireFace f, Dictionary<string, Vec3> corners, (string, string)[] edges)
    {
        var middle = f.Outline.Aggregate(Vec3.Zero, (sum, p) => sum + p) / Math.Max(1, f.Outline.Length);
        var at = f.Outline.IsEmpty ? plan.Of(f.Id).At : middle;
        return new(f.Id, at, f.Normal, FaceOutline.Of(plan.Of(f.Id).At, f.Normal, corners, edges), f.Loose);
    }

    static IEnumerable<FacePair> Pairs(SolidPlan plan, ImmutableArray<SolidFace> faces)
    {
        for (var i = 0; i < faces.Length; i++)
            for (var k = i + 1; k < faces.Length; k++)
            {
                var (a, b) = (faces[i], faces[k]);
                var turn = plan.Quantity(SolidReadingKind.Angle, a.Id, b.Id);
                var flat = Math.Asin(Math.Min(1, a.Normal.Cross(b.Normal).Length));
                yield return flat < Parallel
                    ? new(a.Id, b.Id, null, plan.Quantity(SolidReadingKind.Depth, a.Id, b.Id))
                    : new(a.Id, b.Id, Setting(turn, a, b), null);
            }
    }

    /// <summary>As a bevel laid in the corner shows it.</summary>
    static Uncertain? Setting(Uncertain? turn, SolidFace a, SolidFace b) =>
        turn is { } t ? t with { Value = BetweenFaces.Shown(t.Value, BetweenFaces.Corner(a.Normal, a.At, b.Normal, b.At)) } : null;

    static IEnumerable<FaceHeight> Heights(SolidPlan plan, string face)
    {
        var plane = plan.Of(face);
        foreach (var f in plan.Features.Where(f => f.Kind is SolidKind.Point or SolidKind.Hole && plan.Sample.Features.FirstOrDefault(s => s.Id == f.Id)?.On != face))
        {
            var height = plan.Quantity(SolidReadingKind.PointToPlane, f.Id, face);
            var below = (f.At - plane.At).Dot(plane.Direction) < 0;
            yield return new(face, f.Id, height is { } h ? h with { Value = Math.Abs(h.Value) * (below ? -1 : 1) } : null);
        }
    }

    static IEnumerable<string> Notes(SolidPlan whole, string? face, string? corner)
    {
        if (face is not null) yield return $"Laid by face {face} and the longest edge, as it was sketched{(corner is null ? "" : $"; x, y and z count from corner {corner}")}.";
        yield return "± holds 95 in 100. Beside a place it is that of the place among all others, from no one corner.";
        if (whole.Believed.Features.Any(f => f.Loose && f.Kind != SolidKind.SetUp))
            yield return $"Dashed and not to be worked to, since the readings do not hold it: {string.Join(", ", whole.Believed.Features.Where(f => f.Loose && f.Kind != SolidKind.SetUp).Select(f => f.Id))}.";
        if (!whole.Doubts.Alone.IsEmpty) yield return $"Drawn without reading {string.Join(", ", whole.Doubts.Alone.Select(i => i + 1))}, which the others contradict.";
        if (!whole.Hand.Told) yield return whole.Hand.Words;
        if (!whole.Believed.Mirrors.IsEmpty) yield return "A second shape fits the readings as well; one more reading must say which.";
    }
}
