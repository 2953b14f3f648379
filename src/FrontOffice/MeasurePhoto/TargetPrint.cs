using WitnessMark.DrawingOffice.Photo.Targets;
using WitnessMark.FrontOffice.Printing;

namespace WitnessMark.FrontOffice.MeasurePhoto;

/// <summary>The target sheet to print.</summary>
public static class TargetPrint
{
    public static PrintOut Of(Target target, DateTimeOffset? created) => PrintOut.Pdf($"target-{target.Name.ToLowerInvariant()}", [TargetSheet.Of(target)], created);
}
