using System.Diagnostics.CodeAnalysis;
using Alburnum.Records.Store;

namespace Alburnum.Records.CaseFolders;

/// <summary>The files of one case, wherever they are kept.</summary>
public interface ICaseFiles
{
    /// <summary>A file's name for messages.</summary>
    string NameOf(string file);

    /// <summary>The photographs there are, in the order of their names.</summary>
    IReadOnlyList<string> Photographs { get; }

    /// <summary>Reads a file.</summary>
    /// <param name="file">Name within the case.</param>
    /// <param name="bytes">Its bytes; empty where it cannot be had.</param>
    /// <param name="fault">Why it cannot be had.</param>
    bool TryRead(string file, out ReadOnlyMemory<byte> bytes, out FileFault fault);

    /// <summary>Reads a photograph.</summary>
    /// <param name="file">Name within the case.</param>
    /// <param name="photograph">The photograph with its hash.</param>
    /// <param name="fault">Why it cannot be had.</param>
    bool TryReadPhotograph(string file, [NotNullWhen(true)] out Photograph? photograph, out FileFault fault)
    {
        photograph = TryRead(file, out var bytes, out fault) ? Photograph.Of(file, bytes) : null;
        return photograph is not null;
    }

    /// <summary>SHA-256 of a file that is too large to be taken in, 64 lower-case hexadecimal digits; null where it cannot be read at all.</summary>
    /// <param name="file">Name within the case.</param>
    string? HashOfLarge(string file) => null;
}
