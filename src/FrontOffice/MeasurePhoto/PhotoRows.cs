using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using WitnessMark.DrawingOffice.Photo;
using WitnessMark.DrawingOffice.Photo.Tracing;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.Stores;

namespace WitnessMark.FrontOffice.MeasurePhoto;

/// <summary>One reading off a photograph in the words of the reading sheet.</summary>
/// <param name="PlusMinus">19 in 20, mm, as written.</param>
public sealed record PhotoRow(string Kind, string From, string To, string Value, string PlusMinus);

/// <summary>What a photograph adds to a survey: its features with their rough places, and its readings in a frame of its own.</summary>
/// <param name="ScaleWithin">± of all lengths of the frame together (19 in 20), as a share of 1.</param>
public sealed record PhotoRows(string Frame, double ScaleWithin, ImmutableArray<SketchedFeature> Features, ImmutableArray<PhotoRow> Readings)
{
    public static PhotoRows Of(PhotoResult result) => Of(result.Request.Name, result.Photo, result.Seen);

    /// <summary>All that was found. An outline gives its corners and sides: straight ones as edges between corners, rounds with centre and radius.</summary>
    public static PhotoRows Of(string frame, TruePhoto photo, ImmutableArray<PickSeen> all)
    {
        var found = new Found();
        foreach (var seen in all)
        {
            if (seen.Hole is { } hole) found.Take(NamedPick.Of(seen.Pick.Name, hole));
            if (seen.Corner is { } corner) found.Take(new(seen.Pick.Name, FeatureKind.Point, corner));
            if (seen.Outline is { } outline) found.Take(seen.Pick.Name, outline);
        }
        return new(frame, 2 * photo.Scale.Std, [.. found.Features], [.. PhotoReadings.Of(found.Picks, photo.Scale, frame).Select(Row)]);
    }

    /// <summary>A reading sheet that <c>wmark survey solve</c> takes (docs/guide/survey-sheet.md).</summary>
    public string Sheet(string title)
    {
        var sheet = new StringBuilder();
        sheet.Append(CultureInfo.InvariantCulture, $"# Read off a photograph. Places are mm in a frame of their own, which has its own shift, turn and scale.\n");
        sheet.Append(CultureInfo.InvariantCulture, $"sample,{Word(Frame)},{Cell(title)}\nunits,mm\n\nfeature,kind,from,to,x,y,size\n");
        foreach (var f in Features) sheet.Append(CultureInfo.InvariantCulture, $"{f.Id},{f.Kind},{f.From},{f.To},{f.X:0.##},{f.Y:0.##},{f.Size:0.##}\n");
        sheet.Append(CultureInfo.InvariantCulture, $"\nframe,scale\n{Word(Frame)},{ScaleWords}\n\nkind,from,to,value,instrument,note\n");
        foreach (var r in Readings) sheet.Append(CultureInfo.InvariantCulture, $"{r.Kind},{r.From},{Word(r.To)},{r.Value},± {r.PlusMinus}\n");
        return sheet.ToString();
    }

    /// <summary>As a frame's scale is written on a sheet.</summary>
    public string ScaleWords => string.Create(CultureInfo.InvariantCulture, $"± {ScaleWithin * 100:0.000} %");

    /// <summary>Between double quotes where a sign in it would part the row.</summary>
    static string Word(string text) => text.All(c => char.IsLetterOrDigit(c) || c is '-' or '_' or '.' or ' ') ? text : Cell(text);

    static string Cell(string text) => $"\"{text.Replace("\"", "\"\"")}\"";

    static PhotoRow Row(Reading r) => r.Kind == ReadingKind.Picked
        ? new(KindRule.Of(r.Kind).Words, r.From, r.Frame, $"x {Figure(r.Value)} y {Figure(r.ValueY)}", Figure(2 * r.Sigma))
        : new(KindRule.Of(r.Kind).Words, r.From, "", Figure(r.Value), Figure(2 * r.Sigma));

    /// <summary>To a thousandth of a mm.</summary>
    static string Figure(double mm) => mm.ToString("0.000", CultureInfo.InvariantCulture);

    sealed class Found
    {
        public List<SketchedFeature> Features { get; } = [];

        public List<NamedPick> Picks { get; } = [];

        public void Take(NamedPick pick, string from = "", string to = "")
        {
            var kind = pick.Kind == FeatureKind.Point ? "corner" : pick.Kind.ToString().ToLowerInvariant();
            Features.Add(new(pick.Id, kind, from, to, pick.Spot.At.X, pick.Spot.At.Y, null, pick.Size?.Value, null));
            Picks.Add(pick);
        }

        public void Take(string name, OutlineSeen outline)
        {
            var (sides, corners) = (outline.Sides, outline.Closed ? outline.Sides.Length : outline.Sides.Length + 1);
            string Corner(int k) => $"{name}-{k % corners + 1}";
            for (var k = 0; k < corners; k++) Take(new(Corner(k), FeatureKind.Point, k < sides.Length ? sides[k].From : sides[^1].To));
            for (var k = 0; k < sides.Length; k++)
            {
                // A round that closes on itself has no two corners to run between.
                var (from, to) = corners > 1 ? (Corner(k), Corner(k + 1)) : ("", "");
                if (sides[k] is { Centre: { } centre, Radius: { } radius }) Take(new($"{name}-r{k + 1}", FeatureKind.Arc, centre, radius) { BetweenCorners = corners > 1 }, from, to);
                else if (corners > 1) Features.Add(new($"{name}-s{k + 1}", "edge", from, to, null, null, null, null, null));
            }
        }
    }
}
