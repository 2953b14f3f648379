namespace WitnessMark.Web.Client.Outbox.Pages;

/// <summary>Bytes in words.</summary>
static class Sizes
{
    public static string Words(long bytes) => bytes < 1000 ? $"{bytes} bytes" : bytes < 1_000_000 ? $"{bytes / 1e3:0.#} kB" : bytes < 1_000_000_000 ? $"{bytes / 1e6:0.#} MB" : $"{bytes / 1e9:0.#} GB";
}
