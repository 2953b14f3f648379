namespace WitnessMark.DrawingOffice.Survey;

/// <summary>
/// What has become of a feature since it was made. Sound: as made. Worn, Rusted: metal is gone where it is read, so that a
/// reading bounds what it was made to from one side only. Bent: moved either way. Repaired: filled, bushed or welded; its
/// readings say what is there now and nothing of what it was made to.
/// </summary>
public enum FeatureCondition { Sound, Worn, Rusted, Bent, Repaired }

/// <summary>How far a feature in a given condition may be from what it was made to, mm, where the person states nothing.</summary>
public static class UsualWear
{
    /// <summary>
    /// Worn, rusted: mean loss of metal at the place that is read. Bent: standard deviation either way. 0 for the others.
    /// Common practice; the losses of a worn and a badly worn length in the habits of making (Intent.Practice) are 0.2 and 0.5 too.
    /// </summary>
    public static double Of(FeatureCondition condition) => condition switch
    {
        FeatureCondition.Worn => 0.2,
        FeatureCondition.Rusted => 0.5,
        FeatureCondition.Bent => 2,
        _ => 0,
    };
}

/// <summary>What a reading on a worn feature says of the size it was made to.</summary>
public enum MadeBound
{
    /// <summary>The size itself, to within its ±.</summary>
    Size,

    /// <summary>At least what was read: metal is gone from an outside.</summary>
    AtLeast,

    /// <summary>At most what was read: a hole or slot has worn larger.</summary>
    AtMost,

    /// <summary>Somewhere about what was read, either way: bent, or worn where the side is not known.</summary>
    About,

    /// <summary>Nothing: the feature was repaired, and the reading says what is there now.</summary>
    Nothing,
}

/// <summary>A frame of picks (paper or picture) whose scale is not quite known: what it shows is true size × scale, scale = 1 ± <paramref name="ScaleStd"/>.</summary>
/// <param name="Name">As in <see cref="Reading.Frame"/>.</param>
/// <param name="ScaleStd">Standard uncertainty of the scale as a share of 1, for example 0.0025; 0: the scale is 1 exactly.</param>
public sealed record PickFrame(string Name, double ScaleStd);

/// <summary>The scale of a frame as the readings found it: a share of 1.</summary>
public sealed record FrameScale(string Name, Maths.Uncertain Scale);
