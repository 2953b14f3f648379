namespace WitnessMark.Stores;

/// <summary>A decision as it stands. Version 1 is the first saving; 0 means never saved.</summary>
public readonly record struct Versioned<T>(T Row, int Version)
{
    /// <summary>The same version of what the row is read as.</summary>
    public Versioned<TTo> As<TTo>(Func<T, TTo> read) => new(read(Row), Version);
}

/// <summary>What came of a saving.</summary>
/// <param name="Standing">The row that stands now: the one sent, or, after a clash, the one somebody else saved first.</param>
/// <param name="Clash">True: nothing was changed, because the row sent was built on an older version.</param>
public readonly record struct Saved<T>(Versioned<T> Standing, bool Clash)
{
    public Saved<TTo> As<TTo>(Func<T, TTo> read) => new(Standing.As(read), Clash);

    /// <summary>One plain sentence for the person whose saving clashed.</summary>
    public string Words => Clash
        ? $"Not saved: it was changed meanwhile (version {Standing.Version} stands). Look at what stands now and decide again."
        : $"Saved as version {Standing.Version}.";
}
