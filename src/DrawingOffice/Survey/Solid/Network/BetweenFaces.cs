using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey.Solid.Network;

/// <summary>
/// The angle in the corner between two faces: from where they meet to the middle of each, radians, 0 to π. A bevel shows it. The angle of two
/// normals alone is this or its supplement, as they point.
/// </summary>
static class BetweenFaces
{
    /// <param name="n">Normal of the first, length 1; any side.</param>
    /// <param name="a">Place on the first, amid what lies on it.</param>
    public static double Corner(Vec3 n, Vec3 a, Vec3 m, Vec3 b)
    {
        var along = n.Cross(m).Unit;
        // A point where the two meet: on both planes, nearest to the middle of the two faces.
        var middle = (a + b) / 2;
        var (p, q, c) = ((a - middle).Dot(n), (b - middle).Dot(m), n.Dot(m));
        var meet = middle + n * ((p - q * c) / (1 - c * c)) + m * ((q - p * c) / (1 - c * c));
        Vec3 Ray(Vec3 at) => at - meet is var d ? (d - along * d.Dot(along)).Unit : default;
        return Math.Acos(Math.Clamp(Ray(a).Dot(Ray(b)), -1, 1));
    }

    /// <summary>An angle or its supplement, whichever the corner shows.</summary>
    public static double Shown(double angle, double corner) => Math.Abs(angle - corner) <= Math.Abs(Math.PI - angle - corner) ? angle : Math.PI - angle;

    public static double Shown(SolidSolver solver, double[] x, int first, int second, double angle)
    {
        var layout = solver.Layout;
        return Shown(angle, Corner(layout.Direction(first, x), SolidPlanMaker.At(solver, x, first), layout.Direction(second, x), SolidPlanMaker.At(solver, x, second)));
    }
}
