using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Photo.Cameras;

namespace WitnessMark.DrawingOffice.Photo;

/// <summary>What a person must know before he trusts a photograph, each with its size.</summary>
static class PhotoCautions
{
    /// <summary>Radians. Cause: beyond it a face's own thickness hides its lower edge, and a millimetre along the view has under two thirds of its pixels.</summary>
    const double Slanting = 50 * Math.PI / 180;

    /// <summary>
    /// mm. Half of what the marks miss their places by goes into each place's standard ±, so at this much a place is known no better than
    /// a calliper reads (0.05 mm, 19 in 20): from there on a flatter sheet is worth another picture. Less is in the ± and needs no one's hand.
    /// </summary>
    const double WorthAnother = 0.05;

    public static ImmutableArray<string> Of(TruePhoto photo, double unit)
    {
        var told = ImmutableArray.CreateBuilder<string>();
        if (!photo.Print.Measured)
            told.Add("The sheet's check lines are not measured: every length may be 1 % too long or short (one standard ±); measure both and enter them.");
        else if (Math.Max(Math.Abs(photo.Print.X.Value - 1), Math.Abs(photo.Print.Y.Value - 1)) > 0.01)
            told.Add(Say($"The sheet is printed at {100 * photo.Print.X.Value:0.0} % across and {100 * photo.Print.Y.Value:0.0} % up; this is allowed for."));
        AboutHeight(photo, told);
        if (photo.Stand is { Tilt: > Slanting } stand)
            told.Add(Say($"The picture is taken {stand.Tilt * 180 / Math.PI:0}° from straight above: take it steeper, and along the line of sight places are known best."));
        var aside = photo.Marks.Count(m => !m.Used);
        if (aside > 0) told.Add(Say($"{aside} of {photo.Marks.Length} squares disagree with the others and are set aside: the sheet may be bent, or something lies on them."));
        if (photo.Target is { } target && photo.Marks.Length < target.Count / 2 && photo.Marks[0].Corners.Length == 4)
            told.Add(Say($"Only {photo.Marks.Length} of the sheet's {target.Count} squares are seen: places away from them are less sure."));
        if (unit > 3 && photo.Residual > WorthAnother)
            told.Add(Say($"The marks miss their places by {photo.Residual:0.00} mm, {unit:0} times what their sharpness allows: the sheet may not lie flat, or the camera bends lines in a way of its own; the ± is widened by as much; lay the sheet flat and take another."));
        if (Math.Abs(photo.Bloom.Value) > 0.1)
            told.Add(Say($"Black squares came out {Math.Abs(photo.Bloom.Value):0.00} mm {(photo.Bloom.Value > 0 ? "larger" : "smaller")} a side than drawn (ink or light): an edge of the part may be off by as much, and its ± says so."));
        return told.ToImmutable();
    }

    static void AboutHeight(TruePhoto photo, ImmutableArray<string>.Builder told)
    {
        if (photo.Stand is not { } stand) return;
        var from = stand.From switch { FocalFrom.Marks => "told by the marks", FocalFrom.Stated => "by the stated focal length", _ => "by a usual phone's focal length" };
        if (photo.Height is null)
            told.Add(Say($"The height of the traced face above the sheet is not given: each millimetre makes a 100 mm length come out {100 / stand.Above.Value:0.00} mm too long, and a hole too small or an edge out of place by up to {Furthest(photo, 1 / stand.Above.Value):0.00} mm where its lower side is seen (camera {stand.AboveWords} above the sheet, {from}). 0 to {FaceAbove.MostUnsaid:0} mm is allowed for in the ± of holes and of all lengths together: enter the thickness."));
        else if (photo.Height is { Value: > 0 } height)
            told.Add(Say($"The face is taken to lie {height.Value:0.0#} mm above the sheet: {100 * photo.Face.Share:0.00} mm ± {Math.Max(0.01, 200 * photo.Face.ScaleStd):0.00} mm is taken off each 100 mm. A pick on its lower edge, against the sheet, is off by up to {Furthest(photo, photo.Face.Share):0.00} mm."));
    }

    /// <summary>The largest shift between upper and lower edge inside the frame, mm, of a face at this share of the lens's height.</summary>
    static double Furthest(TruePhoto photo, double share) => photo.Hull.IsEmpty ? 0 : photo.Hull.Max(p => p.DistanceTo(photo.Face.Foot)) * share;

    static string Say(FormattableString words) => words.ToString(CultureInfo.InvariantCulture);
}
