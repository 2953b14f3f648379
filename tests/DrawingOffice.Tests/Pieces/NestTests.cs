using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.DrawingOffice.Pieces.Nesting;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Pieces;

public class NestTests
{
    static Piece Rectangle(string name, double width, double height, int off = 1) => new(name, 1, Loop.Rectangle(width, height)) { Quantity = off };

    static StockSize Size(double width, double height) => new($"{width} × {height}", width, height);

    /// <summary>All on a sheet, no two nearer than the gap.</summary>
    static void Sound(NestPlan plan, double gap)
    {
        foreach (var sheet in plan.Sheets)
        {
            var (width, height) = (Math.Max(sheet.Size.Width, sheet.Size.Height), Math.Min(sheet.Size.Width, sheet.Size.Height));
            List<ImmutableArray<Vec2>> laid = [.. sheet.Pieces.Select(p => p.Piece.Outline.Moved(p.Pose).Flatten(0.001))];
            Assert.All(laid.SelectMany(l => l), p => Assert.True(p.X >= -1e-6 && p.Y >= -1e-6 && p.X <= width + 1e-6 && p.Y <= height + 1e-6, $"{p}"));
            for (var i = 0; i < laid.Count; i++)
                for (var j = 0; j < i; j++)
                {
                    Assert.False(Plane2.Contains(laid[i].AsSpan(), Inside(laid[j])) || Plane2.Contains(laid[j].AsSpan(), Inside(laid[i])));
                    if (gap > 0) Assert.True(Enumerable.Range(0, laid[j].Length).Min(k => Plane2.Distance(laid[i].AsSpan(), laid[j][k], laid[j][(k + 1) % laid[j].Length])) >= gap - 1e-6);
                }
        }
    }

    /// <summary>A point just inside the outline's first side.</summary>
    static Vec2 Inside(ImmutableArray<Vec2> outline)
    {
        var (a, b) = (outline[0], outline[1]);
        return (a + b) / 2 + (b - a).Unit.Left * 1e-3;
    }

    /// <summary>Nine squares, all different, that fill a rectangle of 33 × 32 without a gap.</summary>
    [Fact]
    [Truth(Grade.Published, "Z. Moron 1925, squared rectangle of order 9: 33 x 32 from squares 18 15 14 10 9 8 7 4 1")]
    public void Nine_squares_fill_the_rectangle_they_are_known_to_fill()
    {
        var squares = new[] { 18, 15, 14, 10, 9, 8, 7, 4, 1 }.Select(s => Rectangle($"{s}", s, s)).ToImmutableArray();
        var plan = Nest.Of(squares, [Size(33, 32)], new(0) { Orders = 4000 });
        Sound(plan, 0);
        Assert.Equal(33 * 32, plan.LeastArea, 1e-9);
        Assert.Single(plan.Sheets);
        Assert.Equal(0, plan.Waste, 1e-9);
    }

    [Fact]
    [Truth(Grade.Property, "a sheet sawn into rectangles by straight cuts holds them all again; the search may need some more length")]
    public void A_sawn_up_sheet_is_put_together_again_within_an_eighth()
    {
        var chance = new Chance(7);
        for (var trial = 0; trial < 4; trial++)
        {
            var parts = Sawn(1000, 500, 18, chance);
            var plan = Nest.Of([.. parts.Select((p, i) => Rectangle($"{i}", p.Width, p.Height))], [Size(1200, 500)], new(0) { Orders = 150 });
            Sound(plan, 0);
            Assert.Single(plan.Sheets);
            Assert.InRange(plan.Sheets[0].Used, 1000 - 1e-6, 1125);
        }
    }

    static List<(double Width, double Height)> Sawn(double width, double height, int parts, Chance chance)
    {
        var pieces = new List<(double Width, double Height)> { (width, height) };
        while (pieces.Count < parts)
        {
            var largest = pieces.MaxBy(p => p.Width * p.Height);
            pieces.Remove(largest);
            var (w, h) = largest;
            var cut = Math.Round(Math.Max(w, h) * chance.Uniform(0.3, 0.7) / 5) * 5;
            pieces.AddRange(w > h ? [(cut, h), (w - cut, h)] : [(w, cut), (w, h - cut)]);
        }
        return pieces;
    }

    [Fact]
    [Truth(Grade.Property, "two right-angled triangles make a rectangle: by true outlines half the rectangles' area is enough")]
    public void Triangles_nest_closer_than_their_rectangles()
    {
        var triangle = new Piece("gusset", 2, Loop.Of(new(0, 0), new(200, 0), new(0, 200))) { Quantity = 10 };
        var plan = Nest.Of([triangle], [Size(1000, 500)], new(3));
        Sound(plan, 3);
        Assert.Single(plan.Sheets);
        // Ten rectangles of 200 x 200 would take five columns of two, 1000 mm and more.
        Assert.True(plan.Sheets[0].Used < 800, $"{plan.Sheets[0].Used}");
    }

    [Fact]
    [Truth(Grade.Property, "no laying takes fewer sheets than metal divided by sheet; pieces never come nearer than the gap")]
    public void Any_pieces_lie_apart_and_on_the_sheet()
    {
        var chance = new Chance(11);
        for (var trial = 0; trial < 5; trial++)
        {
            var pieces = Enumerable.Range(0, 8).Select(k => new Piece($"{k}", k % 2 + 1, Star(chance)) { Quantity = 1 + k % 3, Handed = k % 4 == 0 }).ToImmutableArray();
            var plan = Nest.Of(pieces, [Size(500, 250), Size(1000, 500)], new(4) { Turns = 8, Orders = 6 });
            Sound(plan, 4);
            Assert.Equal(pieces.Sum(p => p.Count), plan.Sheets.Sum(s => s.Pieces.Length));
            Assert.Equal(pieces.Sum(p => p.Count * p.Outline.Area), plan.LeastArea, 1e-6);
            Assert.True(plan.Bought >= plan.LeastArea);
        }
    }

    static Loop Star(Chance chance)
    {
        var n = 7;
        return new([.. Enumerable.Range(0, n).Select(k => new Corner(Vec2.Polar(2 * Math.PI * k / n, chance.Uniform(25, 90)), k == 3 ? 0.2 : 0))]);
    }

    [Fact]
    [Truth(Grade.Property, "a grain leaves a piece its direction or the opposite one")]
    public void Grain_keeps_its_direction()
    {
        var plan = Nest.Of([Rectangle("a", 100, 300, 6)], [Size(1000, 500)], new(3) { Grain = true });
        Assert.All(plan.Sheets.SelectMany(s => s.Pieces), p => Assert.Equal(0, p.Pose.X.Y, 1e-12));
    }

    [Fact]
    [Truth(Grade.Property, "a piece that is longer than every sheet fits none")]
    public void What_fits_no_sheet_is_named()
    {
        var plan = Nest.Of([Rectangle("long rail", 2600, 90), Rectangle("bracket", 100, 50)], [Size(1000, 500)]);
        Assert.Equal(["long rail"], plan.TooLarge);
        Assert.Single(plan.Sheets.Single().Pieces);
    }

    [Fact]
    [Truth(Grade.Property, "the least sheet that holds what is left over is bought for it")]
    public void The_last_sheet_is_no_larger_than_it_must_be()
    {
        var plan = Nest.Of([Rectangle("door skin", 900, 480, 1), Rectangle("patch", 200, 200, 1)], [Size(300, 300), Size(1000, 500)], new(3));
        Assert.Equal(["1000 × 500", "300 × 300"], plan.Sheets.Select(s => s.Size.Name));
    }
}
