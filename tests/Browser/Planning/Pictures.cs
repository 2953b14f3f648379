namespace WitnessMark.Browser.Planning;

static class Pictures
{
    /// <summary>The page from head to foot, kept for the eye under artifacts/screens.</summary>
    public static async Task WholePicture(this Visit visit, string name)
    {
        var height = await visit.Page.EvaluateAsync<int>("document.documentElement.scrollHeight");
        var was = visit.Page.ViewportSize!;
        await visit.Page.SetViewportSizeAsync(was.Width, Math.Min(height, 6000));
        await visit.Picture(name);
        await visit.Page.SetViewportSizeAsync(was.Width, was.Height);
    }
}
