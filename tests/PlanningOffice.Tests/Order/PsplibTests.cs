using WitnessMark.PlanningOffice.Order;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests.Order;

public class PsplibTests
{
    const string Sound = """
        jobs (incl. supersource/sink ):  4
          - nonrenewable              :  0   N
        PRECEDENCE RELATIONS:
        jobnr.    #modes  #successors   successors
           1        1          2           2   3
           2        1          1           4
           3        1          1           4
           4        1          0
        ************
        REQUESTS/DURATIONS:
        jobnr. mode duration  R 1
        ------------------------
          1      1     0       0
          2      1     3       2
          3      1     4       2
          4      1     0       0
        RESOURCEAVAILABILITIES:
          R 1
            3
        """;

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    [Truth(Grade.Property, "the two jobs need four of three, so one follows the other: 3 + 4 = 7")]
    public void A_sound_file_is_read_whatever_ends_its_lines(string end)
    {
        var project = Psplib.Read(Sound.ReplaceLineEndings(end)).Value;
        Assert.Equal(4, project.Activities.Length);
        Assert.Equal(7, Bounds.Of(project));
        Assert.Equal(4, Bounds.CriticalPath(project));
    }

    [Theory]
    [InlineData("   4        1          0", "   4        1          1           2", "ring")]
    [InlineData("  2      1     3       2", "  2      1    -3       2", "line 14, duration of job 2: \"-3\"")]
    [InlineData("  2      1     3       2", "  2      1     3       9", "line 14, need of job 2 for resource 1: \"9\"")]
    [InlineData("  2      1     3       2", "  2      1     3.5     2", "line 14, requests: \"3.5\"")]
    [InlineData("   2        1          1           4", "   2        2          1           4", "line 6, modes of job 2: \"2\"")]
    [InlineData("   2        1          1           4", "   2        1          1           7", "line 6, successor of job 2: \"7\"")]
    [InlineData("nonrenewable              :  0", "nonrenewable              :  2", "renewable")]
    [InlineData("  4      1     0       0\n", "", "requests")]
    [InlineData("RESOURCEAVAILABILITIES:\n  R 1\n    3", "", "RESOURCEAVAILABILITIES")]
    [InlineData("    3", "", "RESOURCEAVAILABILITIES")]
    [Truth(Grade.Property, "bad input is refused in one sentence that names line, field and value")]
    public void A_fault_is_named(string sound, string bad, string named)
    {
        var text = Sound.ReplaceLineEndings("\n");
        Assert.Contains(sound, text);
        Assert.Contains(named, Psplib.Read(text.Replace(sound, bad)).Refusal?.Sentence);
    }

    [Fact, Truth(Grade.Property, "a file cut anywhere is refused or read, never a crash")]
    public void A_file_cut_short_is_never_a_crash()
    {
        for (var length = 0; length < Sound.Length; length++) _ = Psplib.Read(Sound[..length]).Ok;
    }
}
