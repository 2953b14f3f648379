using CsCheck;
using WitnessMark.Maths;
using WitnessMark.Stores.ComingApart;
using WitnessMark.Tests;

namespace WitnessMark.Stores.Tests.ComingApart;

public class RefitOrderTests
{
    static readonly Gen<(int Parts, (int First, int Then)[] Links)> Graphs =
        from n in Gen.Int[2, 9]
        from links in Gen.Select(Gen.Int[0, n - 1], Gen.Int[0, n - 1]).Where(l => l.Item1 != l.Item2).Array[0, 14]
        select (n, links.Select(l => (l.Item1, l.Item2)).ToArray());

    static Guid Id(int n) => new(n + 1, 0, 0, new byte[8]);

    static RefitPlan Plan((int Parts, (int First, int Then)[] Links) g) => RefitOrder.Of(
        [.. Enumerable.Range(0, g.Parts).Select(n => new RefitPart(Id(n), $"p{n}", null))],
        [.. g.Links.Select(l => new RefitLink(Id(l.First), Id(l.Then), "so"))]);

    /// <summary>Length of the shortest walk between any two parts (Floyd and Warshall); the diagonal holds the shortest ring.</summary>
    static int[,] Walks((int Parts, (int First, int Then)[] Links) g)
    {
        var d = new int[g.Parts, g.Parts];
        for (var i = 0; i < g.Parts; i++) for (var j = 0; j < g.Parts; j++) d[i, j] = 1000;
        foreach (var (first, then) in g.Links) d[first, then] = 1;
        for (var k = 0; k < g.Parts; k++)
            for (var i = 0; i < g.Parts; i++)
                for (var j = 0; j < g.Parts; j++) d[i, j] = Math.Min(d[i, j], d[i, k] + d[k, j]);
        return d;
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "Floyd and Warshall's all-pairs walks, written in the test")]
    public void The_order_keeps_every_wait_and_holds_up_just_those_behind_a_ring() => Graphs.Sample(g =>
    {
        var (plan, walks) = (Plan(g), Walks(g));
        var at = plan.Steps.Select((s, i) => (s.Part.Id, i)).ToDictionary(p => p.Id, p => p.i);
        for (var n = 0; n < g.Parts; n++)
        {
            var held = Enumerable.Range(0, g.Parts).Any(k => walks[k, k] < 1000 && (k == n || walks[k, n] < 1000));
            Assert.Equal(held, !at.ContainsKey(Id(n)));
            for (var m = 0; m < g.Parts; m++)
                if (!held && walks[m, n] < 1000) Assert.True(at[Id(m)] < at[Id(n)]);
        }
        var shortest = Enumerable.Range(0, g.Parts).Min(n => walks[n, n]);
        Assert.Equal(shortest >= 1000 ? 0 : shortest, plan.Loop.Length);
        for (var i = 0; i < plan.Loop.Length; i++) Assert.Equal(plan.Loop[i].First, plan.Loop[(i + 1) % plan.Loop.Length].Then);
    });

    [Fact]
    [Truth(Grade.Property, "a stage is the longest chain of waits before a part; those ready are those whose waits are done")]
    public void Stages_and_ready_parts_follow_the_waits()
    {
        var plan = Plan((4, [(0, 1), (1, 2), (0, 3)]));
        Assert.Equal([0, 1, 2, 1], Enumerable.Range(0, 4).Select(n => plan.Steps.Single(s => s.Part.Id == Id(n)).Stage));
        Assert.Equal([Id(0)], plan.Ready(new HashSet<Guid>()).Select(s => s.Part.Id));
        Assert.Equal([Id(1), Id(3)], plan.Ready(new HashSet<Guid> { Id(0) }).Select(s => s.Part.Id));
    }

    [Fact]
    [Truth(Grade.CommonPractice, "what came off last goes on first")]
    public void A_typed_list_is_turned_round()
    {
        var plan = RefitTable.Read("part,after,because\nbonnet,,\nradiator,bonnet,\nfan,radiator,\n");
        Assert.Equal(["fan", "radiator", "bonnet"], plan.Steps.Select(s => s.Part.Name));
        Assert.Null(plan.LoopWords);
    }

    [Fact]
    [Truth(Grade.Property, "a loop is told with its reasons")]
    public void A_loop_is_told_in_words()
    {
        var plan = RefitTable.Read("part,after,because,when\nradiator,bonnet,it lies under it,off\nradiator,bonnet,the gap is set to it,on\ngrille,,,\n");
        Assert.Equal("No order serves: the radiator waits for the bonnet (because the gap is set to it), which waits for the radiator (because it lies under it). Take one of these reasons back.", plan.LoopWords);
        Assert.Equal(["grille"], plan.Steps.Select(s => s.Part.Name));
        Assert.Contains("line 2", Assert.Throws<RefusedException>(() => RefitTable.Read("part,after,because\nfan,fan,\n")).Message);
    }

    [Theory]
    [InlineData("bolt", 4, 3, "one of the four bolts of the hinge is not here")]
    [InlineData("bolt", 4, 0, "none of the four bolts of the hinge is here")]
    [InlineData("split pin", 1, 0, "the split pin of the hinge is not here")]
    [InlineData("bush", 2, 0, "both bushes of the hinge are not here")]
    [InlineData("bolt", 4, 5, "five bolts lie in the bag of the hinge, where four belong")]
    [Truth(Grade.Property, "counted and said in English")]
    public void What_is_not_here_stands_out(string what, int wanted, int here, string words)
    {
        var off = new OffPart(Id(1), default, "", "", [new(what, "", null, "", wanted, here), new("nut", "", null, "", 2, 2)], [], "", "", [], [], []);
        Assert.Equal(words, Assert.Single(Shortfall.Of([off], _ => "hinge")).Words);
    }
}
