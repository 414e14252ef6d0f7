namespace Alburnum.Records.Store;

/// <summary>A photograph in the store, open to be read. Whoever opened it closes it.</summary>
/// <param name="FileName">Name under which it arrived.</param>
/// <param name="Bytes">Its bytes, from the first on; any of them can be sought.</param>
public sealed record OpenPhotograph(string FileName, Stream Bytes) : IAsyncDisposable
{
    /// <inheritdoc/>
    public ValueTask DisposeAsync() => Bytes.DisposeAsync();
}
