using System.Collections.Immutable;
using System.Net;
using WitnessMark.Web.Hosting;
using WitnessMark.Web.Pairing.Trust;

namespace WitnessMark.Web.Tests.Pairing;

public sealed class LanOptionsTests
{
    static readonly ImmutableArray<IPAddress> Own = [IPAddress.Parse("192.168.1.20"), IPAddress.Parse("fd00::20")];

    [Fact]
    public void The_network_is_served_only_when_asked_for()
    {
        Assert.Empty(ServeOptions.Of(new(5170), Own).Value.Lan);
        var lan = ServeOptions.Of(new(5170, Lan: true), Own).Value;
        Assert.Equal((5171, Own), (lan.LanPort, lan.Lan));
        Assert.Equal([Own[0]], ServeOptions.Of(new(5170, Lan: true, LanAddress: "192.168.1.20"), Own).Value.Lan);
    }

    [Theory]
    [InlineData(true, 0, null, "--lan-port: \"0\" is not accepted; write a port from 1 to 65535.")]
    [InlineData(true, 5170, null, "--lan-port: \"5170\" is not accepted; it is the port of this machine itself, write another.")]
    [InlineData(false, 6000, null, "--lan-port: \"6000\" is not accepted; write --lan too.")]
    [InlineData(false, null, "192.168.1.20", "--lan-address: \"192.168.1.20\" is not accepted; write --lan too.")]
    [InlineData(true, null, "0.0.0.0", "--lan-address: \"0.0.0.0\" is not accepted; write one of this machine's private addresses, such as 192.168.1.20; a public one is never served.")]
    [InlineData(true, null, "8.8.8.8", "--lan-address: \"8.8.8.8\" is not accepted; write one of this machine's private addresses, such as 192.168.1.20; a public one is never served.")]
    [InlineData(true, null, "shed", "--lan-address: \"shed\" is not accepted; write one of this machine's private addresses, such as 192.168.1.20; a public one is never served.")]
    [InlineData(true, null, "192.168.9.9", "--lan-address: \"192.168.9.9\" is not accepted; this machine has 192.168.1.20, fd00::20.")]
    public void What_is_asked_wrongly_is_refused_in_one_sentence(bool lan, int? port, string? address, string sentence) =>
        Assert.Equal(sentence, ServeOptions.Of(new(5170, Lan: lan, LanPort: port, LanAddress: address), Own).Refusal?.Sentence);

    [Fact]
    public void A_machine_without_a_private_address_is_told() =>
        Assert.StartsWith("--lan: this machine has no private address", ServeOptions.Of(new(5170, Lan: true), []).Refusal?.Sentence);

    [Fact]
    public void This_machines_own_addresses_are_private_ones() => Assert.All(HouseNet.OwnAddresses(), a => Assert.True(HouseNet.IsPrivate(a)));

    [Fact]
    public async Task A_port_of_the_network_that_is_in_use_is_told()
    {
        await using var first = await HostProcess.StartForDevices();
        var (code, errors) = await HostProcess.Run(["--port", "0", "--db", first.Database + ".other", "--lan", "--lan-address", "127.0.0.1", "--lan-port", $"{first.LanAddress.Port}"]);
        Assert.Equal(2, code);
        Assert.StartsWith($"--lan-port: \"{first.LanAddress.Port}\" is in use", errors);
    }
}
