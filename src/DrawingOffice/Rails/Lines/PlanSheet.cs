using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>
/// The sheet of the web as it stands: a flat drawing (x along the sheet, y height) laid on an upright surface that is bent in plan only.
/// Such a surface unrolls without any strain, so what is drawn on the flat comes true on it.
/// </summary>
/// <param name="Course">Of the middle layer in plan: x along the base line, y towards the eye, mm.</param>
/// <param name="Flats">How much flat sheet each step takes up, mm: its own length, or the bend allowance of a crease.</param>
sealed record PlanSheet(Course Course, ImmutableArray<double> Flats, ImmutableArray<bool> Creases)
{
    readonly double[] _starts = Sums(Flats);

    static double[] Sums(ImmutableArray<double> flats)
    {
        var starts = new double[flats.Length + 1];
        for (var i = 0; i < flats.Length; i++) starts[i + 1] = starts[i] + flats[i];
        return starts;
    }

    public int Count => Flats.Length;

    /// <summary>Where step i begins on the flat, mm.</summary>
    public double StartOf(int i) => _starts[i];

    int StepAt(double flat)
    {
        var i = 0;
        while (i < Flats.Length - 1 && flat >= _starts[i + 1]) i++;
        return i;
    }

    /// <summary>Curvature towards the eye, 1/mm, of the step that holds a place; 0 within a crease, which is reckoned by itself.</summary>
    public double CurvatureAt(double flat) => StepAt(flat) is var i && Creases[i] ? 0 : Course.Steps[i].Curvature;

    /// <summary>How far the step that holds a place turns in all, radians.</summary>
    public double TurnAt(double flat) => StepAt(flat) is var i ? Course.Steps[i].Curvature * Course.Steps[i].Length : 0;

    public bool IsCrease(double flat) => Creases[StepAt(flat)];

    /// <summary>From the flat to space (x along, y away from the eye, z up): the place, and there the directions along the sheet and towards the eye.</summary>
    public (Vec3 At, Vec3 Along, Vec3 Eye) Stand(Vec2 flat)
    {
        var i = StepAt(flat.X);
        var step = Course.Steps[i];
        var along = (flat.X - _starts[i]) * (step.Length / Flats[i]);
        var (p, d) = (step.At(along), step.AlongAt(along));
        return (new(p.X, -p.Y, flat.Y), new(d.X, -d.Y, 0), new(-d.Y, -d.X, 0));
    }

    /// <summary>Flat place of a place along the formed course.</summary>
    public double FlatOf(double formed)
    {
        var i = Course.StepAt(formed);
        return _starts[i] + (formed - Course.StartOf(i)) * (Flats[i] / Course.Steps[i].Length);
    }
}
