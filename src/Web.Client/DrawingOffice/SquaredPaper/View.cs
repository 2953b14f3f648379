using WitnessMark.Maths;

namespace WitnessMark.Web.Client.DrawingOffice.SquaredPaper;

/// <summary>The part of the squared paper that is looked at, mm; y up. Width and height keep the paper's shape on the screen.</summary>
public readonly record struct View(Vec2 Middle, double Width, double Height)
{
    /// <summary>Smallest and largest width shown, mm: a watch screw to a chassis.</summary>
    const double Least = 5, Most = 20_000;

    public static View Usual => new(new(80, 60), 200, 150);

    /// <summary>Everything in sight with a margin of an eighth; the usual view when there is nothing.</summary>
    public static View Around(IReadOnlyCollection<Vec2> points, double aspect)
    {
        if (points.Count == 0) return Usual.Shaped(aspect);
        double left = points.Min(p => p.X), right = points.Max(p => p.X), low = points.Min(p => p.Y), high = points.Max(p => p.Y);
        var width = Math.Max(right - left, Math.Max(high - low, 20) * aspect) * 1.25;
        return new View(new((left + right) / 2, (low + high) / 2), width, width / aspect).Held();
    }

    /// <param name="aspect">Width over height of the screen's window.</param>
    public View Shaped(double aspect) => this with { Height = Width / aspect };

    /// <summary>Nearer (factor below 1) or farther, with the point under the finger kept where it is.</summary>
    public View Zoomed(double factor, Vec2 about)
    {
        var next = (this with { Width = Width * factor, Height = Height * factor }).Held();
        return next with { Middle = about + (Middle - about) * (next.Width / Width) };
    }

    /// <summary>As a wheel turns, px; no turn at once counts for more than two hundred.</summary>
    public View Wheeled(double turn, Vec2 about) => Zoomed(Math.Exp(Math.Clamp(turn, -200, 200) / 600), about);

    public View Moved(Vec2 by) => this with { Middle = Middle + by };

    /// <summary>SVG viewBox: y down.</summary>
    public string Box => Svg($"{Middle.X - Width / 2:0.####} {-Middle.Y - Height / 2:0.####} {Width:0.####} {Height:0.####}");

    /// <summary>Spacing of the firm squares, mm: 1, 2, 5 times a power of ten, eight to twenty of them across.</summary>
    public double Square => Round125(Width / 12);

    /// <summary>The next of 1, 2, 5, 10, 20 ... at or above.</summary>
    public static double Round125(double least)
    {
        var ten = Math.Pow(10, Math.Floor(Math.Log10(least)));
        foreach (var k in (ReadOnlySpan<double>)[1, 2, 5])
            if (k * ten >= least * (1 - 1e-9)) return k * ten;
        return 10 * ten;
    }

    View Held()
    {
        var width = Math.Clamp(Width, Least, Most);
        return this with { Width = width, Height = Height * width / Width };
    }

    static string Svg(FormattableString s) => FormattableString.Invariant(s);
}
