using System.Diagnostics.CodeAnalysis;
using Alburnum.Records.Store;

namespace Alburnum.Records.CaseFolders;

/// <summary>The files of a case as they were kept with a run of it.</summary>
/// <param name="reference">Reference of the case.</param>
/// <param name="written">The written files.</param>
/// <param name="photographs">The photographs, under their names within the case.</param>
public sealed class KeptFiles(string reference, IReadOnlyList<KeptFile> written, IReadOnlyList<Photograph> photographs)
    : ICaseFiles
{
    /// <inheritdoc/>
    public string NameOf(string file) => $"{file} of case {reference}";

    /// <summary>None that would have to be looked for: a photograph without a piece was never kept.</summary>
    public IReadOnlyList<string> Photographs => [];

    /// <inheritdoc/>
    public bool TryRead(string file, out ReadOnlyMemory<byte> bytes, out FileFault fault)
    {
        var kept = written.FirstOrDefault(one => one.FileName == file);
        bytes = kept?.Bytes ?? default;
        fault = kept is null ? FileFault.NotKept : FileFault.None;
        return kept is not null;
    }

    /// <inheritdoc/>
    public bool TryReadPhotograph(string file, [NotNullWhen(true)] out Photograph? photograph, out FileFault fault)
    {
        photograph = photographs.FirstOrDefault(photograph => photograph.FileName == file);
        fault = photograph is null ? FileFault.NotKept : FileFault.None;
        return photograph is not null;
    }
}
