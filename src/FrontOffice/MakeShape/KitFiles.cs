using WitnessMark.FrontOffice.Printing;

namespace WitnessMark.FrontOffice.MakeShape;

/// <summary>Every file of a kit: drawings, 1:1 sheets and templates, DXF, STL, weld and bend list, nested stock, job card.</summary>
public static class KitFiles
{
    /// <param name="stop">Ends the nesting with the best found so far.</param>
    /// <exception cref="Maths.RefusedException">A piece that cannot be drawn, or a fact of the shop out of its range.</exception>
    public static IEnumerable<PrintOut> Of(KitRequest request, CancellationToken stop = default)
    {
        stop.ThrowIfCancellationRequested();
        return [];
    }
}
