using Microsoft.Extensions.Caching.Memory;

namespace Alburnum.Web.Files;

/// <summary>What took a while to make, at hand for whoever asks next. In memory alone, and never more than a number of bytes.</summary>
internal sealed class ReadyCopies : IDisposable
{
    private const long BytesMost = 64_000_000;
    private const int BytesOfALetter = 2;

    private readonly MemoryCache _copies = new(new MemoryCacheOptions { SizeLimit = BytesMost });

    /// <summary>A file; made where it is not at hand.</summary>
    /// <param name="name">What it is of: all that it is made of goes into it, so that a copy is never out of date.</param>
    /// <param name="make">Makes it.</param>
    public async Task<byte[]> OfAsync(string name, Func<Task<byte[]>> make)
    {
        if (_copies.TryGetValue(name, out byte[]? ready))
            return ready!;
        var made = await make();
        return Keep(name, made, made.Length);
    }

    /// <summary>A text likewise.</summary>
    /// <inheritdoc cref="OfAsync"/>
    public string Text(string name, Func<string> make)
    {
        if (_copies.TryGetValue(name, out string? ready))
            return ready!;
        var made = make();
        return Keep(name, made, BytesOfALetter * made.Length);
    }

    /// <summary>What was read out of a text likewise; it never changes.</summary>
    /// <param name="name">What it is of, likewise.</param>
    /// <param name="text">The text: what is read out of it takes about as much room.</param>
    /// <param name="make">Reads it.</param>
    public T Read<T>(string name, string text, Func<T> make)
        where T : class
    {
        if (_copies.TryGetValue(name, out T? ready))
            return ready!;
        return Keep(name, make(), BytesOfALetter * text.Length);
    }

    public void Dispose() => _copies.Dispose();

    private T Keep<T>(string name, T made, long bytes) =>
        _copies.Set(name, made, new MemoryCacheEntryOptions { Size = bytes });
}
