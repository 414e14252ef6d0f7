using Alburnum.Records.Store;

namespace Alburnum.Records.Tests.Store;

/// <summary>Everything in a folder, to see whether a byte of it changes.</summary>
internal static class FolderContents
{
    /// <summary>Each file with its hash and the time it was last written, one a line.</summary>
    public static string Of(string folder) =>
        string.Join(
            '\n',
            Directory
                .EnumerateFileSystemEntries(folder, "*", SearchOption.AllDirectories)
                .Order(StringComparer.Ordinal)
                .Select(entry =>
                    File.Exists(entry)
                        ? $"{entry} {Photograph.Of(entry, File.ReadAllBytes(entry)).Sha256} {File.GetLastWriteTimeUtc(entry):O}"
                        : entry
                )
        );
}
