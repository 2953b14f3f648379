using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.Maths;
using WitnessMark.Stores;

namespace WitnessMark.FrontOffice.BeginVehicle;

/// <summary>A vehicle to begin, as typed. Only the name is needed.</summary>
/// <param name="Parts">A part to a line; see <see cref="TypedParts"/>.</param>
public sealed record BeginRequest(string Name, string Maker, string Model, string Year, ImmutableArray<string> Systems, string Parts);

/// <summary>The vehicle, and all that goes into its tree at once.</summary>
public sealed record Begun(Vehicle Vehicle, TreeChanges Changes)
{
    public string Words => $"{Vehicle.Name}: {Count(Changes.Systems.Length, "system")}, {Count(Changes.Parts.Length, "part")}.";

    static string Count(int n, string one) => $"{n} {one}{(n == 1 ? "" : "s")}";
}

/// <summary>The first thing a new person does: a vehicle with its systems and first parts, all together or not at all.</summary>
public static class BeginVehicle
{
    /// <summary>Where parts stand whose system was not said.</summary>
    public const string Unsorted = "To be sorted";

    /// <param name="newId">Makes the ids: rows are born where they are typed.</param>
    /// <exception cref="RefusedException">Something typed is wrong; nothing is begun.</exception>
    public static Begun Run(BeginRequest request, Func<Guid> newId)
    {
        var vehicle = new Vehicle(newId(), request.Name.Trim(), request.Maker.Trim(), request.Model.Trim(), Year(request.Year), "");
        if (Check.Of(vehicle) is { } wrong) throw new RefusedException(wrong);
        var systems = new List<VehicleSystem>();
        foreach (var name in request.Systems) _ = System(name);
        var parts = ImmutableArray.CreateBuilder<RowChange<Part>>();
        foreach (var typed in TypedParts.Read(request.Parts, request.Systems))
        {
            var part = new Part(newId(), System(typed.System ?? Unsorted).Id, typed.Name, "", typed.Hand, typed.Quantity, "", null);
            if (Check.Of(part) is { } no) throw new RefusedException(no.OnLine(typed.Line));
            parts.Add(RowChange<Part>.Add(part));
        }
        return new(vehicle, new(vehicle.Id, [.. systems.Select(RowChange<VehicleSystem>.Add)], [], parts.ToImmutable()));

        VehicleSystem System(string name)
        {
            if (systems.FirstOrDefault(s => string.Equals(s.Name, name.Trim(), StringComparison.OrdinalIgnoreCase)) is { } known) return known;
            var system = new VehicleSystem(newId(), vehicle.Id, name.Trim(), systems.Count + 1);
            if (Check.Of(system) is { } no) throw new RefusedException(no);
            systems.Add(system);
            return system;
        }
    }

    static int? Year(string written) => written.Trim() is not { Length: > 0 } text ? null
        : int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var year) ? year
        : throw new RefusedException(Refusal.Of("year", written, "write the year in figures, or leave it empty"));
}
