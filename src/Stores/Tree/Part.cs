namespace WitnessMark.Stores;

/// <summary>Which side a part belongs to. LH and RH are as seen from the driver's seat, looking forward.</summary>
public enum Hand { None, LH, RH }

/// <summary>A part of the vehicle.</summary>
/// <param name="Reference">The maker's numbers or whatever else it is known by, as typed; several are parted by <c>;</c>.</param>
/// <param name="Quantity">How many the vehicle carries, at least 1.</param>
/// <param name="Condition">As found, in the person's words.</param>
/// <param name="Route">How it will be made good; null while undecided.</param>
/// <param name="AssemblyId">The assembly of its system that it belongs to; null when it belongs to the system directly.</param>
public sealed record Part(
    Guid Id, Guid SystemId, string Name, string Reference, Hand Hand, int Quantity, string Condition, RouteDecision? Route,
    Guid? AssemblyId = null);
