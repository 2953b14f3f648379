using WitnessMark.FrontOffice.MeasureSolid.Rows;
using WitnessMark.Stores.Shapes;

namespace WitnessMark.FrontOffice.MeasureSolid;

/// <summary>A sample's survey in space among the typed shapes that the stores keep: its row bears the sample's id.</summary>
public static class StoredSolid
{
    /// <summary>How its row is told from shapes to be made.</summary>
    public const string Kind = "solid-survey";

    /// <summary>The sheet as typed; null while no feature stands on it.</summary>
    public static string? Of(IEnumerable<TypedShape> shapes, Guid sample) =>
        shapes.FirstOrDefault(s => s.Id == sample && s is { Kind: Kind, Dropped: false })?.Text is { } text && !IsBlank(text) ? text : null;

    static bool IsBlank(string text) => string.IsNullOrWhiteSpace(text) || TypedSolid.Read(text) is { Ok: true, Value.Features.Length: 0 };
}
