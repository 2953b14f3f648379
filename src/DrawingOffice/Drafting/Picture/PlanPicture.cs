using System.Globalization;
using WitnessMark.DrawingOffice.Drafting.Dimensions;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;

namespace WitnessMark.DrawingOffice.Drafting.Picture;

/// <summary>How the picture of a plan is to come out.</summary>
/// <param name="Width">mm.</param>
/// <param name="Height">mm.</param>
/// <param name="Next">The reading suggested next, drawn as a line.</param>
public sealed record PictureOptions(double Width = 180, double Height = 130, NextReading? Next = null);

/// <summary>
/// The plan as a picture for page and paper: features where the readings put them, ± ellipses enlarged by the factor that stands under the picture,
/// doubtful readings, what is loose and which way, mirror places, a scale bar. Drawn to fit, not to a drawing scale.
/// </summary>
public static class PlanPicture
{
    /// <summary>Half-axes of the ellipse that holds 95 in 100, for standard half-axes of 1: √(−2 ln 0.05), chi-square with two degrees of freedom.</summary>
    public const double Holds95 = 2.4477468306808161;

    // Room round the shape for arrows and names, and under it for the legend, mm.
    const double Margin = 14, Legend = 16, LargestEllipse = 4;

    /// <exception cref="RefusedException">The picture is too small to hold anything, or the plan has no features or none that is finite.</exception>
    public static PrintRoom.Sheet Draw(Plan plan, Sample sample, PictureOptions? options = null)
    {
        var size = options ?? new();
        if (!(size.Width >= 60 && size.Height >= 60)) throw new RefusedException(Refusal.Of("picture size", $"{size.Width} × {size.Height} mm", "at least 60 × 60 mm is needed"));
        if (plan.Features.IsDefaultOrEmpty) throw new RefusedException(Refusal.Of("plan", null, "a plan with at least one feature is needed"));
        var shape = new PlanShape(plan, sample);
        var view = View.Fitting(shape.Bounds, new(Margin, Margin + Legend, size.Width - Margin, size.Height - Margin));
        var board = new Board();
        shape.Draw(board, view);
        var enlarged = Ellipses(board, plan, view);
        Loose.Draw(board, plan, view);
        Suspects.Draw(board, plan, sample, view);
        if (size.Next is { } next) Suggestion(board, plan, view, next);
        foreach (var f in plan.Features) Name(board, view, f);
        Foot(board, plan, view, size, enlarged);
        return new(sample.Title, size.Width, size.Height, board.Marks);
    }

    /// <summary>Draws the ellipses and gives the factor they are enlarged by: 1, 2, 5, 10 ... so that the largest is easily seen.</summary>
    static double Ellipses(Board board, Plan plan, View view)
    {
        var fixedOnes = plan.Features.Where(f => !f.Loose && f.Kind != FeatureKind.Edge && f.Ellipse.Major > 0).ToList();
        if (fixedOnes.Count == 0) return 1;
        var largest = fixedOnes.Max(f => f.Ellipse.Major) * Holds95 * view.Scale;
        var factor = Math.Max(1, RoundDown(LargestEllipse / largest));
        foreach (var f in fixedOnes)
        {
            var (a, b) = (f.Ellipse.Major * Holds95 * view.Scale * factor, f.Ellipse.Minor * Holds95 * view.Scale * factor);
            board.Add(new EllipseMark(view.At(f.At), a, b, f.Ellipse.Turn, Layers.Dimensions, Stroke.Thin, Tone.Accent));
            board.Clear.Disc(view.At(f.At), a);
        }
        return factor;
    }

    /// <summary>The largest of ... 0.5, 1, 2, 5, 10, 20 ... that is not over the value.</summary>
    static double RoundDown(double value)
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10(value)));
        return value >= 5 * power ? 5 * power : value >= 2 * power ? 2 * power : power;
    }

    static void Name(Board board, View view, Placed f)
    {
        var rim = f.Kind is FeatureKind.Hole ? (f.Size?.Value ?? 0) / 2 * view.Scale : 0.8;
        Leader.Beside(board, view.At(f.At), rim, new(f.Id));
    }

    static void Suggestion(Board board, Plan plan, View view, NextReading next)
    {
        var (from, to) = (plan.Features.FirstOrDefault(f => f.Id == next.From), plan.Features.FirstOrDefault(f => f.Id == next.To));
        if (from is null) return;
        var (a, b) = (view.At(from.At), view.At((to ?? from).At));
        board.Line(a, b, Layers.Dimensions, Stroke.Hidden, Tone.Accent);
        Leader.Beside(board, (a + b) / 2, 0.5, new("next", Tone: Tone.Accent));
    }

    static void Foot(Board board, Plan plan, View view, PictureOptions size, double enlarged)
    {
        var length = RoundDown(50 / view.Scale);
        var (left, y) = (Margin, 10.0);
        var right = left + length * view.Scale;
        foreach (var x in new[] { left, (left + right) / 2, right }) board.Add(new LineMark(new(x, y - 1.2), new(x, y + 1.2), Layers.Frame, Stroke.Thin));
        board.Add(new LineMark(new(left, y), new(right, y), Layers.Frame, Stroke.Outline));
        board.Text(new(right + 2, y - 1.7), string.Create(CultureInfo.InvariantCulture, $"{length} mm"), Letter.Usual, Layers.Frame);
        var ellipses = string.Create(CultureInfo.InvariantCulture, $"Ellipses hold 95 in 100, drawn {enlarged:0} times as large.");
        board.Text(new(left, y - 7), Letter.Cut(ellipses, size.Width - 2 * Margin, Letter.Small), Letter.Small, Layers.Frame, tone: Tone.Accent);
        var warning = Warning(plan);
        var room = size.Width - Margin - right - 28;
        var lines = Letter.Lines(warning, Math.Max(room, 20), Letter.Small);
        for (var i = 0; i < lines.Count; i++)
            board.Text(new(size.Width - Margin, y + 5 - 4 * i), lines[i], Letter.Small, Layers.Frame, Anchor.Right, tone: Tone.Warn);
    }

    static string Warning(Plan plan)
    {
        var words = new List<string>();
        if (!plan.Convergence.Converged) words.Add("The plan has not settled: do not use it.");
        if (plan.Doubts.Indices.Length > 0) words.Add($"Doubtful: reading {string.Join(", ", plan.Doubts.Indices.Select(i => i + 1))}.");
        if (plan.Features.Any(f => f.Loose)) words.Add($"Loose: {string.Join(", ", plan.Features.Where(f => f.Loose).Select(f => f.Id))}.");
        return string.Join(' ', words);
    }
}
