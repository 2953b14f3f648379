using System.Globalization;
using System.Text;
using WitnessMark.Maths;

namespace WitnessMark.PrintRoom.Cutter;

/// <summary>The file's lines in pairs: a group code, then its value.</summary>
sealed class DxfFile
{
    readonly StringBuilder _text = new();

    public override string ToString() => _text.ToString();

    public DxfFile Put(int code, string value)
    {
        // Old shop-floor machines want the line ends of the system the format was born on.
        _text.Append(code).Append("\r\n").Append(value).Append("\r\n");
        return this;
    }

    public DxfFile Put(int code, int value) => Put(code, value.ToString(CultureInfo.InvariantCulture));

    public DxfFile Put(int code, double value)
    {
        var text = Figures.Of(value, 6);
        return Put(code, text.Contains('.') ? text : text + ".0");
    }

    /// <summary>A point: x under the code, y ten on, z twenty on.</summary>
    public DxfFile Put(int code, Vec2 at) => Put(code, at.X).Put(code + 10, at.Y).Put(code + 20, 0.0);

    public DxfFile Open(string section) => Put(0, "SECTION").Put(2, section);

    public DxfFile Close() => Put(0, "ENDSEC");
}
