using WitnessMark.Stores.Keeping;
using WitnessMark.Web.Client.Outbox.Shelf;

namespace WitnessMark.Web.Tests.Outbox;

public sealed class KindsTests
{
    /// <summary>A kind that the list leaves out would be written by the pages and not taken along.</summary>
    [Fact]
    public void Every_kind_of_the_desk_is_known_to_the_tray() =>
        Assert.Equal(
            typeof(IKept).Assembly.GetTypes().Where(t => t.IsClass && typeof(IKept).IsAssignableFrom(t)).Select(t => t.Name).Order(StringComparer.Ordinal),
            Kinds.OfDesk.Order(StringComparer.Ordinal));
}
