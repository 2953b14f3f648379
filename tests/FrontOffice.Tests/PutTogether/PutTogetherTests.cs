using System.Text;
using WitnessMark.Maths;
using WitnessMark.Stores.ComingApart;
using Refit = WitnessMark.FrontOffice.PutTogether.PutTogether;

namespace WitnessMark.Tests.FrontOffice.PutTogether;

[Truth(Grade.Property, "what is back on is done unless it came off again; what is short is told while it is off")]
public sealed class PutTogetherTests
{
    static readonly Guid Van = Guid.NewGuid();

    static Guid Id(int n) => new(n, 0, 0, new byte[8]);

    static DateTimeOffset At(int day) => new(2031, 3, day, 0, 0, 0, TimeSpan.Zero);

    static CameOff Off(int part, int day, params int[] after) =>
        new(Guid.NewGuid(), Van, Id(part), At(day), "phone", [], "", "", [new("bolt", "1/4 BSF", null, "", 4, 3)], [], "", "", "", [.. after.Select(Id)]);

    static PutBack Back(int part, int day) => new(Guid.NewGuid(), Van, Id(part), At(day), "phone", "", []);

    [Fact]
    public void Back_on_counts_until_it_comes_off_again()
    {
        CameOff[] off = [Off(1, 1), Off(2, 2, 1)];
        var result = Refit.Of(off, [], [Back(2, 5)], id => id == Id(1) ? "bonnet" : "radiator");
        Assert.Equal(["bonnet"], result.Ready.Select(s => s.Part.Name));
        Assert.Equal(["one of the four bolts 1/4 BSF of the bonnet is not here"], result.Missing);
        var again = Refit.Of([.. off, Off(2, 6)], [], [Back(2, 5)], id => $"{id}");
        Assert.Equal([Id(2)], again.Ready.Select(s => s.Part.Id));
        Assert.Equal(2, again.Missing.Length);
    }

    [Fact]
    public void A_list_in_another_encoding_is_refused_by_its_line() =>
        Assert.Contains("line 2", Assert.Throws<RefusedException>(() => Refit.Read([.. Encoding.ASCII.GetBytes("part,after,because\nk"), 0xFC, .. "hler,,"u8])).Message);
}
