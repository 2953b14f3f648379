using WitnessMark.Maths;

namespace WitnessMark.PrintRoom;

/// <summary>What every output asks of a sheet before it writes a byte.</summary>
static class Guard
{
    /// <summary>mm; a kilometre. Beyond it the decimals that outputs keep say nothing.</summary>
    const double Farthest = 1e6;

    public static void Check(Sheet sheet)
    {
        if (!(sheet.Width > 0 && sheet.Width <= Farthest && sheet.Height > 0 && sheet.Height <= Farthest))
            Refuse("sheet size", $"{Figures.Of(sheet.Width, 3)} x {Figures.Of(sheet.Height, 3)} mm", "both must be above 0 and at most a kilometre");
        if (sheet.Marks.IsDefault) Refuse("marks", "", "a sheet without marks holds an empty list");
        for (var i = 0; i < sheet.Marks.Length; i++) Check(i + 1, sheet.Marks[i]);
    }

    static void Check(int number, Mark mark)
    {
        var name = $"mark {number} ({mark.GetType().Name} on {mark.Layer})";
        foreach (var figure in Places(mark))
            if (!(Math.Abs(figure) <= Farthest))
                Refuse(name, Figures.Of(figure, 3), "every coordinate must be a number within a kilometre, in mm");
        foreach (var figure in Sizes(mark))
            if (!(figure >= 0 && figure <= Farthest))
                Refuse(name, Figures.Of(figure, 3), "a radius, half-axis, height or pen width must be a number of mm that is not negative");
    }

    static IEnumerable<double> Places(Mark mark) => mark switch
    {
        LineMark m => [m.A.X, m.A.Y, m.B.X, m.B.Y],
        CircleMark m => [m.Centre.X, m.Centre.Y],
        ArcMark m => [m.Centre.X, m.Centre.Y, m.Start, m.Sweep],
        EllipseMark m => [m.Centre.X, m.Centre.Y, m.Turn],
        PathMark { Points.IsDefault: false } m => m.Points.SelectMany(p => new[] { p.X, p.Y }),
        TextMark m => [m.At.X, m.At.Y, m.Turn],
        _ => [],
    };

    static double[] Sizes(Mark mark) => mark switch
    {
        CircleMark m => [m.Radius],
        ArcMark m => [m.Radius],
        EllipseMark m => [m.HalfA, m.HalfB],
        PathMark m => [m.PenWidth],
        TextMark m => [m.Height],
        _ => [],
    };

    static void Refuse(string field, string value, string wanted) => throw new RefusedException(Refusal.Of(field, value, wanted));
}
