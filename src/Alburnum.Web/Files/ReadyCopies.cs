using Microsoft.Extensions.Caching.Memory;

namespace Alburnum.Web.Files;

/// <summary>Files that took a while to make, at hand for whoever asks next. In memory alone, and never more than a number of bytes.</summary>
internal sealed class ReadyCopies : IDisposable
{
    private const long BytesMost = 64_000_000;

    private readonly MemoryCache _copies = new(new MemoryCacheOptions { SizeLimit = BytesMost });

    /// <summary>A copy; made where it is not at hand.</summary>
    /// <param name="name">What it is of: all that it is made of goes into it, so that a copy is never out of date.</param>
    /// <param name="make">Makes it.</param>
    public async Task<byte[]> OfAsync(string name, Func<Task<byte[]>> make)
    {
        if (_copies.TryGetValue(name, out byte[]? ready))
            return ready!;
        var made = await make();
        return _copies.Set(name, made, new MemoryCacheEntryOptions { Size = made.Length });
    }

    public void Dispose() => _copies.Dispose();
}
