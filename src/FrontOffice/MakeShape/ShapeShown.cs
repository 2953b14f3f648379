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
public sealed record ShapeAsked(string Kind, string Text, string Material = "DC01", string Bend = "din6935")
{
    /// <exception cref="RefusedException">What is typed cannot be made, in the sentence that says why.</exception>
    public Kit Make(CancellationToken stop = default)
    {
        if (string.IsNullOrWhiteSpace(Text)) throw new RefusedException(Refusal.Of("shape", null, "type it, or begin with the example"));
        return ShapeKind.Of(Kind).Make(Text, new(Metal, BendMethods.Read(Bend).Value), stop);
    }

    /// <exception cref="RefusedException">The material is not known.</exception>
    public Material Metal => Materials.Find(Material.Trim()) ?? throw new RefusedException(Refusal.Of("material", Material, "choose what it is to be made of"));
}

/// <summary>A picture with its name, as SVG.</summary>
public sealed record ShownPicture(string Title, string Svg);

/// <summary>A kit as a page shows it: pictures, tables, steps, cautions, all plain texts.</summary>
public sealed record ShapeShown(string Title, ImmutableArray<ShownPicture> Pictures, ImmutableArray<Listing> Lists, ImmutableArray<string> Steps, ImmutableArray<string> Cautions)
{
    /// <exception cref="RefusedException">What is typed cannot be made, in the sentence that says why.</exception>
    public static ShapeShown Of(ShapeAsked asked, CancellationToken stop = default) => Of(asked.Make(stop));

    public static ShapeShown Of(Kit kit) => new(
        kit.Title,
        [.. Sheets(kit).Select(s => new ShownPicture(s.Title, Svg.Write(s)))],
        KitTables.All(kit), kit.Steps, [.. kit.Cautions.Select(c => c.Words)]);

    /// <summary>The finished shape, where each piece is strained, each piece flat, each former.</summary>
    static IEnumerable<Sheet> Sheets(Kit kit) =>
    [
        .. kit.Shape is { Facets.Length: > 0 } shape ? [Seen(shape, kit.Title)] : Array.Empty<Sheet>(),
        .. kit.Pieces.Prepend(kit.Strained).Select(p => p?.Strained()).OfType<Sheet>(),
        .. kit.Pieces.Select(p => p.ToSheet()),
        .. kit.Formers.Select(f => Seen(f.Shape, f.Name)),
    ];

    static Sheet Seen(Body body, string title)
    {
        var view = PictorialDrawing.Draw(body, Axonometry.Isometric);
        return view.ToSheet(title, margin: 0.03 * Math.Max(view.Width, view.Height) + 1);
    }
}
