using System.Reflection;
using System.Runtime.CompilerServices;

namespace WitnessMark.Tests.Architecture;

/// <summary>Data are immutable: no type in a pure room shows a setter or a field that can be written after it is made.</summary>
public class ImmutabilityTests
{
    public static TheoryData<string> PureRooms => [.. House.PureRooms];

    [Theory]
    [MemberData(nameof(PureRooms))]
    public void Public_types_cannot_be_written_to(string room) =>
        Assert.Empty(House.Assembly(room).GetExportedTypes().SelectMany(Writable));

    [Fact]
    public void A_planted_setter_and_field_are_found() =>
        Assert.Equal(["Planted.Field", "Planted.Settable"], Writable(typeof(Planted)).Order());

    static IEnumerable<string> Writable(Type type)
    {
        const BindingFlags own = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
        var setters = type.GetProperties(own).Where(p => p.SetMethod is { IsPublic: true } set && !IsInit(set)).Select(p => p.Name);
        var fields = type.GetFields(own).Where(f => !f.IsInitOnly && !f.IsLiteral && !type.IsEnum).Select(f => f.Name);
        return setters.Concat(fields).Select(n => $"{type.Name}.{n}");
    }

    static bool IsInit(MethodInfo set) =>
        set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit));

    sealed class Planted
    {
        public int Field = 1;
        public int Settable { get; set; }
        public int Fixed { get; init; }
    }
}
