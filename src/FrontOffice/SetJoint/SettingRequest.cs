using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Fabrication;
using WitnessMark.DrawingOffice.Forming;
using WitnessMark.Trade;

namespace WitnessMark.FrontOffice.SetJoint;

/// <summary>Something that holds or checks an angle, a hole group or a bend.</summary>
public abstract record SettingRequest(string Title);

/// <summary>A block that holds two faces at their angle.</summary>
public sealed record AngleToolWanted(AngleTool Tool, string Fit) : SettingRequest(Tool.Name);

/// <summary>A sine bar on slips.</summary>
/// <param name="Angle">Radians.</param>
/// <param name="Bar">mm.</param>
/// <param name="Wear">Thickness of the wear block at each end, mm; 0: none.</param>
public sealed record SineWanted(string Title, double Angle, double Bar, SlipSet Set, string Grade, double Wear) : SettingRequest(Title);

/// <summary>A plate that guides drills.</summary>
public sealed record JigWanted(string Title, ImmutableArray<JigHole> Holes, bool BothHands, string Fit) : SettingRequest(Title);

/// <summary>A block to hammer over, its radius and angle as they are to be on the tool.</summary>
public sealed record FormToolWanted(FormTool Tool, string Fit) : SettingRequest(Tool.Name)
{
    /// <summary>What spring-back was allowed for; null when the tool's own figures were given.</summary>
    public Overbend? Overbend { get; init; }
}
