using System.Collections.Concurrent;
using Microsoft.Extensions.Caching.Memory;

namespace Alburnum.Web.Files;

/// <summary>What took a while to make, at hand for whoever asks next. In memory alone, and never more than a number of bytes.</summary>
internal sealed class ReadyCopies : IDisposable
{
    private const long BytesMost = 64_000_000;

    private readonly ConcurrentDictionary<string, Lazy<Task<object?>>> _making = new(StringComparer.Ordinal);
    private readonly MemoryCache _copies = new(new MemoryCacheOptions { SizeLimit = BytesMost });

    /// <summary>A file; made where it is not at hand.</summary>
    /// <inheritdoc cref="OfAsync{T}"/>
    public async Task<byte[]> OfAsync(string name, Func<Task<byte[]>> make) =>
        (await OfAsync<byte[]>(name, async () => await make(), made => made.Length))!;

    /// <summary>Anything that never changes; made where it is not at hand, once for all who ask meanwhile.</summary>
    /// <param name="name">What it is of: all that it is made of goes into it, so that a copy is never out of date.</param>
    /// <param name="make">Makes it, whoever of them goes away; null, which is not kept, where there is nothing to make it of.</param>
    /// <param name="bytes">Room that it takes.</param>
    public async Task<T?> OfAsync<T>(string name, Func<Task<T?>> make, Func<T, long> bytes)
        where T : class
    {
        if (_copies.TryGetValue(name, out T? ready))
            return ready;
        var making = _making.GetOrAdd(name, _ => new(async () => await make()));
        try
        {
            if (await making.Value is not T made)
                return null;
            return _copies.Set(name, made, new MemoryCacheEntryOptions { Size = bytes(made) });
        }
        finally
        {
            _making.TryRemove(new(name, making));
        }
    }

    public void Dispose() => _copies.Dispose();
}
