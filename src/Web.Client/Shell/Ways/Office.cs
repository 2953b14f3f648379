using System.Collections.Immutable;

namespace WitnessMark.Web.Client.Shell.Ways;

/// <summary>An office of the house. It bears a letter, as the zones of a drawing's border do; <c>g</c> and that letter lead there.</summary>
/// <param name="Short">Its name where there is little room.</param>
/// <param name="Says">What is done there.</param>
public sealed record Office(char Letter, string Name, string Short, string Says)
{
    public static Office Stores { get; } = new('A', "Stores", "Stores", "the vehicle's parts: what there is, where it lies, what is to become of it");

    public static Office Drawing { get; } = new('B', "Drawing office", "Drawing", "samples measured, their plans, drawings, blanks and tools");

    public static Office Planning { get; } = new('C', "Planning office", "Planning", "jobs, hours, order and odds");

    public static Office Shop { get; } = new('D', "Shop", "Shop", "the machines and instruments you have");

    public static Office Pictures { get; } = new('E', "Pictures", "Pictures", "everything photographed");

    public static ImmutableArray<Office> All { get; } = [Stores, Drawing, Planning, Shop, Pictures];

    /// <summary>Where it stands for this vehicle; offices of a vehicle begin with the list of vehicles while there is none.</summary>
    public string Address(Guid? vehicle) => (Letter, vehicle) switch
    {
        ('C', _) => "planning",
        ('D', _) => "shop",
        (_, null) => "",
        ('B', { } id) => $"vehicle/{id}/samples",
        ('E', { } id) => $"vehicle/{id}/pictures",
        (_, { } id) => $"vehicle/{id}",
    };

    /// <summary>The office that a page belongs to; null for pages that belong to the house.</summary>
    public static Office? Of(string path)
    {
        var steps = path.Split('?', '#')[0].Split('/');
        return steps[0] switch
        {
            "planning" => Planning,
            "shop" => Shop,
            "" or "t" => Stores,
            "vehicle" when steps.Contains("pictures") || steps.Contains("pairs") => Pictures,
            "vehicle" when steps.Contains("sample") || steps.Contains("samples") || steps.Contains("shapes") => Drawing,
            "vehicle" => Stores,
            _ => null,
        };
    }
}
