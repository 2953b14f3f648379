using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.Typed;

/// <summary>Where in a file something stands, so that a refusal can say so.</summary>
/// <param name="Line">From 1; 0 when there are no lines.</param>
/// <param name="Prefix">Path before the field, such as <c>readings[4].</c>; empty on a sheet.</param>
readonly record struct Place(int Line, string Prefix = "")
{
    public static Place None => default;

    public RefusedException Refuse(string field, string? value, string wanted) =>
        new(Refusal.Of(Prefix + field, value, wanted, Line == 0 ? null : Line));
}
