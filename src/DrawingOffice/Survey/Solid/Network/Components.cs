using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey.Solid.Network;

/// <summary>What a vector has across a direction, as two numbers.</summary>
static class Components
{
    /// <summary>
    /// A component of v across a direction of length 1, and its slopes. The two parts are square to one another, so that their squares
    /// add up to the same whichever axis they are laid out from.
    /// </summary>
    public static (double Value, Vec3 OfAlong, Vec3 OfV) Across(Vec3 along, Vec3 v, int part)
    {
        var axis = Math.Abs(along.X) <= Math.Abs(along.Y) && Math.Abs(along.X) <= Math.Abs(along.Z) ? new Vec3(1, 0, 0)
            : Math.Abs(along.Y) <= Math.Abs(along.Z) ? new Vec3(0, 1, 0) : new Vec3(0, 0, 1);
        var lean = axis.Dot(along);
        var w = axis - lean * along;
        var length = w.Length;
        var unit = part == 0 ? w / length : along.Cross(axis) / length;
        var value = v.Dot(unit);
        var ofAlong = part == 0 ? (-along.Dot(v) * axis - lean * v) / length : axis.Cross(v) / length;
        return (value, ofAlong + value * lean / (length * length) * axis, unit);
    }
}
