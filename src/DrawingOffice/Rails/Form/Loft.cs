using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Pictorial;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>Closes a row of sections into a body: strips that stay flat become one facet and take their holes, others a pair of triangles where they are not.</summary>
sealed class Loft
{
    /// <summary>Four corners nearer to one plane than this are flat, mm.</summary>
    const double FlatWithin = 1e-7;

    readonly List<double> _at;
    readonly Vec3[][] _seen;
    readonly Vec3[][] _back;
    readonly ImmutableArray<Facet>.Builder _facets = ImmutableArray.CreateBuilder<Facet>();
    readonly ImmutableArray<Rim>.Builder _rims = ImmutableArray.CreateBuilder<Rim>();
    readonly double _half;

    Loft(RailForm form, List<double> at, SectionLine[] sections)
    {
        (_at, _half) = (at, form.Rail.Thickness / 2);
        _seen = [.. sections.Select(s => s.Points.Zip(s.Squares, (p, n) => p + n * _half).ToArray())];
        _back = [.. sections.Select(s => s.Points.Zip(s.Squares, (p, n) => p - n * _half).ToArray())];
    }

    public static Body Of(RailForm form, List<double> at, SectionLine[] sections, ImmutableArray<PlacedHole> holes, int foldChords)
    {
        var made = new Loft(form, at, sections);
        var points = sections[0].Points.Length;
        var byColumn = holes.ToLookup(h => Column(form, sections[0].Web, points, foldChords, h.Hole.Face));
        for (var j = 0; j + 1 < points; j++) made.Strip(j, byColumn[j]);
        made.Border(0, flip: true);
        made.Border(points - 1, flip: false);
        for (var j = 0; j + 1 < points; j++)
        {
            made.Quad(made._seen[0][j], made._seen[0][j + 1], made._back[0][j + 1], made._back[0][j]);
            made.Quad(made._back[^1][j], made._back[^1][j + 1], made._seen[^1][j + 1], made._seen[^1][j]);
        }
        return new(made._facets.ToImmutable(), made._rims.ToImmutable());
    }

    /// <summary>A block that stands on the seen side of strips between two lines of the section: a former.</summary>
    public static Body Block(IReadOnlyList<(Vec3 LowFoot, Vec3 HighFoot, Vec3 LowHead, Vec3 HighHead)> sections)
    {
        var facets = ImmutableArray.CreateBuilder<Facet>();
        for (var i = 0; i + 1 < sections.Count; i++)
        {
            var (a, b) = (sections[i], sections[i + 1]);
            AddQuad(facets, a.LowHead, b.LowHead, b.HighHead, a.HighHead);
            AddQuad(facets, a.HighFoot, b.HighFoot, b.LowFoot, a.LowFoot);
            AddQuad(facets, a.LowFoot, b.LowFoot, b.LowHead, a.LowHead);
            AddQuad(facets, a.HighHead, b.HighHead, b.HighFoot, a.HighFoot);
        }
        var (first, last) = (sections[0], sections[^1]);
        AddQuad(facets, first.LowFoot, first.LowHead, first.HighHead, first.HighFoot);
        AddQuad(facets, last.LowHead, last.LowFoot, last.HighFoot, last.HighHead);
        return new(facets.ToImmutable(), []);
    }

    static int Column(RailForm form, int web, int points, int foldChords, RailFace face) => face switch
    {
        RailFace.Web => web,
        RailFace.LowerLip => 0,
        RailFace.UpperLip => points - 2,
        RailFace.LowerFlange => form.Lower.Shape!.LipTurn == 0 ? 0 : foldChords + 1,
        _ => form.Upper.Shape!.LipTurn == 0 ? points - 2 : points - 3 - foldChords,
    };

    /// <summary>One strip of the sheet from end to end, in as few facets as lie flat.</summary>
    void Strip(int j, IEnumerable<PlacedHole> holes)
    {
        var i = 0;
        while (i + 1 < _at.Count)
        {
            var end = i + 1;
            if (IsFlat(i, end, j, _seen[i][j], Normal(i, j)))
                while (end + 1 < _at.Count && IsFlat(end, end + 1, j, _seen[i][j], Normal(i, j))) end++;
            var inside = holes.Where(h => h.Hole.At > _at[i] && h.Hole.At < _at[end]).ToList();
            if (end == i + 1 && inside.Count == 0)
            {
                Quad(_seen[i][j], _seen[end][j], _seen[end][j + 1], _seen[i][j + 1]);
                Quad(_back[i][j + 1], _back[end][j + 1], _back[end][j], _back[i][j]);
            }
            else Sheet(i, end, j, inside);
            i = end;
        }
    }

    Vec3 Normal(int i, int j) => (_seen[i + 1][j] - _seen[i][j]).Cross(_seen[i][j + 1] - _seen[i][j]).Unit;

    bool IsFlat(int i, int k, int j, Vec3 at, Vec3 normal) =>
        Math.Abs(normal.Dot(_seen[i][j] - at)) < FlatWithin && Math.Abs(normal.Dot(_seen[i][j + 1] - at)) < FlatWithin
        && Math.Abs(normal.Dot(_seen[k][j] - at)) < FlatWithin && Math.Abs(normal.Dot(_seen[k][j + 1] - at)) < FlatWithin;

    void Sheet(int from, int to, int j, List<PlacedHole> holes)
    {
        ImmutableArray<Vec3> Round(Vec3[][] side)
        {
            var ring = ImmutableArray.CreateBuilder<Vec3>();
            for (var i = from; i <= to; i++) ring.Add(side[i][j]);
            for (var i = to; i >= from; i--) ring.Add(side[i][j + 1]);
            return ring.ToImmutable();
        }
        // An opening that runs on over the end of a flat piece is left out of the picture.
        var rims = new List<(Vec3[] Seen, Vec3[] Back)>();
        foreach (var h in holes)
        {
            var rim = h.Hole.Shape.Edge.Flatten(RailBody.ChordError);
            if (h.Hole.At + rim.Min(p => p.X) <= _at[from] || h.Hole.At + rim.Max(p => p.X) >= _at[to]) continue;
            rims.Add(([.. rim.Select(p => h.Stands.Map(p, _half))], [.. rim.Select(p => h.Stands.Map(p, -_half))]));
            if (h.Hole.Shape is Sheetwork.RoundHole round)
                foreach (var side in new[] { _half, -_half }) _rims.Add(new(h.Stands.Map(new Vec3(0, 0, side)), h.Stands.Z, round.Diameter / 2));
        }
        var outer = Round(_seen);
        var sense = Facet.Of(outer.AsSpan()).Normal;
        _facets.Add(new([outer, .. rims.Select(r => Against(r.Seen, sense))]));
        var back = Round(_back).Reverse().ToImmutableArray();
        _facets.Add(new([back, .. rims.Select(r => Against(r.Back, sense * -1))]));
        foreach (var (seen, under) in rims) Wall(seen, under, sense);
    }

    static ImmutableArray<Vec3> Against(Vec3[] ring, Vec3 sense) =>
        Facet.Of(ring).Normal.Dot(sense) < 0 ? [.. ring] : [.. ring.Reverse()];

    void Wall(Vec3[] seen, Vec3[] under, Vec3 sense)
    {
        var along = Facet.Of(seen).Normal.Dot(sense) > 0;
        for (int k = 0, l = seen.Length - 1; k < seen.Length; l = k++)
        {
            if (along) Quad(seen[l], seen[k], under[k], under[l]);
            else Quad(seen[k], seen[l], under[l], under[k]);
        }
    }

    void Border(int j, bool flip)
    {
        for (var i = 0; i + 1 < _at.Count; i++)
        {
            if (flip) Quad(_back[i][j], _back[i + 1][j], _seen[i + 1][j], _seen[i][j]);
            else Quad(_seen[i][j], _seen[i + 1][j], _back[i + 1][j], _back[i][j]);
        }
    }

    void Quad(Vec3 a, Vec3 b, Vec3 c, Vec3 d) => AddQuad(_facets, a, b, c, d);

    static void AddQuad(ImmutableArray<Facet>.Builder facets, Vec3 a, Vec3 b, Vec3 c, Vec3 d)
    {
        var normal = (b - a).Cross(d - a);
        var size = normal.Length;
        if (size > 0 && Math.Abs(normal.Dot(c - a)) <= FlatWithin * size)
        {
            facets.Add(Facet.Of(a, b, c, d));
            return;
        }
        facets.Add(Facet.Of(a, b, c));
        facets.Add(Facet.Of(a, c, d));
    }
}
