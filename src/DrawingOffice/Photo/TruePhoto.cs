using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Photo.Cameras;
using WitnessMark.DrawingOffice.Photo.Seeing;
using WitnessMark.DrawingOffice.Photo.Targets;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo;

/// <summary>A square of the target as it was found.</summary>
/// <param name="Index">Its number on the sheet, from 0.</param>
/// <param name="Corners">px, in the order of <see cref="Target.Corners"/>.</param>
/// <param name="Residual">Root mean square distance of its sides from where the camera puts them, mm.</param>
/// <param name="Used">False when it disagreed with all others and was set aside.</param>
public sealed record MarkSeen(int Index, ImmutableArray<Vec2> Corners, double Residual, bool Used);

/// <summary>A photograph whose camera is known.</summary>
/// <param name="Target">The sheet; null when the corners were picked without one.</param>
/// <param name="Residual">Root mean square residual of all marks, mm.</param>
/// <param name="Bloom">How far black squares came out too large (ink, light), mm a side; an edge of the part may be off by as much.</param>
/// <param name="LensWords">Which lens model, and why.</param>
public sealed record TruePhoto(
    Light Light,
    Target? Target,
    Camera Camera,
    Stand? Stand,
    ImmutableArray<MarkSeen> Marks,
    double Residual,
    Uncertain Bloom,
    string LensWords,
    PrintScale Print,
    Uncertain? Height,
    ImmutableArray<string> Cautions)
{
    /// <summary>Hull of what the camera was fitted to, mm, anticlockwise.</summary>
    public ImmutableArray<Vec2> Hull { get; init; } = [];

    /// <summary>A place picked in the picture (px) with the standard ± of the picking (px): where it is on the traced face.</summary>
    public Spot At(Vec2 px, double std) => Spots.At(this, px, std);

    /// <summary>Where a place of the traced face (mm) is in the picture.</summary>
    public Vec2 ToPhoto(Vec2 mm) => Camera.ToPhoto(Face.Lower(mm));

    /// <summary>Where a place of the picture is on the traced face.</summary>
    public Vec2 ToFace(Vec2 px) => Face.Raise(Camera.ToSheet(px));

    /// <summary>From the sheet to the traced face, as seen from where the camera stands.</summary>
    public FaceAbove Face => FaceAbove.Of(Stand, Height);

    /// <summary>Nobody said how high the face lies: it may have walls.</summary>
    public bool HeightUnsaid => Height is null && Stand is not null;

    /// <summary>What all places of this photograph share.</summary>
    public FrameScale Scale => new(Math.Sqrt(Print.CommonStd * Print.CommonStd + Face.ScaleStd * Face.ScaleStd));
}
