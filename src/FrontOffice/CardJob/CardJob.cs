using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Drafting;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.PlanningOffice;
using WitnessMark.PlanningOffice.Print;
using WitnessMark.PrintRoom;
using WitnessMark.Stores;
using WitnessMark.Trade;

namespace WitnessMark.FrontOffice.CardJob;

/// <summary>A flat part or a blank to be made in the person's shop.</summary>
/// <param name="Thickness">mm.</param>
public sealed record CardRequest(string Title, string Reference, FlatPart Part, double Thickness, Material Material, Shop Shop)
{
    /// <summary>The bends, when the part is folded.</summary>
    public ImmutableArray<BendLine> Bends { get; init; } = [];

    /// <summary>Diameter to drill a hole to, mm, by its id; null drills it as drawn.</summary>
    public Func<string, double?> MadeTo { get; init; } = _ => null;

    public int Quantity { get; init; } = 1;

    public ImmutableArray<WeldFacts> Welds { get; init; } = [];

    /// <summary>What the part itself brings: old paint, a tank, a brake or steering part.</summary>
    public ImmutableArray<Hazard> Hazards { get; init; } = [];
}

/// <summary>The route card, and every caution on it once.</summary>
public sealed record CardResult(RouteCard Card, BlankFacts Facts, string Reference, ImmutableArray<string> Cautions)
{
    /// <summary>The card on A4 sheets.</summary>
    public ImmutableArray<Sheet> Sheets(DateOnly printed) => JobCard.Sheets(Card, Reference, printed);

    /// <summary>The card as a job of a part.</summary>
    public Job AsJob(Guid id, Guid vehicle, Part part) => Job.Of(id, vehicle, part.SystemId, part.Id, Card);

    /// <inheritdoc cref="CardLanding.Of"/>
    public Versioned<Job> Landed(IEnumerable<Versioned<Job>> plan, Guid id, Guid vehicle, Part part) => CardLanding.Of(Card, plan, id, vehicle, part);
}

/// <summary>From a drawing and a shop to the card of the job: steps, stock, hours, money and cautions.</summary>
public static class CardJob
{
    /// <exception cref="Maths.RefusedException">A fact is out of its range.</exception>
    public static CardResult Run(CardRequest request)
    {
        var facts = Facts(request);
        var card = BlankRoute.Card(facts, request.Shop);
        return new(card, facts, request.Reference, [.. card.Cautions.Concat(card.Steps.SelectMany(s => s.Cautions)).Distinct()]);
    }

    static BlankFacts Facts(CardRequest r)
    {
        var (figures, box) = (FlatFigures.Of(r.Part), r.Part.Bounds);
        return new(
            r.Title, r.Material.Name, r.Thickness, r.Material.Density, r.Material.Ultimate.High ?? r.Material.Ultimate.Low ?? 0,
            box.Width, box.Height, figures.Area, figures.CutLength,
            [.. r.Bends.Select(b => new BendFacts(b.From.DistanceTo(b.To), b.InsideRadius, Math.Abs(b.Angle)))],
            [.. r.Part.Holes.GroupBy(h => Math.Round(r.MadeTo(h.Id) ?? h.Diameter.Value, 2)).Select(g => new HoleFacts(g.Key, g.Count()))],
            r.Welds, r.Quantity, r.Hazards);
    }
}
