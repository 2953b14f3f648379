using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;

namespace WitnessMark.DrawingOffice.Photo.Targets;

/// <summary>The target drawn to be printed at true size, with two check lines just inside the frame.</summary>
public static class TargetSheet
{
    /// <summary>mm between a check line and the squares.</summary>
    const double Inset = 5;

    const int EyeChords = 48;

    public static Sheet Of(Target target)
    {
        var middle = new Vec2(target.Paper.Width / 2, target.Paper.Height / 2);
        var marks = ImmutableArray.CreateBuilder<Mark>();
        for (var i = 0; i < target.Count; i++) marks.Add(Square(target, i, middle));
        var (low, half) = (middle - target.Clear + new Vec2(Inset, Inset), Target.CheckLength / 2);
        Check(marks, new(middle.X - half, low.Y), new(middle.X + half, low.Y), "check line across");
        Check(marks, new(low.X, middle.Y - half), new(low.X, middle.Y + half), "check line up");
        var below = (target.Paper.Height - 2 * target.Half.Y) / 4;
        marks.Add(new TextMark(new(middle.X, below - 1), $"{target.Name}. Print at true size. Measure both check lines; lay the part flat inside the frame; take the whole frame into the picture.", 1.8, Layers.Text, Anchor.Middle));
        marks.Add(new TextMark(new(middle.X, target.Paper.Height - below - 1), $"Target sheet {target.Name}", 2.5, Layers.Text, Anchor.Middle));
        return new Sheet($"Target sheet {target.Name}", target.Paper.Width, target.Paper.Height, marks.ToImmutable());
    }

    static PathMark Square(Target target, int index, Vec2 middle)
    {
        ImmutableArray<Vec2> corners = [.. target.Corners(index).Select(c => c + middle)];
        if (!target.HasEye(index)) return new(corners, true, true, Layers.Frame, Stroke.Outline);
        // Round the square, in to the eye, round it the other way and out again: one outline, so that the eye stays paper.
        var m = target.Middle(index) + middle;
        var eye = Enumerable.Range(0, EyeChords + 1).Select(k => m + Vec2.Polar(-0.75 * Math.PI - 2 * Math.PI * k / EyeChords, Target.Eye / 2));
        return new([.. corners, corners[0], .. eye], true, true, Layers.Frame, Stroke.Outline);
    }

    static void Check(ImmutableArray<Mark>.Builder marks, Vec2 a, Vec2 b, string name)
    {
        var along = (b - a).Unit;
        var tick = along.Left * 2;
        marks.Add(new LineMark(a, b, Layers.Check, Stroke.Thin));
        marks.Add(new LineMark(a - tick, a + tick, Layers.Check, Stroke.Thin));
        marks.Add(new LineMark(b - tick, b + tick, Layers.Check, Stroke.Thin));
        var side = along.X > 0.5 ? along.Left * 1.5 : along.Left * -4;
        marks.Add(new TextMark((a + b) / 2 + side, $"{name}: 100 mm", 2, Layers.Check, Anchor.Middle, along.Angle));
    }
}
