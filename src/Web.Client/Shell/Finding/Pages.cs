using WitnessMark.Web.Client.Shell.Ways;

namespace WitnessMark.Web.Client.Shell.Finding;

/// <summary>Pages and commands of the app, with words that people look for them by.</summary>
static class Pages
{
    public const string QuickAdd = ":add", Keys = ":keys", Print = ":print";

    static readonly (string Path, string Name, string Other)[] OfVehicle =
    [
        ("", "Parts", "tree systems assemblies list"), ("/apart", "Coming apart", "dismantle strip take off fasteners"), ("/refit", "Refit order", "assemble put back together"),
        ("/loans", "Loans", "borrowed lender gone back due"), ("/orders", "Orders", "buy bought delivery quotes firms money"), ("/outwork", "Outwork", "plating send out box"),
        ("/places", "Places", "shelves bins boxes where"), ("/tags", "Tags", "labels print code"), ("/wants", "Wants", "shopping list autojumble"), ("/list", "Take in a list", "import csv spreadsheet"),
        ("/samples", "Samples", "measure measured drawing office"), ("/pictures", "Pictures", "photographs camera photos"),
    ];

    static readonly (string Path, string Name, string Other)[] OfPlanning =
    [
        ("planning", "Odds", "futures forecast finish chance when"), ("planning/next", "Next", "what to do today weekend"), ("planning/jobs", "Jobs", "work list routes"), ("planning/hours", "Hours", "log clock time worked"),
        ("planning/order", "Order of work", "sequence schedule"), ("planning/what-if", "What if", "compare change"), ("planning/means", "Means", "calendar money purse budget hours a week"), ("shop", "Shop", "machines tools instruments calliper"),
    ];

    public static IEnumerable<Findable> All(Guid? vehicle) =>
    [
        new("Do", "Quick add", "a note, a picture, hours, a reading, a part, a place", "new write down", QuickAdd), new("Do", "Help and keys", "", "shortcuts keyboard", Keys), new("Do", "Print this page", "", "paper pdf", Print),
        .. vehicle is { } id ? OfVehicle.Select(p => new Findable("Pages", p.Name, "", p.Other, $"vehicle/{id}{p.Path}")) : [],
        .. OfPlanning.Select(p => new Findable("Pages", p.Name, "", p.Other, p.Path)),
        .. PhoneBar.House.Select(h => new Findable("Pages", h.Words, "", h.Says, h.Address)),
    ];
}
