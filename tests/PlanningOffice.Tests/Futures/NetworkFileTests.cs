using System.Text;
using WitnessMark.PlanningOffice.Futures;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests.Futures;

public sealed class NetworkFileTests
{
    [Theory]
    [InlineData("{\n \"activities\": [\n}", "line 3")]
    [InlineData("[]", "activities")]
    [InlineData("{\"activities\":[{\"id\":\"A\",\"predecessors\":[],\"duration\":{\"type\":\"uniform\"}}]}", "\"uniform\"")]
    [InlineData("{\"activities\":[{\"id\":\"A\",\"predecessors\":[],\"duration\":{\"type\":\"gamma\",\"shape\":\"2\",\"scale\":1}}]}", "shape")]
    [InlineData("{\"activities\":[{\"id\":\"A\",\"predecessors\":[],\"duration\":{\"type\":\"gamma\",\"shape\":-2,\"scale\":1}}]}", "activity A, shape")]
    [InlineData("{\"activities\":[{\"id\":\"A\",\"predecessors\":[],\"duration\":{\"type\":\"pert_beta\",\"low\":3,\"mode\":2,\"high\":5}}]}", "rise")]
    [InlineData("{\"activities\":[{\"id\":\"A\",\"predecessors\":\"B\",\"duration\":{\"type\":\"exponential\",\"mean\":1}}]}", "predecessors")]
    [InlineData("{\"activities\":[{\"id\":\"A\",\"predecessors\":[\"B\"],\"duration\":{\"type\":\"exponential\",\"mean\":1}}]}", "\"B\"")]
    [InlineData("{\"activities\":[{\"predecessors\":[]}]}", "activity 1, id")]
    [InlineData("{\"activities\":[]}", "at least one")]
    [InlineData("{\"activities\":[{\"id\":\"A\",\"predecessors\":[],\"duration\":{\"type\":\"exponential\",\"mean\":1e308}}]}", "no larger than 1e15")]
    [InlineData("", "not JSON")]
    [Truth(Grade.Property, "bad files are refused in one sentence that names the place")]
    public void Bad_files_are_refused_in_words(string json, string named) =>
        Assert.Contains(named, NetworkFile.Read(Encoding.UTF8.GetBytes(json)).Refusal!.Sentence);

    [Fact]
    [Truth(Grade.Published, "RFC 8259, section 8.1: a reader may pass over a byte order mark")]
    public void A_byte_order_mark_is_passed_over() =>
        Assert.True(NetworkFile.Read((byte[])[0xEF, 0xBB, 0xBF, .. "{\"activities\":[{\"id\":\"A\",\"predecessors\":[],\"duration\":{\"type\":\"exponential\",\"mean\":1}}]}"u8]).Ok);
}
