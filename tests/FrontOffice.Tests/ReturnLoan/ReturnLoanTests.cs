using WitnessMark.FrontOffice.ReturnLoan;
using WitnessMark.Maths;
using WitnessMark.Stores.Loans;
using static WitnessMark.Tests.FrontOffice.ReturnLoan.Lent;
using Loans = WitnessMark.FrontOffice.ReturnLoan.ReturnLoan;

namespace WitnessMark.Tests.FrontOffice.ReturnLoan;

public sealed class ReturnLoanTests
{
    static readonly (string, double, double)[] Square = [("P1", 0, 0), ("P2", 40, 0), ("P3", 40, 30), ("P4", 0, 30)];

    /// <summary>Sides and diagonals of a rectangle 40 by 30: a 3-4-5 triangle.</summary>
    static LoanRequest Plate() => Holes(Square, Reading("P1", "P2", "40.00"), Reading("P2", "P3", "30.00"), Reading("P3", "P4", "40.00"), Reading("P4", "P1", "30.00"), Reading("P1", "P3", "50.00"), Reading("P2", "P4", "50.00"));

    [Fact]
    [Truth(Grade.Property, "demo/README.md: two readings are still to be taken, and H6 hangs on one distance until they are")]
    public void The_borrowed_bracket_is_ready_once_what_the_list_names_is_done()
    {
        var bracket = Demo("headlamp-bracket.csv") with { Photographs = [] };
        Assert.Equal([PointKind.Wanted, PointKind.Wanted, PointKind.Loose, PointKind.Photograph], bracket.Points().Select(p => p.Kind));
        Assert.Contains("H6", bracket.Points()[2].Words);
        // The two readings of the list hold H6, and the survey then sees that nothing checks its size: the three lie in one direction.
        var listed = bracket.And(bracket.ByPlan("inside between holes", "H1", "H6"), bracket.ByPlan("inside between holes", "H5", "H6")) with { Photographs = [Photograph] };
        Assert.Equal([PointKind.Unchecked, PointKind.Unsure], listed.Points().Select(p => p.Kind));
        var done = listed.And(bracket.ByPlan("outside over holes", "H3", "H6"), Reading("H6", "", "8.06", "diameter"));
        var standing = Loans.Run(done).Standing;
        Assert.Equal([], standing.Open.Select(p => p.Words));
        Assert.Equal((true, "Ready to go back to Wendeline Orrick: nothing is open."), (standing.Ready, standing.Words));
    }

    [Fact]
    [Truth(Grade.Property, "demo/README.md: the reading between holes H6 and H3 was made 2 mm too small")]
    public void A_doubtful_reading_is_open_until_it_is_read_again()
    {
        var plate = Demo("dynamo-plate.csv");
        var doubtful = Assert.Single(plate.Points(), p => p.Kind == PointKind.Doubtful);
        Assert.Contains("H6 – H3", doubtful.Words);
        var misread = plate.History.Readings.Single(r => (r.From, r.To) is ("H6", "H3") or ("H3", "H6"));
        Assert.DoesNotContain(plate.And(plate.ByPlan(misread.Kind, misread.From, misread.To)).Points(), p => p.Kind == PointKind.Doubtful);
    }

    [Fact]
    [Truth(Grade.Property, "a triangle of three distances has as many readings as unknown shapes: none checks another")]
    public void Readings_that_nothing_checks_are_told_until_one_does()
    {
        var plate = Holes(Square[..3], Reading("P1", "P2", "40.00"), Reading("P2", "P3", "30.00"), Reading("P1", "P3", "50.00"));
        Assert.Equal(PointKind.Unchecked, Assert.Single(plate.Points()).Kind);
        // A reading that was taken twice over in one cell is checked by itself; the other two are not.
        var twice = Holes(Square[..3], Reading("P1", "P2", "40.00; 40.02"), Reading("P2", "P3", "30.00"), Reading("P1", "P3", "50.00"));
        Assert.Contains("these 2 readings", Assert.Single(twice.Points()).Words);
        Assert.Empty(Plate().Points());
    }

    [Fact]
    [Truth(Grade.Property, "two circles meet in two points: a place read from two others may lie on either side of their line")]
    public void A_second_shape_is_open_until_the_deciding_reading()
    {
        // P4 from P1 and P2 alone; each read twice, so that only the side is open.
        var plate = Holes(Square, Reading("P1", "P2", "40.00"), Reading("P2", "P3", "30.00"), Reading("P1", "P3", "50.00"), Reading("P1", "P2", "40.00"), Reading("P2", "P3", "30.00"), Reading("P1", "P3", "50.00"),
            Reading("P1", "P4", "30.00"), Reading("P2", "P4", "50.00"), Reading("P1", "P4", "30.00"), Reading("P2", "P4", "50.00"));
        Assert.All(plate.Points(), p => Assert.Equal((PointKind.Mirror, true), (p.Kind, p.Do.Contains("P3 – P4", StringComparison.Ordinal))));
        Assert.Contains(plate.Points(), p => p.Words.Contains("P4 may lie on either side of the line P1 – P2", StringComparison.Ordinal));
        Assert.Empty(plate.And(Reading("P3", "P4", "40.00")).Points());
    }

    [Fact]
    [Truth(Grade.Property, "a tape of ± 1 mm cannot give ± 0.1 mm; it can give ± 3 mm")]
    public void Dimensions_less_sure_than_wanted_are_told_by_feature()
    {
        var plate = Plate() with { History = new([.. Plate().History.Readings.Select(r => r with { Instrument = "tape" })], []) };
        var unsure = plate.Points();
        Assert.All(unsure, p => Assert.Equal(PointKind.Unsure, p.Kind));
        Assert.InRange(unsure.Length, 1, 3);
        Assert.Contains("wanted", Assert.Throws<RefusedException>(() => (plate with { WantedPlusMinus = 0 }).Points()).Message);
        Assert.Empty((plate with { WantedPlusMinus = 3 }).Points());
    }

    [Fact]
    [Truth(Grade.Property, "a rule cannot tell 5/16 in from 8 mm; demo/README.md: the stud with its pitch is 5/16 in BSF")]
    public void A_size_that_stays_undecided_is_open()
    {
        var rough = Plate().And(Reading("pin", "new", "8", "pin size", "rule"));
        Assert.Equal(PointKind.Size, Assert.Single(rough.Points()).Kind);
        Assert.StartsWith("pin: ", rough.Points()[0].Words);
        Assert.DoesNotContain(Demo("stud.csv").Points(), p => p.Kind == PointKind.Size);
    }

    [Fact]
    [Truth(Grade.Property, "what cannot be understood does not count, and is told")]
    public void An_entry_that_does_not_count_is_open()
    {
        var told = Assert.Single(Plate().And(Reading("P1", "P9", "12")).Points());
        Assert.Equal(PointKind.NotCounted, told.Kind);
        Assert.Contains("P9", told.Words);
        Assert.Equal(["nothing"], Holes([]).Points().Select(p => p.Key));
    }

    [Fact]
    [Truth(Grade.Property, "a decision counts for the point it was made about, and only while it stands")]
    public void A_point_may_be_left_with_a_reason_and_opened_again()
    {
        var plate = Holes(Square[..3], Reading("P1", "P2", "40.00"), Reading("P2", "P3", "30.00"), Reading("P1", "P3", "50.00"));
        var point = plate.Points().Single();
        var left = new NotNeeded(Guid.NewGuid(), Guid.NewGuid(), plate.Sample.Id, point.Key, point.Words, "it is only a spacer", Dropped: false);
        var standing = Loans.Run(plate with { NotNeeded = [left] }).Standing;
        Assert.Equal((true, "it is only a spacer"), (standing.Ready, standing.Points.Single().NotNeeded));
        Assert.Equal("Ready to go back to Wendeline Orrick: nothing is open; one point marked as not needed.", standing.Words);
        Assert.False(Loans.Run(plate with { NotNeeded = [left with { Dropped = true }] }).Standing.Ready);
        Assert.False(Loans.Run(plate with { NotNeeded = [left], Photographs = [] }).Standing.Ready);
        Assert.Contains("reason", (left with { Reason = " " }).Wrong()!.Sentence);
    }
}
