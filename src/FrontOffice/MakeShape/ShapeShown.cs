using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.DrawingOffice.Pieces.Sheets;
using WitnessMark.FrontOffice.CutBlank;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Pictorial;
using WitnessMark.PrintRoom.Screen;
using WitnessMark.Trade;

namespace WitnessMark.FrontOffice.MakeShape;

/// <summary>A typed shape to be worked out: plain texts, so that it can be asked of another thread.</summary>
/// <param name="Material">By its name or designation.</param>
/// <param name="Bend">The bend allowance by name.</param>
/// <param name="Choice">Which of the ways to make it, 1 the best.</param>
public sealed record ShapeAsked(string Kind, string Text, string Material = "DC01", string Bend = "din6935", int Choice = 1)
{
    /// <exception cref="RefusedException">What is typed cannot be made, in the sentence that says why.</exception>
    public ShapeMade Make(CancellationToken stop = default)
    {
        if (string.IsNullOrWhiteSpace(Text)) throw new RefusedException(Refusal.Of("shape", null, "type it, or begin with the example"));
        return ShapeKind.Of(Kind).Make(Text, Wish, stop);
    }

    /// <exception cref="RefusedException">What is typed cannot be made, or nothing finer is known for its kind.</exception>
    public ImmutableArray<string> Check(CancellationToken stop = default) => ShapeKind.Of(Kind).Check is { } check
        ? check(Text, Wish, stop)
        : throw new RefusedException(Refusal.Of("kind of shape", Kind, "a rail can be checked against a mesh, other shapes cannot"));

    ShapeWish Wish => new(Metal, BendMethods.Read(Bend).Value, Choice);

    /// <exception cref="RefusedException">The material is not known.</exception>
    public Material Metal => Materials.Find(Material.Trim()) ?? throw new RefusedException(Refusal.Of("material", Material, "choose what it is to be made of"));
}

/// <summary>A picture with its name, as SVG.</summary>
/// <param name="Solid">Of a body in space: these take longest to draw.</param>
public sealed record ShownPicture(string Title, string Svg, bool Solid = false);

/// <summary>A kit as a page shows it: pictures, tables, steps, cautions, all plain texts.</summary>
/// <param name="Choices">The ways to make it, best first; empty where there is but one.</param>
public sealed record ShapeShown(string Title, ImmutableArray<ShownPicture> Pictures, ImmutableArray<Listing> Lists, ImmutableArray<string> Steps, ImmutableArray<string> Cautions, ImmutableArray<string> Choices)
{
    /// <exception cref="RefusedException">What is typed cannot be made, in the sentence that says why.</exception>
    public static ShapeShown Of(ShapeAsked asked, CancellationToken stop = default) => Of(asked.Make(stop), (_, _) => null);

    /// <summary>While a value is dragged: the flat pieces and figures are new, the solids stand as they were.</summary>
    public static ShapeShown Flat(ShapeMade made, ShapeShown? before) => Of(made, (title, solid) => solid ? before?.Standing(title, solid) : null);

    /// <summary>The solids drawn as well.</summary>
    /// <param name="flat">Of the same kit.</param>
    public static ShapeShown Whole(ShapeMade made, ShapeShown flat) => Of(made, (title, solid) => solid ? null : flat.Standing(title, solid));

    ShownPicture? Standing(string title, bool solid) => Pictures.FirstOrDefault(p => p.Title == title && p.Solid == solid);

    /// <param name="standing">A picture that need not be drawn again.</param>
    static ShapeShown Of(ShapeMade made, Func<string, bool, ShownPicture?> standing) => new(
        made.Kit.Title,
        [.. Sheets(made.Kit).Select(s => standing(s.Title, s.Solid) ?? new(s.Title, Svg.Write(s.Draw()), s.Solid))],
        KitTables.All(made.Kit), made.Kit.Steps, [.. made.Kit.Cautions.Select(c => c.Words)], made.Choices);

    /// <summary>The finished shape, where each piece is strained, each piece flat, each former.</summary>
    static IEnumerable<(string Title, bool Solid, Func<Sheet> Draw)> Sheets(Kit kit) =>
    [
        .. kit.Shape is { Facets.Length: > 0 } shape ? [(kit.Title, true, () => Seen(shape, kit.Title))] : Array.Empty<(string, bool, Func<Sheet>)>(),
        .. kit.Pieces.Prepend(kit.Strained).Select(p => p?.Strained()).OfType<Sheet>().Select(Ready),
        .. kit.Pieces.Select(p => Ready(p.ToSheet())),
        .. kit.Formers.Select(f => (f.Name, true, (Func<Sheet>)(() => Seen(f.Shape, f.Name)))),
    ];

    static (string, bool, Func<Sheet>) Ready(Sheet sheet) => (sheet.Title, false, () => sheet);

    static Sheet Seen(Body body, string title)
    {
        var view = PictorialDrawing.Draw(body, Axonometry.Isometric);
        return view.ToSheet(title, margin: 0.03 * Math.Max(view.Width, view.Height) + 1);
    }
}
