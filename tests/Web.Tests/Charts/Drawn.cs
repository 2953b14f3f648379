using System.Globalization;
using System.Xml.Linq;

namespace WitnessMark.Web.Tests.Charts;

/// <summary>A chart read back as XML.</summary>
sealed class Drawn(string svg)
{
    readonly XElement _root = XElement.Parse(svg);

    public double Width => Figure(_root, "width");

    public double Height => Figure(_root, "height");

    public IEnumerable<XElement> All => _root.Descendants();

    public IEnumerable<XElement> Of(string name, string word) =>
        All.Where(e => e.Name.LocalName == name && ((string?)e.Attribute("class") ?? "").Split(' ').Contains(word));

    public string Text(string name) => All.First(e => e.Name.LocalName == name).Value;

    public List<(double From, double To)> Bars() =>
        [.. Of("rect", "fill-accent").Select(r => (Figure(r, "x"), Figure(r, "x") + Figure(r, "width")))];

    /// <summary>Points of a path of straight lines, px.</summary>
    public static List<(double X, double Y)> Points(XElement path) =>
        [.. ((string)path.Attribute("d")!).Trim('M', 'Z').Split('L').Select(p => p.Split(' ')).Select(p => (Number(p[0]), Number(p[1])))];

    public static double Figure(XElement e, string attribute) => Number((string)e.Attribute(attribute)!);

    static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
