namespace WitnessMark.Stores;

/// <summary>The vehicle under restoration. Ids are made where the row is made, so that a phone needs no server to begin.</summary>
/// <param name="Year">Year built, where known.</param>
public sealed record Vehicle(Guid Id, string Name, string Maker, string Model, int? Year, string Notes);

/// <summary>A system of the vehicle (brakes, body, engine ...), in the order it is listed.</summary>
public sealed record VehicleSystem(Guid Id, Guid VehicleId, string Name, int Order);

/// <summary>An assembly of a system (rear axle, gear lever and its gate), in the order it is listed.</summary>
public sealed record Assembly(Guid Id, Guid SystemId, string Name, int Order);
