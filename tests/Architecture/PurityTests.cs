using System.Reflection;
using System.Xml.Linq;
using NetArchTest.Rules;

namespace WitnessMark.Tests.Architecture;

/// <summary>Maths to FrontOffice run unchanged in a browser: streams and strings in and out, nothing native, no thread, no socket.</summary>
public class PurityTests
{
    static readonly string[] Impure =
    [
        "System.IO.File", "System.IO.FileInfo", "System.IO.FileStream", "System.IO.Directory", "System.IO.DirectoryInfo",
        "System.Diagnostics.Process", "System.Net", "System.Threading.Thread", "System.Console", "Microsoft.Data", "Microsoft.EntityFrameworkCore",
    ];

    /// <summary>Packages of managed code alone, without dependencies of their own, that run in the browser as they are.</summary>
    static readonly string[] Managed = ["JpegLibrary", "QRCoder"];

    public static TheoryData<string> PureRooms => [.. House.PureRooms];

    [Theory]
    [MemberData(nameof(PureRooms))]
    public void No_file_process_socket_or_thread(string room)
    {
        var result = Types.InAssembly(House.Assembly(room)).ShouldNot().HaveDependencyOnAny(Impure).GetResult();
        Assert.True(result.IsSuccessful, $"{room}: {string.Join(", ", result.FailingTypeNames ?? [])}");
    }

    [Theory]
    [MemberData(nameof(PureRooms))]
    public void No_call_into_native_code(string room)
    {
        const BindingFlags all = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly;
        var native = House.Assembly(room).GetTypes().SelectMany(t => t.GetMethods(all))
            .Where(m => m.Attributes.HasFlag(MethodAttributes.PinvokeImpl));
        Assert.Empty(native);
    }

    [Theory]
    [MemberData(nameof(PureRooms))]
    public void No_package_but_the_managed_ones_comes_into_a_pure_room(string room) =>
        Assert.Empty(XDocument.Parse(House.Read($"src/{room}/{room}.csproj")).Descendants("PackageReference")
            .Select(p => $"{p.Attribute("Include")?.Value}").Except(Managed));

    [Fact]
    public void A_planted_file_access_is_found() =>
        Assert.False(Types.InAssembly(typeof(House).Assembly).That().HaveName(nameof(House))
            .ShouldNot().HaveDependencyOnAny(Impure).GetResult().IsSuccessful);
}
