using System.CommandLine;
using WitnessMark.DrawingOffice.Drafting.Paper;

namespace WitnessMark.Cli.Drawing;

/// <summary>What a person may say for the title block.</summary>
sealed class TitleOptions
{
    readonly Option<string?> _title = new("--title") { Description = "What the part is called." };
    readonly Option<string> _number = new("--number") { Description = "Part number.", DefaultValueFactory = _ => "" };
    readonly Option<string> _drawnBy = new("--drawn-by") { Description = "Your name for the title block.", DefaultValueFactory = _ => "" };
    readonly Option<bool> _third = new("--third-angle") { Description = "Third-angle projection symbol instead of first." };

    public Symbol[] All => [_title, _number, _drawnBy, _third];

    public TitleFields Read(ParseResult parsed, string title, string material, string thickness, DateTimeOffset now) =>
        new(parsed.GetValue(_title) ?? title, parsed.GetRequiredValue(_number))
        {
            Material = material,
            Thickness = thickness,
            DrawnBy = parsed.GetRequiredValue(_drawnBy),
            Date = DateOnly.FromDateTime(now.UtcDateTime),
            Projection = parsed.GetValue(_third) ? Projection.ThirdAngle : Projection.FirstAngle,
        };
}
