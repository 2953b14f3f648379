using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>An outline that notches are cut into, one at a time, straight sides only.</summary>
sealed class NotchedOutline(Loop loop)
{
    readonly List<Corner> _corners = [.. loop.Corners];

    public Loop ToLoop() => new([.. _corners]);

    /// <summary>
    /// Cuts a notch beside a bend end: from the shoulder (at any height over the tangent line) straight down past it and back to the end.
    /// False, and nothing changed, when the shoulder is not straight or too short.
    /// </summary>
    public bool TryNotch(BendEnd end, Relief relief)
    {
        var foot = end.At - end.Out * relief.Depth;
        var farFoot = foot + end.Beyond * relief.Width;
        var at = _corners.FindIndex(c => c.At.DistanceTo(end.At) <= FaceTree.OnSide);
        if (at >= 0) return NotchAtCorner(end, at, foot, farFoot);
        // The bend ends inside a side: what is left of the side is the shoulder.
        var side = SideThrough(end.At);
        if (side < 0 || !Reaches(end, side, relief.Width)) return false;
        var shoulder = end.At + end.Beyond * relief.Width;
        Corner[] notch = end.AtStart
            ? [new(shoulder), new(farFoot), new(foot), new(end.At)]
            : [new(end.At), new(foot), new(farFoot), new(shoulder)];
        _corners.InsertRange(side + 1, notch);
        return true;
    }

    int SideThrough(Vec2 p)
    {
        for (var i = 0; i < _corners.Count; i++)
            if (_corners[i].Bulge == 0 && Plane2.Distance(p, _corners[i].At, _corners[(i + 1) % _corners.Count].At) <= FaceTree.OnSide) return i;
        return -1;
    }

    // A sliver thinner than a quarter of the notch would only bend away under the snips.
    bool Reaches(BendEnd end, int side, double width)
    {
        var limit = end.AtStart ? _corners[side].At : _corners[(side + 1) % _corners.Count].At;
        return (limit - end.At).Dot(end.Beyond) >= 1.25 * width;
    }

    /// <summary>The bend ends at a corner: the shoulder leaves it there, or lies at the top of a wall that moves out by the notch's width.</summary>
    bool NotchAtCorner(BendEnd end, int at, Vec2 foot, Vec2 farFoot)
    {
        var (n, step) = (_corners.Count, end.AtStart ? -1 : 1);
        var (top, past) = ((at + step + n) % n, (at + 2 * step + 2 * n) % n);
        var (wallSide, shoulderSide) = end.AtStart ? (top, past) : (at, top);
        if (_corners[wallSide].Bulge != 0) return false;
        if ((_corners[top].At - end.At).Dot(end.Beyond) > FaceTree.OnSide) return NotchOnShoulder(end, at, top, foot, farFoot);
        if (_corners[shoulderSide].Bulge != 0) return false;
        var (wallTop, shoulderEnd) = (_corners[top].At, _corners[past].At);
        if (Math.Abs((wallTop - end.At).Dot(end.Beyond)) > FaceTree.OnSide || (shoulderEnd - wallTop).Dot(end.Beyond) < 1.25 * (farFoot - foot).Length) return false;
        if (Plane2.Meet(farFoot, end.Out, wallTop, shoulderEnd - wallTop) is not { } newTop) return false;
        _corners[top] = new(newTop);
        _corners.InsertRange(end.AtStart ? at : at + 1, end.AtStart ? [new(farFoot), new(foot)] : [new(foot), new(farFoot)]);
        return true;
    }

    bool NotchOnShoulder(BendEnd end, int at, int top, Vec2 foot, Vec2 farFoot)
    {
        if ((_corners[top].At - end.At).Dot(end.Beyond) < 1.25 * (farFoot - foot).Length) return false;
        if (Plane2.Meet(farFoot, end.Out, end.At, _corners[top].At - end.At) is not { } shoulder) return false;
        _corners.InsertRange(end.AtStart ? at : at + 1, end.AtStart
            ? [new(shoulder), new(farFoot), new(foot)]
            : [new(foot), new(farFoot), new(shoulder)]);
        return true;
    }
}
