using WitnessMark.DrawingOffice.Forming;
using WitnessMark.DrawingOffice.Sheetwork;

namespace WitnessMark.FrontOffice.SetBend;

/// <summary>What the bend asks of metal, tools and hands.</summary>
static class SetBendCautions
{
    /// <summary>A trial bend tells of radii near its own, as a ratio.</summary>
    const double FarFromTrial = 2;

    public static IEnumerable<Caution> Of(SetBendResult result)
    {
        var request = result.Request;
        // Doubts about the table's yield fall away once the sheet itself was tried.
        foreach (var caution in result.ByTrial is null ? result.Overbend.Cautions : []) yield return caution;
        if (request.Trial is { } trial && (trial.SetRadius > FarFromTrial * result.Radius || trial.SetRadius < result.Radius / FarFromTrial))
            yield return new(CautionKind.OutsideRange, $"The trial was bent round {trial.SetRadius:0.0#} mm and the part is round {result.Radius:0.0#} mm: try a strip nearer to it.", [], trial.SetRadius, result.Radius);
        if (result.LeastRadius is { } least && request.Wanted.Radius < least)
            yield return new(CautionKind.SharpRadius,
                $"An inside radius of {request.Wanted.Radius:0.0#} mm is sharper than the {least:0.0#} mm that the sheet's elongation is sure of with the bend {Lies(request.Grain)} the grain (a cautious rule): try a strip.",
                [], request.Wanted.Radius, least);
        if (request.Grain != Grain.Across)
            yield return new(CautionKind.SharpRadius, "Lay the blank so that the bend runs across the grain wherever you can: along it the sheet cracks soonest.", []);
        foreach (var caution in Tools(result)) yield return caution;
        if (request.Hot)
            foreach (var caution in Heat.Cautions(request.Material)) yield return caution;
        if (request.Material.Family == "spring steel")
            yield return new(CautionKind.Safety, "Hardened spring steel breaks without warning and flies: screen, goggles, and a spring maker for anything that carries load.", []);
        yield return new(CautionKind.Safety, "Folder and press crush fingers: hands off the beam while it moves, and nobody else at the controls.", []);
    }

    static IEnumerable<Caution> Tools(SetBendResult result)
    {
        var (wanted, shop) = (result.Request.Wanted, result.Request.Shop);
        // What no tool bends needs no word on this folder's reach. By the table's yield the bend's own cautions have said it.
        var past = Overbend.PastFlat(result.Angle, result.ByTrial is null ? result.Overbend.Angle.High : result.Angle);
        if (result.ByTrial is not null && past is not null) yield return past;
        if (shop.Folder is { } f)
        {
            if (result.AsMildSteel > f.MaxThickness)
                yield return new(CautionKind.TooThick, $"This sheet asks as much of the {f.Name} as {result.AsMildSteel:0.0#} mm of mild steel; it takes {f.MaxThickness:0.0#} mm.", [], result.AsMildSteel, f.MaxThickness);
            if (wanted.Length > f.Width)
                yield return new(CautionKind.TooWide, $"The bend is {wanted.Length:0} mm long; the {f.Name} takes {f.Width:0} mm.", [], wanted.Length, f.Width);
            if (result.Angle > f.MaxAngle && past is null)
                yield return new(CautionKind.CannotBend, $"It must be bent to {Degrees(result.Angle)}; the {f.Name} goes to {Degrees(f.MaxAngle)}. Finish it by hand over a bar.", [], result.Angle, f.MaxAngle);
        }
        if (shop.Vice is { } v && wanted.Length <= v.JawWidth && result.AsMildSteel > v.MaxThickness)
            yield return new(CautionKind.TooThick, $"Too thick for the {v.Name} too: it takes {v.MaxThickness:0.0#} mm of mild steel.", [], result.AsMildSteel, v.MaxThickness);
        if (shop.Folder is null && shop.Vice is null) yield return new(CautionKind.CannotBend, "The shop has neither folder nor vice.", []);
    }

    static string Lies(Grain grain) => grain switch { Grain.Along => "along", Grain.Slanting => "slanting to", _ => "across" };

    static string Degrees(double radians) => $"{radians * 180 / Math.PI:0.0}°";
}
