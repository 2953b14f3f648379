using System.Net;
using WitnessMark.Maths;
using WitnessMark.Tests;
using WitnessMark.Web.Pairing.Trust;

namespace WitnessMark.Web.Tests.Pairing;

[Truth(Grade.Property, "a key is readable by its owner alone from the moment it is made; what stands is read again and not made anew without need")]
public sealed class KeyFolderTests : IDisposable
{
    readonly string _folder = Path.Combine(Directory.CreateTempSubdirectory("wm-keys-").FullName, "records.db.keys");
    readonly DateTimeOffset _now = TimeProvider.System.GetUtcNow();

    static readonly IPAddress One = IPAddress.Parse("192.168.1.20"), Other = IPAddress.Parse("192.168.1.30");

    [Fact]
    public void Folder_and_files_are_their_owners_alone()
    {
        Open(One);
        Assert.Equal("rwx------", ModeOf(_folder));
        Assert.Equal(["authority.pem", "host.pem"], Directory.GetFiles(_folder).Select(Path.GetFileName).Order());
        Assert.All(Directory.GetFiles(_folder), f => Assert.Equal("rw-------", ModeOf(f)));
    }

    [Theory]
    [InlineData("authority.pem")]
    [InlineData("host.pem")]
    [InlineData("")]
    public void A_key_that_others_may_read_is_refused(string file)
    {
        if (OperatingSystem.IsWindows()) return;
        Open(One);
        var path = Path.Combine(_folder, file);
        File.SetUnixFileMode(path, File.GetUnixFileMode(path) | UnixFileMode.GroupRead);
        var refused = Assert.Throws<RefusedException>(() => Open(One));
        Assert.Contains(path.TrimEnd('/'), refused.Message);
        Assert.Contains("chmod", refused.Message);
    }

    [Fact]
    public void The_same_certificates_serve_at_the_next_start()
    {
        var (first, second) = (Open(One), Open(One));
        Assert.Equal((first.Fingerprint, first.Host.Thumbprint), (second.Fingerprint, second.Host.Thumbprint));
        Assert.Equal((true, false), (first.AuthorityIsNew, second.AuthorityIsNew));
        Assert.True(second.Host.HasPrivateKey);
        Assert.False(second.Authority.HasPrivateKey);
    }

    [Fact]
    public void Another_address_makes_another_host_certificate_under_the_same_authority()
    {
        var (first, second) = (Open(One), Open(Other));
        Assert.Equal(first.Fingerprint, second.Fingerprint);
        Assert.NotEqual(first.Host.Thumbprint, second.Host.Thumbprint);
        Assert.Contains(Other, second.Addresses);
        Assert.DoesNotContain(One, second.Addresses);
    }

    [Fact]
    public void A_host_certificate_near_its_end_is_made_anew_and_an_authority_too()
    {
        var first = Open(One);
        var nextYear = HouseTrust.Open(new(_folder), "bench-7", [One], _now.AddDays(380));
        Assert.Equal(first.Fingerprint, nextYear.Fingerprint);
        Assert.NotEqual(first.Host.Thumbprint, nextYear.Host.Thumbprint);
        var later = HouseTrust.Open(new(_folder), "bench-7", [One], _now.AddYears(10));
        Assert.NotEqual(first.Fingerprint, later.Fingerprint);
        Assert.True(later.AuthorityIsNew);
    }

    [Fact]
    public void A_torn_host_file_is_made_anew_and_a_torn_authority_is_told()
    {
        var first = Open(One);
        Tear("host.pem");
        Assert.NotEqual(first.Host.Thumbprint, Open(One).Host.Thumbprint);
        Tear("authority.pem");
        Assert.Contains("holds no authority", Assert.Throws<RefusedException>(() => Open(One)).Message);
    }

    [Fact]
    public void A_clock_that_is_years_behind_is_told()
    {
        Open(One);
        Assert.Contains("set the clock right", Assert.Throws<RefusedException>(() => HouseTrust.Open(new(_folder), "bench-7", [One], _now.AddYears(-3))).Message);
    }

    [Fact]
    public void What_a_killed_process_left_half_is_cleared_away()
    {
        Open(One);
        File.WriteAllText(Path.Combine(_folder, "host.pem.0.half"), "half");
        Open(One);
        Assert.Equal(2, Directory.GetFiles(_folder).Length);
    }

    HouseTrust Open(IPAddress address) => HouseTrust.Open(new(_folder), "bench-7", [address], _now);

    void Tear(string file)
    {
        var path = Path.Combine(_folder, file);
        using var open = new FileStream(path, FileMode.Open);
        open.SetLength(open.Length / 3);
    }

    static string ModeOf(string path)
    {
        if (OperatingSystem.IsWindows()) throw new PlatformNotSupportedException("Windows has no such modes.");
        var mode = (int)File.GetUnixFileMode(path);
        return string.Concat("rwxrwxrwx".Select((letter, i) => (mode >> (8 - i) & 1) == 1 ? letter : '-'));
    }

    public void Dispose() => Directory.Delete(Path.GetDirectoryName(_folder)!, recursive: true);
}
