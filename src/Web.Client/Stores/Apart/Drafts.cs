using WitnessMark.Maths;
using WitnessMark.Stores.ComingApart;

namespace WitnessMark.Web.Client.Stores;

/// <summary>Fasteners as they are typed.</summary>
public sealed class FastenerDraft
{
    public string What { get; set; } = "";

    public string Thread { get; set; } = "";

    public string Length { get; set; } = "";

    public string Head { get; set; } = "";

    public string Wanted { get; set; } = "";

    public string Here { get; set; } = "";

    public bool Empty => (What + Thread + Length + Head + Wanted + Here).Trim().Length == 0;

    /// <summary>What is not counted here is taken to be all here. Throws <see cref="RefusedException"/>.</summary>
    public FastenerCount Read()
    {
        var wanted = Fields.Count($"number of {What} there should be", Wanted);
        return new(What.Trim(), Thread.Trim(), Fields.Length($"length of {What}", Length), Head.Trim(), wanted,
            Here.Trim().Length == 0 ? wanted : Fields.Count($"number of {What} that are here", Here));
    }
}

/// <summary>Shims as they are typed.</summary>
public sealed class ShimDraft
{
    public string Where { get; set; } = "";

    public string Thickness { get; set; } = "";

    public string Count { get; set; } = "";

    public bool Empty => (Where + Thickness + Count).Trim().Length == 0;

    /// <summary>Throws <see cref="RefusedException"/>.</summary>
    public ShimPack Read() => new(Where.Trim(),
        Fields.Length("thickness of the shims", Thickness) ?? throw new RefusedException(Refusal.Of("thickness of the shims", null, "give the thickness of one, such as 0.25 mm")),
        Fields.Count("number of shims", Count));
}
