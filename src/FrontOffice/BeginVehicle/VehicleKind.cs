using System.Collections.Immutable;

namespace WitnessMark.FrontOffice.BeginVehicle;

/// <summary>A system to tick, and whether most vehicles of the kind have it.</summary>
public sealed record UsualSystem(string Name, bool Ticked = true);

/// <summary>What a kind of vehicle is usually made up of, in the words of the trade; a list to tick, not one to keep to.</summary>
public sealed record VehicleKind(string Name, ImmutableArray<UsualSystem> Systems)
{
    public static ImmutableArray<VehicleKind> All { get; } =
    [
        new("Car or van", Of("Chassis and steering", "Engine", "Cooling", "Fuel and exhaust", "Clutch and gearbox", "Front axle", "Rear axle and propeller shaft", "Brakes", "Wheels and tyres", "Electrics", "Body", "Trim and upholstery", "?Hood and side screens", "?Instruments and controls")),
        new("Motorcycle", Of("Frame and forks", "Engine", "Fuel and exhaust", "Clutch and gearbox", "Chains and sprockets", "Brakes", "Wheels and tyres", "Electrics", "Tank and tinware", "Controls and cables", "?Sidecar")),
        new("Tractor", Of("Frame and steering", "Engine", "Cooling", "Fuel and exhaust", "Clutch and gearbox", "Front axle", "Rear axle and final drives", "Brakes", "Wheels and tyres", "Electrics", "Tinwork and seat", "?Power take-off and pulley", "?Lift and drawbar")),
    ];

    static ImmutableArray<UsualSystem> Of(params ReadOnlySpan<string> names) =>
        [.. names.ToArray().Select(n => new UsualSystem(n.TrimStart('?'), n[0] != '?'))];
}
