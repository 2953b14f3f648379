using WitnessMark.OuterRoom.Pictures;
using WitnessMark.Stores.Keeping;
using WitnessMark.Stores.Photographs;

namespace WitnessMark.Web.Pictures;

static class PictureServices
{
    /// <param name="folder">Where the originals lie; the smaller copies have a folder in it.</param>
    public static void AddPictures(this IServiceCollection services, string folder)
    {
        services.AddSingleton<IPictureMaker, SkiaPictures>();
        services.AddSingleton(s => new SmallShelf(Path.Combine(folder, "small"), s.GetRequiredService<IPictureStore>(), s.GetRequiredService<IPictureMaker>()));
        services.AddSingleton<PictureZip>().AddSingleton<PictureExports>().AddSingleton<SmallQueue>();
        services.AddHostedService(s => s.GetRequiredService<SmallQueue>());
    }
}
