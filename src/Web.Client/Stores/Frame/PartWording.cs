using WitnessMark.Stores;

namespace WitnessMark.Web.Client.Stores;

/// <summary>How parts are called on the pages.</summary>
public static class PartWording
{
    /// <summary>Name and side: "Headlamp bracket LH".</summary>
    public static string Full(Part part) => part.Hand == Hand.None ? part.Name : $"{part.Name} {part.Hand}";
}
