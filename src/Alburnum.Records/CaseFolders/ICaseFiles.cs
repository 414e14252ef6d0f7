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
}
