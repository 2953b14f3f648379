namespace WitnessMark.PlanningOffice.Order.Search;

/// <summary>One order of the population: the list, which activities wait for their standing start, and what comes of it.</summary>
sealed class Member(int count)
{
    public int[] List { get; } = new int[count];

    public bool[] Held { get; } = new bool[count];

    public int[] Starts { get; } = new int[count];

    public int Makespan { get; set; }

    public double Cost { get; set; } = double.PositiveInfinity;

    public bool Same(Member other) => Cost == other.Cost && Starts.AsSpan().SequenceEqual(other.Starts);
}
