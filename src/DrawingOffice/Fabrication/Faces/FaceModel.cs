using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>A face made flat. Its frame's xy plane holds the points; z points to the upper side of the sheet, the same side all over.</summary>
/// <param name="Ring">Points by index, anticlockwise seen from the upper side.</param>
/// <param name="Outline">The same in the face's frame, mm.</param>
/// <param name="Openings">In the face's frame.</param>
/// <param name="Sides">For each side of the ring the joint it lies on, by index; −1 for a free edge.</param>
public sealed record ModelFace(string Name, ImmutableArray<int> Ring, Motion3 Frame, ImmutableArray<Vec2> Outline, ImmutableArray<Opening> Openings, ImmutableArray<int> Sides);

/// <summary>Where two faces meet.</summary>
/// <param name="First">By index; its ring runs from <paramref name="From"/> to <paramref name="To"/>.</param>
/// <param name="From">Point by index.</param>
/// <param name="Bend">How far the sheet is turned from flat, radians in (−π, π): positive lifts the second face to the upper side.</param>
/// <param name="Std">Standard uncertainty of it from the points' own, radians.</param>
/// <param name="InsideRadius">Of the fold, if it is one, mm.</param>
public sealed record ModelJoint(int Index, string Name, int First, int Second, int From, int To, double Length, double Bend, double Std, double InsideRadius, JointWish Wish)
{
    /// <summary>Between the two faces, 0 to π: what a gauge between them is set to.</summary>
    public double SettingAngle => Math.PI - Math.Abs(Bend);
}

/// <summary>A sound pressing: flat faces, each edge shared by two at most, one upper side, all hanging together.</summary>
/// <param name="Points">mm, moved onto the planes of their faces.</param>
/// <param name="OffPlane">How far a measured point lay off the plane of its face at most, mm.</param>
public sealed record FaceModel(
    Pressing Pressing, ImmutableArray<Vec3> Points, ImmutableArray<ModelFace> Faces, ImmutableArray<ModelJoint> Joints, double OffPlane, ImmutableArray<Caution> Cautions)
{
    /// <summary>Most faces accepted: past it no one wants a split by machine.</summary>
    public const int MostFaces = 60;

    /// <returns>The model, or the first thing that is wrong, by name.</returns>
    public static Parsed<FaceModel> Of(Pressing pressing) => ModelMaker.Make(pressing);
}
