using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>To which surface of the metal the sizes of an end or a tube are given.</summary>
public enum Surface { Inside, Mean, Outside }

/// <summary>Where the sheet is opened.</summary>
public enum SeamPlace
{
    /// <summary>At an angle round the first end.</summary>
    Angle,

    /// <summary>In the middle of the first flat panel; at angle 0 when there is none.</summary>
    Flat,

    /// <summary>At the first corner of an end; at angle 0 when there is none.</summary>
    Corner,
}

/// <param name="Angle">Round the first end (or the tube) from its x axis, anticlockwise, radians; read for <see cref="SeamPlace.Angle"/>.</param>
/// <param name="Lap">Width of the lap, mm; 0 for a butt seam.</param>
/// <param name="Pieces">1, or 2 for halves with a second seam opposite.</param>
public sealed record SeamChoice(SeamPlace Place, double Angle = 0, double Lap = 0, int Pieces = 1)
{
    public static SeamChoice Usual { get; } = new(SeamPlace.Flat);
}

/// <summary>A shape of bent sheet or a cut tube, as a person asks for it. Lengths mm, angles radians.</summary>
/// <param name="Thickness">Of the sheet or tube wall, mm.</param>
public abstract record Asked(string Title, double Thickness)
{
    /// <summary>What the sizes are measured to.</summary>
    public Surface Sizes { get; init; } = Surface.Inside;

    /// <summary>Layer that keeps its length, from the inside, as a share of the thickness: 0.5 for rolled metal.</summary>
    public double Neutral { get; init; } = 0.5;

    /// <summary>Greatest distance of the made flats from the true curve, and greatest shortfall of a developed edge, mm.</summary>
    public double Error { get; init; } = 0.1;

    public SeamChoice Seam { get; init; } = SeamChoice.Usual;

    /// <summary>How far the developed layer lies outside the surface that the sizes are given to, mm.</summary>
    public double Layer => Thickness * (Neutral - Given);

    /// <summary>The surface the sizes are given to, from the inside, as a share of the thickness.</summary>
    double Given => Sizes switch { Surface.Inside => 0, Surface.Mean => 0.5, _ => 1 };

    /// <summary>Radii of the bore, of the layer that keeps its length and of the outside, from a diameter as it was given, mm.</summary>
    public (double Inner, double Layer, double Outer) Radii(double diameter)
    {
        var inner = diameter / 2 - Given * Thickness;
        return (inner, inner + Neutral * Thickness, inner + Thickness);
    }

    /// <summary>What is wrong with the figures that all shapes share; null when nothing is.</summary>
    public Refusal? Check()
    {
        if (!(Thickness > 0) || !double.IsFinite(Thickness)) return Refusal.Of("thickness", $"{Thickness:0.###} mm", "give more than 0 mm");
        if (!(Neutral is >= 0 and <= 1)) return Refusal.Of("neutral", $"{Neutral:0.###}", "give the layer that keeps its length as a share of the thickness, 0 to 1; 0.5 for rolled metal");
        if (!(Error > 0) || !double.IsFinite(Error)) return Refusal.Of("error", $"{Error:0.######} mm", "give more than 0 mm, usually 0.1");
        if (Seam.Pieces is not (1 or 2)) return Refusal.Of("seam, pieces", $"{Seam.Pieces}", "give 1, or 2 for halves");
        return Seam.Lap >= 0 && double.IsFinite(Seam.Lap) ? null : Refusal.Of("seam, lap", $"{Seam.Lap:0.###} mm", "give 0 or more");
    }

    /// <summary>The seam's angle where there are neither corners nor flats.</summary>
    public double SeamAngle => Seam.Place == SeamPlace.Angle ? Seam.Angle : 0;
}

/// <summary>A cone or a frustum between two parallel circles.</summary>
/// <param name="Base">Diameter, mm, positive.</param>
/// <param name="Top">Diameter, mm; 0 for a point.</param>
/// <param name="Height">Between the planes of the circles, mm.</param>
/// <param name="Offset">Of the top's centre from over the base's centre, mm; zero for a right cone.</param>
public sealed record AskedCone(string Title, double Thickness, double Base, double Top, double Height, Vec2 Offset) : Asked(Title, Thickness);

/// <summary>A tight skin over two ends placed anywhere in space.</summary>
public sealed record AskedTransition(string Title, double Thickness, End First, End Second) : Asked(Title, Thickness);

/// <summary>A segmented bend of round tube.</summary>
/// <param name="Diameter">mm.</param>
/// <param name="Radius">Of the bend to the middle of the tube, mm.</param>
/// <param name="Angle">That the bend turns, radians, over 0 to π.</param>
/// <param name="Segments">Of all, the two half segments at the ends counted; null to be chosen.</param>
/// <param name="Tail">Straight length added to each end, mm.</param>
public sealed record AskedElbow(string Title, double Thickness, double Diameter, double Radius, double Angle, int? Segments, double Tail) : Asked(Title, Thickness);

/// <summary>Which edge of the branch's cut meets the main.</summary>
public enum Touching
{
    /// <summary>The higher of the two all round: it goes on as sawn, nothing to be ground away.</summary>
    First,
    Inside,
    Outside,
}

/// <summary>What a branch stands on: a round main (radius to its outside) or a flat plate (null radius).</summary>
/// <param name="Radius">mm; null for a plate.</param>
/// <param name="Wall">mm.</param>
public sealed record Main(double? Radius, double Wall);

/// <summary>A branch tube cut to sit on, or to pass into, a main tube or plate. <see cref="Asked.Thickness"/> is the branch's wall.</summary>
/// <param name="Diameter">Of the branch, to the surface of <see cref="Asked.Sizes"/>.</param>
/// <param name="Length">From the middle of the main (the face of a plate) along the branch's axis to its square end, mm.</param>
/// <param name="Angle">Between the axes, or between axis and plate, radians, up to π/2.</param>
/// <param name="Offset">By which the axes miss each other, mm.</param>
/// <param name="Through">The branch passes into the main up to its bore; otherwise it sits on the outside.</param>
public sealed record AskedSaddle(string Title, double Thickness, double Diameter, double Length, Main Main, double Angle, double Offset, Touching Touching, bool Through)
    : Asked(Title, Thickness)
{
    public Wrapping Wrapping { get; init; } = Wrapping.Usual;

    /// <summary>The branch is rolled from sheet, so that a blank is wanted and no paper to go round it.</summary>
    public bool OfSheet { get; init; }
}

/// <summary>Two like tubes sawn to meet in one plane.</summary>
/// <param name="Angle">By which the run turns, radians, over 0 and under π.</param>
/// <param name="Length">Of one tube along its axis from square end to the meeting point, mm.</param>
public sealed record AskedMitre(string Title, double Thickness, double Diameter, double Length, double Angle) : Asked(Title, Thickness)
{
    public Wrapping Wrapping { get; init; } = Wrapping.Usual;

    /// <summary>The tubes are rolled from sheet.</summary>
    public bool OfSheet { get; init; }
}

/// <summary>A paper that is wrapped round a tube to mark a cut.</summary>
/// <param name="Paper">Its thickness, mm.</param>
/// <param name="Tab">That overlaps at the seam, mm.</param>
/// <param name="Stations">Ordinates round the tube, at least 4.</param>
public sealed record Wrapping(double Paper, double Tab, int Stations)
{
    public Refusal? Check() =>
        !(Paper is >= 0 and <= 3) ? Refusal.Of("paper", $"{Paper:0.###} mm", "give the thickness of the paper, 0 to 3 mm")
        : !(Tab is >= 0 and <= 200) ? Refusal.Of("tab", $"{Tab:0.###} mm", "give the overlap at the seam, 0 to 200 mm")
        : Stations is < 4 or > 360 ? Refusal.Of("stations", $"{Stations}", "give 4 to 360")
        : null;

    /// <summary>Office paper of 80 g/m² is about 0.1 mm thick (common practice).</summary>
    public static Wrapping Usual { get; } = new(0.1, 15, 24);
}
