namespace WitnessMark.Web.Client.Shell.Settings;

/// <summary>What this person wishes of the app; kept in this browser. Those that shape the page are set before the first paint by js/theme.js.</summary>
public sealed class Preferences(PageScript page, ShellScript script)
{
    /// <summary>A wish was changed: what is shown must be drawn anew.</summary>
    public event Action? Changed;

    /// <summary>"light", "dark", or empty: as the machine is set.</summary>
    public string Theme { get => Kept("theme"); set => Wish("theme", value); }

    /// <summary>"large", "larger", or empty: as the browser is set.</summary>
    public string Type { get => Kept("type"); set => Wish("type", value); }

    /// <summary>"still", or empty: as the machine is set.</summary>
    public string Motion { get => Kept("motion"); set => Wish("motion", value); }

    /// <summary>"left", or empty: the right thumb.</summary>
    public string Thumb { get => Kept("thumb"); set => Wish("thumb", value); }

    /// <summary>Keys without Ctrl or Alt do things while no field has the focus (WCAG 2.1.4).</summary>
    public bool SingleKeys
    {
        get => Kept("keys") != "off";
        set => Wish("keys", value ? "" : "off");
    }

    public LengthsIn Lengths
    {
        get => Enum.TryParse<LengthsIn>(Kept("units"), out var chosen) ? chosen : LengthsIn.Millimetres;
        set
        {
            LengthsShown.As = value;
            Wish("units", value == LengthsIn.Millimetres ? "" : value.ToString());
        }
    }

    /// <summary>Once, before the first page.</summary>
    public void Load() => LengthsShown.As = Lengths;

    string Kept(string name) => page.Kept($"wm.{name}") ?? "";

    void Wish(string name, string value)
    {
        script.Wish(name, value);
        Changed?.Invoke();
    }
}
