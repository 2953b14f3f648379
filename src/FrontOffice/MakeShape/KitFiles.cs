using System.Globalization;
using System.Text;
using WitnessMark.DrawingOffice.Drafting;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.DrawingOffice.Pieces.Nesting;
using WitnessMark.DrawingOffice.Pieces.Sheets;
using WitnessMark.FrontOffice.Printing;
using WitnessMark.Maths.Units;
using WitnessMark.PlanningOffice.Print;
using WitnessMark.PrintRoom.Pictorial;
using WitnessMark.PrintRoom.Solids;

namespace WitnessMark.FrontOffice.MakeShape;

/// <summary>Every file of a kit: drawings, 1:1 sheets and templates, DXF, STL, weld and bend list, nested stock, job card.</summary>
public static class KitFiles
{
    /// <param name="stop">Ends the nesting with the best found so far.</param>
    /// <exception cref="Maths.RefusedException">A piece that cannot be drawn, or a fact of the shop out of its range.</exception>
    public static IEnumerable<PrintOut> Of(KitRequest request, CancellationToken stop = default) => Of(request, KitNest.Of(request, stop: stop));

    /// <param name="nest">How the pieces are laid.</param>
    /// <inheritdoc cref="Of(KitRequest, CancellationToken)"/>
    public static IEnumerable<PrintOut> Of(KitRequest request, NestPlan nest) =>
    [
        .. Whole(request),
        .. request.Kit.Pieces.Concat(request.Kit.Formers.SelectMany(f => f.Templates)).SelectMany(p => Piece(request, p)),
        .. Strains(request),
        .. Solids(request),
        .. nest.Sheets.SelectMany((s, i) => Nested(request, s, i)),
        Card(request, nest),
    ];

    /// <summary>The sheet that shows the kit whole, and its lists.</summary>
    public static IEnumerable<PrintOut> Whole(KitRequest request)
    {
        var sheets = KitDrawing.Draw(request.Kit, request.Title);
        return [PrintOut.Pdf($"{request.Name}-whole", sheets, request.Created), PrintOut.Svg($"{request.Name}-whole", sheets[0]), List(request)];
    }

    /// <summary>A piece's drawing, its 1:1 sheet for the cutter and its template.</summary>
    public static IEnumerable<PrintOut> Piece(KitRequest request, Piece piece)
    {
        var (name, sheet) = ($"{request.Name}-{Plain(piece.Name)}", piece.ToSheet());
        var drawing = DetailDrawing.Draw(PiecePart.Of(piece), TitleOf(request, piece));
        return
        [
            PrintOut.Pdf($"{name}-drawing", drawing.Sheets, request.Created),
            PrintOut.Svg($"{name}-drawing", drawing.Sheets[0]),
            PrintOut.Svg(name, sheet),
            PrintOut.Dxf(name, sheet),
            PrintOut.Template($"{name}-template", sheet, request.Paper, request.Created),
        ];
    }

    /// <summary>Where it stretches and shrinks.</summary>
    public static IEnumerable<PrintOut> Strains(KitRequest request) =>
        request.Kit.Pieces.Prepend(request.Kit.Strained).OfType<Piece>().Select(p => (p.Name, Sheet: p.Strained())).Where(p => p.Sheet is not null)
            .Select(p => PrintOut.Svg($"{request.Name}-{Plain(p.Name)}-strain", p.Sheet!));

    /// <summary>The finished shape and its formers as STL.</summary>
    public static IEnumerable<PrintOut> Solids(KitRequest request)
    {
        if (request.Kit.Shape is { Facets.Length: > 0 } shape) yield return Solid($"{request.Name}-shape", shape);
        foreach (var former in request.Kit.Formers) yield return Solid($"{request.Name}-{Plain(former.Name)}", former.Shape);
    }

    /// <summary>How a stock sheet is laid: a picture and a DXF at full size.</summary>
    public static IEnumerable<PrintOut> Nested(KitRequest request, NestedSheet nested, int index)
    {
        var (name, sheet) = (string.Create(CultureInfo.InvariantCulture, $"{request.Name}-sheet-{index + 1}"), nested.ToSheet(nested.Words()));
        return [PrintOut.Svg(name, sheet), PrintOut.Dxf(name, sheet)];
    }

    public static PrintOut Card(KitRequest request, NestPlan nest) =>
        PrintOut.Pdf($"{request.Name}-card", JobCard.Sheets(KitCard.Of(request, nest), request.Title.PartNumber, Day(request)), request.Created);

    /// <summary>Pieces, bends, welds and figures as a table for a spreadsheet (RFC 4180), list by list with a line between.</summary>
    public static PrintOut List(KitRequest request) =>
        new($"{request.Name}-lists.csv", "text/csv", Encoding.UTF8.GetBytes(string.Join("\r\n", KitTables.All(request.Kit).Select(Table))));

    static string Table(Listing listing) =>
        string.Concat(listing.Rows.Prepend(listing.Heads).Prepend([listing.Title]).Select(r => string.Join(',', r.Select(Cell)) + "\r\n"));

    /// <summary>A cell that a spreadsheet would run as a formula gets an apostrophe before it.</summary>
    static string Cell(string text)
    {
        var harmless = text is ['=' or '+' or '-' or '@', ..] && !double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out _) ? "'" + text : text;
        return $"\"{harmless.Replace("\"", "\"\"")}\"";
    }

    static PrintOut Solid(string name, Body body) => new($"{name}.stl", "model/stl", Stl.Binary(body.ToMesh(), name));

    static DateOnly Day(KitRequest request) => request.Created is { } created ? DateOnly.FromDateTime(created.Date) : request.Title.Date ?? DateOnly.MinValue;

    static TitleFields TitleOf(KitRequest request, Piece piece) =>
        request.Title with
        {
            Title = $"{request.Title.Title}: {piece.Name}",
            Thickness = LengthWriter.Write(piece.Thickness),
            Material = piece.Paper ? "paper, printed at full size" : request.Title.Material,
        };

    /// <summary>Letters, figures and dashes of a piece's name.</summary>
    static string Plain(string name) =>
        string.Join('-', string.Concat(name.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-')).Split('-', StringSplitOptions.RemoveEmptyEntries));
}
