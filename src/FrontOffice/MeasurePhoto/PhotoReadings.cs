using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using WitnessMark.DrawingOffice.Photo;
using WitnessMark.DrawingOffice.Photo.Tracing;
using WitnessMark.Maths;
using WitnessMark.Stores;

namespace WitnessMark.FrontOffice.MeasurePhoto;

/// <summary>One reading off a photograph in the words of the reading sheet.</summary>
/// <param name="PlusMinus">19 in 20, mm, as written.</param>
public sealed record PhotoReading(string Kind, string From, string To, string Value, string PlusMinus);

/// <summary>What a photograph adds to a survey: its features with their rough places, and its readings in a frame of its own.</summary>
public sealed record PhotoReadings(string Frame, ImmutableArray<SketchedFeature> Features, ImmutableArray<PhotoReading> Readings)
{
    /// <summary>All that was found. An outline gives its corners and sides: straight ones as edges between corners, rounds with centre and radius.</summary>
    public static PhotoReadings Of(PhotoResult result) => Of(result.Request.Name, result.Seen);

    public static PhotoReadings Of(string frame, ImmutableArray<PickSeen> all)
    {
        var rows = new Rows(frame);
        foreach (var seen in all)
        {
            if (seen.Hole is { } hole)
            {
                rows.Feature(seen.Pick.Name, "hole", hole.Centre.At, size: hole.Diameter.Value);
                rows.Picked(seen.Pick.Name, hole.Centre);
                rows.Sized("diameter", seen.Pick.Name, hole.Diameter);
            }
            if (seen.Corner is { } corner)
            {
                rows.Feature(seen.Pick.Name, "corner", corner.At);
                rows.Picked(seen.Pick.Name, corner);
            }
            if (seen.Outline is { } outline) rows.Outline(seen.Pick.Name, outline);
        }
        return rows.Whole;
    }

    /// <summary>A reading sheet that <c>wmark survey solve</c> takes (docs/guide/survey-sheet.md).</summary>
    public string Sheet(string title)
    {
        var sheet = new StringBuilder();
        sheet.Append(CultureInfo.InvariantCulture, $"# Read off a photograph. Places are mm in the frame {Frame}, which has a shift and a turn of its own.\n");
        sheet.Append(CultureInfo.InvariantCulture, $"sample,{Frame},{Cell(title)}\nunits,mm\n\nfeature,kind,from,to,x,y,size\n");
        foreach (var f in Features) sheet.Append(CultureInfo.InvariantCulture, $"{f.Id},{f.Kind},{f.From},{f.To},{f.X:0.##},{f.Y:0.##},{f.Size:0.##}\n");
        sheet.Append("\nkind,from,to,value,instrument,note\n");
        foreach (var r in Readings) sheet.Append(CultureInfo.InvariantCulture, $"{r.Kind},{r.From},{r.To},{r.Value},± {r.PlusMinus}\n");
        return sheet.ToString();
    }

    static string Cell(string text) => $"\"{text.Replace("\"", "\"\"")}\"";

    sealed class Rows(string frame)
    {
        readonly ImmutableArray<SketchedFeature>.Builder _features = ImmutableArray.CreateBuilder<SketchedFeature>();
        readonly ImmutableArray<PhotoReading>.Builder _readings = ImmutableArray.CreateBuilder<PhotoReading>();

        public PhotoReadings Whole => new(frame, _features.ToImmutable(), _readings.ToImmutable());

        public void Feature(string id, string kind, Vec2? at, string from = "", string to = "", double? size = null) =>
            _features.Add(new(id, kind, from, to, at?.X, at?.Y, null, size, null));

        public void Picked(string id, Spot spot) =>
            _readings.Add(new("picked", id, frame, $"x {Figure(spot.At.X)} y {Figure(spot.At.Y)}", Figure(2 * spot.Spread.Std)));

        public void Sized(string kind, string id, Uncertain size) => _readings.Add(new(kind, id, "", Figure(size.Value), Figure(size.Expanded)));

        public void Outline(string name, OutlineSeen outline)
        {
            var (sides, corners) = (outline.Sides, outline.Closed ? outline.Sides.Length : outline.Sides.Length + 1);
            string Corner(int k) => $"{name}-{k % corners + 1}";
            for (var k = 0; k < corners; k++)
            {
                var spot = k < sides.Length ? sides[k].From : sides[^1].To;
                Feature(Corner(k), "corner", spot.At);
                Picked(Corner(k), spot);
            }
            for (var k = 0; k < sides.Length; k++)
            {
                // A round that closes on itself has no two corners to run between.
                var (from, to) = corners > 1 ? (Corner(k), Corner(k + 1)) : ("", "");
                if (sides[k] is { Centre: { } centre, Radius: { } radius })
                {
                    var id = $"{name}-r{k + 1}";
                    Feature(id, "arc", centre.At, from, to, radius.Value);
                    Picked(id, centre);
                    Sized("radius", id, radius);
                }
                else if (corners > 1) Feature($"{name}-s{k + 1}", "edge", null, from, to);
            }
        }

        /// <summary>To a thousandth of a mm.</summary>
        static string Figure(double mm) => Math.Max(-99_999, mm).ToString("0.000", CultureInfo.InvariantCulture);
    }
}
