using System.Net.Http.Json;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Tests;

public sealed class DemoApiTests(RunningHost running) : IClassFixture<RunningHost>
{
    [Fact]
    public async Task The_demonstration_van_is_loaded_whole_and_twice_doubles_nothing()
    {
        var first = await Load();
        Assert.True(first.NewRows > 50 && first.NewReadings > 50 && first.NewJobs > 10);
        var again = await Load();
        Assert.Equal((first.Vehicle, 0, 0, 0), (again.Vehicle, again.NewRows, again.NewReadings, again.NewJobs));
        var tree = (await running.Host.Http.GetFromJsonAsync($"api/vehicles/{first.Vehicle}", WireJson.Default.VehicleTree))!;
        Assert.NotEmpty(tree.Samples);
    }

    async Task<DemoLoaded> Load()
    {
        using var response = await running.Host.Http.PostAsync("api/demo", null);
        response.EnsureSuccessStatusCode();
        return (await response.Content.ReadFromJsonAsync(WireJson.Default.DemoLoaded))!;
    }
}
