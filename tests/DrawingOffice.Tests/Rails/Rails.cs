using WitnessMark.DrawingOffice.Rails;

namespace WitnessMark.DrawingOffice.Tests.Rails;

static class Made
{
    public static Station At(double at, double web = 80, double lower = 35, double upper = 35) => new(at, web, lower, upper);

    /// <summary>An arc of the lower edge between two straights that turn left (up) or right by the angle.</summary>
    public static Rail Swept(double radius, double turn, RailKind kind = RailKind.C, double thickness = 2, double inside = 3, double straight = 150, double web = 80, double flange = 35)
    {
        var run = straight + radius * Math.Tan(Math.Abs(turn) / 2);
        return new("swept", kind, thickness, inside,
        [
            At(0, web, flange, kind == RailKind.L ? 0 : flange),
            At(run, web, flange, kind == RailKind.L ? 0 : flange) with { Ease = radius },
            At(run + run * Math.Cos(turn), web, flange, kind == RailKind.L ? 0 : flange) with { Level = run * Math.Sin(turn) },
        ]);
    }

    /// <summary>The same in plan.</summary>
    public static Rail Cranked(double radius, double turn, RailKind kind = RailKind.Z, double straight = 150)
    {
        var run = straight + radius * Math.Tan(Math.Abs(turn) / 2);
        return new("cranked", kind, 2, 3, [At(0), At(run) with { Ease = radius }, At(run + run * Math.Cos(turn)) with { Plan = run * Math.Sin(turn) }]);
    }
}
