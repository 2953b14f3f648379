using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Forming;

public static class MetalName
{
    /// <summary>A material's name without what stands in brackets, for use within a sentence.</summary>
    public static string Short(this Material material) => material.Name.Split(" (")[0];
}
