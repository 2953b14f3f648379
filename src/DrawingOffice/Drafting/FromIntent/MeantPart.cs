using WitnessMark.DrawingOffice.Drafting.Dimensions;
using WitnessMark.DrawingOffice.Drafting.FromPlan;
using WitnessMark.DrawingOffice.Intent.Patterns;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Drafting.FromIntent;

/// <summary>
/// A part made ready for drawing as it was meant: round figures where they were found, holes of one size called out together,
/// pitch circles, equal spaces and middle lines. A ± stands only beside a figure that is as measured.
/// </summary>
public sealed record MeantPart(FlatPart Part, Knowledge Knowledge, Writing Writing)
{
    /// <exception cref="RefusedException">The plan cannot be drawn: its outline does not close, or a size was not read.</exception>
    public static MeantPart Of(IntentPlan intent, Sample sample, Writing writing)
    {
        var plan = AsMeant(intent);
        var figures = new Figures(intent, writing);
        var frame = DatumChoice.Of(plan, sample, null, null);
        var drawn = PlanPart.Of(plan, sample, new Decisions { MadeTo = figures.Size, MadeToBetween = figures.Between });
        var holes = Hole.Lettered(drawn.Part);
        var letters = new PatternNotes(intent, plan, frame, holes, figures);
        var part = drawn.Part with
        {
            Designed = true,
            Holes = [.. drawn.Part.Holes.Select(h => h with { Diameter = Bare(h.Diameter) })],
            Slots = [.. drawn.Part.Slots.Select(s => s with { Width = Bare(s.Width) })],
            Calls = letters.Calls(),
            PitchCircles = letters.PitchCircles(drawn.Part.Bounds),
            MiddleLines = letters.MiddleLines(drawn.Part.Bounds),
            Notes = [.. letters.Notes(), .. drawn.Part.Notes],
        };
        return new(part, drawn.Knowledge with { Std = span => figures.Between(span) is null ? drawn.Knowledge.Std(span) : null }, writing);

        // What was made to a listed size has no ± of its own on the drawing.
        static Sized Bare(Sized size) => size.MadeTo is null ? size : size with { Std = null };
    }

    /// <summary>The plan with every feature where it was meant; its covariance stays that of the readings.</summary>
    static Plan AsMeant(IntentPlan intent)
    {
        Placed Moved(Placed f) => intent.Of(f.Id) is not { } m ? f : f with
        {
            At = m.At,
            Turn = m.Turn,
            Size = f.Size is { } size && m.Size is { } meant ? size with { Value = meant } : f.Size,
            Length = f.Length is { } length && m.Length is { } between ? length with { Value = between } : f.Length,
        };
        return intent.Plan with { Features = [.. intent.Plan.Features.Select(Moved)], WithoutDoubtful = null };
    }
}
