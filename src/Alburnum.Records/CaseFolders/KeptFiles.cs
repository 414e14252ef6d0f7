namespace Alburnum.Records.CaseFolders;

/// <summary>The files of a case as they were kept with a run of it.</summary>
/// <param name="reference">Reference of the case.</param>
/// <param name="files">The files by their names within the case; photographs among them.</param>
public sealed class KeptFiles(string reference, IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files) : ICaseFiles
{
    /// <inheritdoc/>
    public string NameOf(string file) => $"{file} of case {reference}";

    /// <summary>None that would have to be looked for: a photograph without a piece was never kept.</summary>
    public IReadOnlyList<string> Photographs => [];

    /// <inheritdoc/>
    public bool TryRead(string file, out ReadOnlyMemory<byte> bytes, out FileFault fault)
    {
        var isThere = files.TryGetValue(file, out bytes);
        fault = isThere ? FileFault.None : FileFault.NotKept;
        return isThere;
    }
}
