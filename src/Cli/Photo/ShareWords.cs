namespace WitnessMark.Cli.Photo;

/// <summary>How far the work has come, on one line of a screen that is watched; nothing where nobody watches.</summary>
sealed class ShareWords(Desk desk, bool quiet)
{
    readonly bool _silent = quiet || Console.IsErrorRedirected || !ReferenceEquals(desk.Error, Console.Error);
    int _tenths = -1;

    public IProgress<double>? Of(string what) => _silent ? null : new Line(this, what);

    public void Done()
    {
        if (_tenths >= 0) desk.Error.Write("\r\e[K");
    }

    sealed class Line(ShareWords whole, string what) : IProgress<double>
    {
        public void Report(double value)
        {
            var tenths = (int)(value * 10);
            if (tenths == whole._tenths) return;
            whole._tenths = tenths;
            whole.Write($"\r\e[K{what}, {tenths * 10} %");
        }
    }

    void Write(string text) => desk.Error.Write(text);
}
