namespace WitnessMark.DrawingOffice.Survey.Solid;

/// <summary>From readings to the true shape in space.</summary>
public static class SolidAdjust
{
    /// <param name="sample">Checked first; a refusal says what is wrong with it.</param>
    /// <param name="searchMirrors">Also look for second shapes that fit as well; costs several adjustments.</param>
    public static SolidPlan Solve(SolidSample sample, bool searchMirrors = true, CancellationToken stop = default)
    {
        stop.ThrowIfCancellationRequested();
        throw new InvalidOperationException(searchMirrors ? sample.Id : sample.Title);
    }
}
