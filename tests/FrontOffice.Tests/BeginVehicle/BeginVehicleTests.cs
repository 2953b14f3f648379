using WitnessMark.FrontOffice.BeginVehicle;
using WitnessMark.Maths;
using WitnessMark.Stores;

namespace WitnessMark.Tests.FrontOffice.BeginVehicle;

using BeginVehicle = WitnessMark.FrontOffice.BeginVehicle.BeginVehicle;

public class BeginVehicleTests
{
    static Begun Begin(string parts, string year = "", string name = "Shed van", params string[] systems) =>
        BeginVehicle.Run(new(name, "", "", year, [.. systems], parts), Guid.NewGuid);

    [Fact]
    public void A_name_alone_begins_a_vehicle()
    {
        var begun = Begin("");
        Assert.Equal(("Shed van", null, 0), (begun.Vehicle.Name, begun.Vehicle.Year, begun.Changes.Count));
        Assert.StartsWith("vehicle name: nothing is given", Assert.Throws<RefusedException>(() => Begin("", name: " ")).Message, StringComparison.Ordinal);
        Assert.StartsWith("year: \"about 1930\"", Assert.Throws<RefusedException>(() => Begin("", "about 1930")).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Jotted_parts_go_to_the_systems_named_above_them_with_side_and_number()
    {
        var begun = Begin("Starter\n\nbrakes\n- Brake shoe, LH + RH x 2\nPedal\n\nLamps:\nHeadlamp bracket RH\nBulb × 6", "1931", "Shed van", "Engine", "Brakes");
        var names = begun.Changes.Systems.ToDictionary(s => s.Row.Id, s => s.Row.Name);
        Assert.Equal(["Engine", "Brakes", BeginVehicle.Unsorted, "Lamps"], begun.Changes.Systems.Select(s => s.Row.Name));
        Assert.Equal(
            [("Starter", Hand.None, 1, BeginVehicle.Unsorted), ("Brake shoe", Hand.LH, 2, "Brakes"), ("Brake shoe", Hand.RH, 2, "Brakes"), ("Pedal", Hand.None, 1, "Brakes"), ("Headlamp bracket", Hand.RH, 1, "Lamps"), ("Bulb", Hand.None, 6, "Lamps")],
            begun.Changes.Parts.Select(p => (p.Row.Name, p.Row.Hand, p.Row.Quantity, names[p.Row.SystemId])));
        Assert.Equal("Shed van: 4 systems, 6 parts.", begun.Words);
    }

    [Fact]
    public void A_line_that_cannot_be_a_part_is_named_by_its_number()
    {
        Assert.StartsWith("line 2, ", Assert.Throws<RefusedException>(() => Begin($"Pedal\n{new string('x', 5000)}")).Message, StringComparison.Ordinal);
        Assert.StartsWith("line 1, quantity", Assert.Throws<RefusedException>(() => Begin("Pedal x 0")).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_kind_ticks_most_of_its_systems_and_names_none_twice()
    {
        Assert.All(VehicleKind.All, k =>
        {
            Assert.Equal(k.Systems.Length, k.Systems.Select(s => s.Name).Distinct(StringComparer.OrdinalIgnoreCase).Count());
            Assert.InRange(k.Systems.Count(s => s.Ticked), 8, k.Systems.Length - 1);
        });
    }
}
