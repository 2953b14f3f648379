namespace WitnessMark.Stores;

/// <summary>A sample that belongs to someone else and goes back by a date.</summary>
public sealed record Loan(string Lender, DateOnly Lent, DateOnly Due)
{
    /// <summary>Negative once it is overdue.</summary>
    public int DaysLeft(DateOnly today) => Due.DayNumber - today.DayNumber;

    /// <summary>One plain sentence: whose it is, when it goes back, and what must be read before.</summary>
    public string Words(DateOnly today, int stillMissing)
    {
        var when = DaysLeft(today) switch
        {
            < -1 and var d => $"was due back on {Due:yyyy-MM-dd}, {-d} days ago",
            -1 => $"was due back yesterday ({Due:yyyy-MM-dd})",
            0 => "goes back today",
            1 => $"goes back tomorrow ({Due:yyyy-MM-dd})",
            var d => $"goes back on {Due:yyyy-MM-dd}, in {d} days",
        };
        var missing = stillMissing switch
        {
            0 => "nothing on the list is still to be read",
            1 => "one reading is still missing",
            var n => $"{n} readings are still missing",
        };
        return $"Lent by {Lender}; {when}; {missing}.";
    }
}
