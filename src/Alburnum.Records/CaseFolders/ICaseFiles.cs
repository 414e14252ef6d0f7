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
    /// <param name="wrong">Why it cannot be had, for instance "which is not there"; empty where it was read.</param>
    bool TryRead(string file, out ReadOnlyMemory<byte> bytes, out string wrong);

    /// <summary>Reads a photograph.</summary>
    /// <param name="file">Name within the case.</param>
    /// <param name="photograph">The photograph with its hash.</param>
    /// <param name="wrong">Why it cannot be had; empty where it was read.</param>
    bool TryReadPhotograph(string file, [NotNullWhen(true)] out Photograph? photograph, out string wrong)
    {
        photograph = TryRead(file, out var bytes, out wrong) ? Photograph.Of(file, bytes) : null;
        return photograph is not null;
    }
}
