using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.PrintRoom.Pictorial;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>The kit of a shape that is rolled and bent from sheets laid flat.</summary>
static class SheetKit
{
    /// <param name="whole">The shape once round, for its picture.</param>
    public static Made Of(Asked asked, ImmutableArray<Laid> laid, Strip whole, Accuracy accuracy, IEnumerable<Caution> more)
    {
        ImmutableArray<Piece> pieces = [.. laid.Select(l => l.ToPiece(asked.Thickness, asked.Seam.Lap))];
        var kit = new Kit(asked.Title, pieces)
        {
            Shape = new Body([.. Shell.Of(whole, (1 - asked.Neutral) * asked.Thickness, asked.Neutral * asked.Thickness)], []),
            Seams = [.. laid.Select((l, i) => Words.Seam($"S{i + 1}", asked, l.Elements[^1].Length, laid.Length == 1 ? "both ends of the sheet" : "the two halves"))],
            Listings = [.. laid.Select(l => Lengths(l)), Words.Errors(accuracy)],
            Steps = Steps(asked, laid),
            Cautions = [.. more, .. Words.Outlines(pieces), .. Words.Safety],
        };
        return new(asked, kit, accuracy);
    }

    /// <summary>Each element: where it begins and ends along the two edges, its true length, how far it is turned.</summary>
    static Listing Lengths(Laid laid)
    {
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<string>>();
        var (first, second) = (0.0, 0.0);
        for (var i = 0; i < laid.Elements.Length; i++)
        {
            var e = laid.Elements[i];
            if (i > 0)
            {
                first += e.First.DistanceTo(laid.Elements[i - 1].First);
                second += e.Second.DistanceTo(laid.Elements[i - 1].Second);
            }
            rows.Add([$"{i}", Say.Mm(first), Say.Mm(second), Say.Mm(e.Length), i == 0 || i == laid.Elements.Length - 1 ? "seam" : Say.Degrees(e.Angle)]);
        }
        return new($"Elements of {laid.Name}", ["element", "along the first end", "along the second end", "true length", "bend up"], rows.ToImmutable());
    }

    static ImmutableArray<string> Steps(Asked asked, ImmutableArray<Laid> laid)
    {
        var bent = laid.Any(l => l.ToPiece(asked.Thickness, 0).Creases.Length > 0);
        return
        [
            "Check the sizes of both ends against what they must fit before cutting; " + Words.Layer(asked) + ".",
            $"Mark out {(laid.Length == 1 ? "the piece" : "both halves")} with the inside up and scribe the elements lightly; on the outside a scribed line starts a crack.",
            "Cut out, file the edges smooth and flat, then form before any seam is joined.",
            .. bent ? ["Set the bends a little at a time along their elements, working from both ends towards the middle of the piece and trying it on a template of each end."] : ImmutableArray<string>.Empty,
            "Roll the curved parts along the elements, which are straight: keep each one parallel to the roll or the bar as it goes through.",
            "Bring the seam together without force, true up both ends, tack, check both ends and the height again, then join.",
        ];
    }
}
