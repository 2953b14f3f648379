using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using WitnessMark.DrawingOffice.Photo;
using WitnessMark.DrawingOffice.Typed;
using WitnessMark.FrontOffice.Typed;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.MeasurePhoto;

/// <summary>The work on a photograph from and to JSON (docs/guide/photo.md). Lengths are mm, places in the picture px.</summary>
public static class PhotoWorkJson
{
    /// <summary>Most things pointed out in one photograph, and most clicks of one outline.</summary>
    const int MostPicks = 200, MostClicks = 500;

    static readonly (string, PickKind)[] Kinds = [("hole", PickKind.Hole), ("corner", PickKind.Corner), ("outline", PickKind.Outline)];

    /// <summary>UTF-8, as typed.</summary>
    public static Parsed<PhotoWork> Read(ReadOnlySpan<byte> bytes)
    {
        try
        {
            return Read(TextFile.Decode(bytes));
        }
        catch (RefusedException e)
        {
            return e.Refusal;
        }
    }

    public static Parsed<PhotoWork> Read(string json) => TypedJson.Read(json, "photograph", f =>
    {
        f.Only("target", "check_x", "check_y", "thickness", "thickness_within", "focal_35", "across", "corners", "picks");
        return new PhotoWork
        {
            Target = f.Has("target") ? f.Text("target") : null,
            CheckX = f.Has("check_x") ? f["check_x"].Positive() : null,
            CheckY = f.Has("check_y") ? f["check_y"].Positive() : null,
            Thickness = f.Has("thickness") ? f["thickness"].Length() : null,
            ThicknessWithin = f.Has("thickness_within") ? f["thickness_within"].Positive() : new PhotoWork().ThicknessWithin,
            Focal35 = f.Has("focal_35") ? f["focal_35"].Positive() : null,
            Across = f.Has("across") ? Side(f["across"]) : null,
            Corners = f.Has("corners") ? f.List("corners", CornerOf) : [],
            Picks = f.Has("picks") ? Few(f, f.List("picks", PickOf)) : [],
        };
    });

    public static string Write(PhotoWork work)
    {
        using var text = new MemoryStream();
        using (var json = new Utf8JsonWriter(text))
        {
            json.WriteStartObject();
            if (work.Target is { } target) json.WriteString("target", target);
            Number(json, "check_x", work.CheckX);
            Number(json, "check_y", work.CheckY);
            Number(json, "thickness", work.Thickness);
            Number(json, "thickness_within", work.Thickness is null ? null : work.ThicknessWithin);
            Number(json, "focal_35", work.Focal35);
            Number(json, "across", work.Across);
            if (!work.Corners.IsEmpty) List(json, "corners", work.Corners, corner =>
            {
                Place(json, "px", corner.Px);
                Place(json, "mm", corner.Mm);
            });
            if (!work.Picks.IsEmpty) List(json, "picks", work.Picks, pick =>
            {
                json.WriteString("name", pick.Name);
                json.WriteString("kind", Kinds[(int)pick.Kind].Item1);
                if (pick.Closed) json.WriteBoolean("closed", true);
                json.WriteStartArray("clicks");
                foreach (var click in pick.Clicks) Place(json, null, click);
                json.WriteEndArray();
            });
            json.WriteEndObject();
        }
        return Encoding.UTF8.GetString(text.ToArray());
    }

    static int Side(JsonField f) => f.Whole() is > 0 and <= 100_000 and var px ? px : throw f.Wrong("give the picture's width in px");

    static Tie CornerOf(JsonField f)
    {
        f.Only("px", "mm");
        return new(Pair(f["px"]), Pair(f["mm"]));
    }

    static PhotoPick PickOf(JsonField f)
    {
        f.Only("name", "kind", "clicks", "closed");
        var kind = f["kind"].Word<PickKind>(Kinds);
        var clicks = f.List("clicks", Pair);
        var name = f.Text("name");
        if (name.Length is 0 or > 30 || !name.All(c => char.IsLetterOrDigit(c) || c is '-' or '.' or '_'))
            throw f["name"].Wrong("a name is 1 to 30 letters, digits, dashes, dots or underscores");
        if (kind == PickKind.Outline ? clicks.Length is < 2 or > MostClicks : clicks.Length != 1)
            throw f["clicks"].Wrong(kind == PickKind.Outline ? $"an outline takes 2 to {MostClicks} clicks" : "one click");
        return new(name, kind, clicks, f.Has("closed") && f["closed"].Flag());
    }

    static ImmutableArray<PhotoPick> Few(JsonField f, ImmutableArray<PhotoPick> picks)
    {
        if (picks.Length > MostPicks) throw new RefusedException(Refusal.Of("picks", $"{picks.Length}", $"at most {MostPicks} in one photograph"));
        return picks.GroupBy(p => p.Name, StringComparer.OrdinalIgnoreCase).FirstOrDefault(g => g.Count() > 1) is { } twice
            ? throw new RefusedException(Refusal.Of("picks, name", twice.Key, "give each thing picked a name of its own")) : picks;
    }

    static Vec2 Pair(JsonField f) => f.Pair() is var (x, y) ? new(x, y) : default;

    static void Number(Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } v) json.WriteNumber(name, v);
    }

    static void List<T>(Utf8JsonWriter json, string name, ImmutableArray<T> rows, Action<T> write)
    {
        json.WriteStartArray(name);
        foreach (var row in rows)
        {
            json.WriteStartObject();
            write(row);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    /// <summary>To a hundredth: of a pixel finer than any eye, of a mm finer than any rule.</summary>
    static void Place(Utf8JsonWriter json, string? name, Vec2 at)
    {
        if (name is null) json.WriteStartArray();
        else json.WriteStartArray(name);
        json.WriteNumberValue(Math.Round(at.X, 2));
        json.WriteNumberValue(Math.Round(at.Y, 2));
        json.WriteEndArray();
    }
}
