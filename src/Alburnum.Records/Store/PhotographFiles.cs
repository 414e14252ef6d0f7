using System.Security.Cryptography;
using System.Text;

namespace Alburnum.Records.Store;

/// <summary>Photographs as files named by the SHA-256 of their bytes, in folders named by its first two digits.</summary>
/// <param name="folder">The folder of them all; made when the first one is written.</param>
internal sealed class PhotographFiles(string folder)
{
    private const int BufferBytes = 16_384;
    private const string NoteName = "unfinished-";
    private static readonly EnumerationOptions OwnFiles = new() { AttributesToSkip = FileAttributes.ReparsePoint };

    private static readonly EnumerationOptions OwnFilesBelow = new()
    {
        AttributesToSkip = FileAttributes.ReparsePoint,
        RecurseSubdirectories = true,
    };

    /// <summary>Writes a photograph, unless it is there already, whole.</summary>
    /// <param name="sha256">Its name.</param>
    /// <param name="bytes">Its bytes.</param>
    /// <param name="stop">Signalled to give up; no half file is left under the name.</param>
    /// <exception cref="InputRefusedException">It cannot be written, or cannot be read back as it was written.</exception>
    public async Task WriteAsync(string sha256, ReadOnlyMemory<byte> bytes, CancellationToken stop)
    {
        var path = PathOf(sha256);
        try
        {
            if (await HoldsAsync(path, bytes, stop))
                return;
            var shelf = Path.GetDirectoryName(path)!;
            OwnersOnly.MakeFolder(folder);
            OwnersOnly.MakeFolder(shelf);
            await DurableFile.WriteAsync(path, bytes, stop);
            DurableFile.FlushFolder(folder);
            DurableFile.FlushFolder(Path.GetDirectoryName(folder)!);
            if (!await HoldsAsync(path, bytes, stop))
                throw Refused(path, "bytes other than those written", "a disk that returns what is written to it");
        }
        catch (Exception broken) when (FileTrouble.Is(broken))
        {
            throw Refused(path, FileTrouble.InWords(broken), "a place where a photograph can be kept");
        }
    }

    /// <summary>Reads a photograph and checks it against its name.</summary>
    /// <param name="sha256">Its name.</param>
    /// <param name="fileName">Name under which it arrived.</param>
    /// <param name="stop">Signalled to give up.</param>
    /// <exception cref="InputRefusedException">The file is missing, damaged, or cannot be read.</exception>
    public Task<Photograph> ReadAsync(string sha256, string fileName, CancellationToken stop) =>
        ReadingAsync(
            sha256,
            fileName,
            async (path, expected) =>
            {
                var photograph = Photograph.Of(fileName, await BytesAsync(path, expected, stop));
                RefuseUnlessSame(path, photograph.Sha256, sha256, expected);
                return photograph;
            }
        );

    /// <summary>Opens a photograph once it is checked against its name. Its file may be removed meanwhile: what is open can be read to its end.</summary>
    /// <inheritdoc cref="ReadAsync"/>
    public Task<OpenPhotograph> OpenAsync(string sha256, string fileName, CancellationToken stop) =>
        ReadingAsync(
            sha256,
            fileName,
            async (path, expected) =>
            {
                if (IsEmpty(path, expected))
                    RefuseUnlessSame(path, Sha256Of.Bytes([]), sha256, expected);
                FileStream? file = null;
                try
                {
                    file = new(path, FileMode.Open, FileAccess.Read, FileShare.Read | FileShare.Delete, BufferBytes);
                    var found = Convert.ToHexStringLower(await SHA256.HashDataAsync(file, stop));
                    RefuseUnlessSame(path, found, sha256, expected);
                    file.Position = 0;
                    OpenPhotograph photograph = new(fileName, file);
                    file = null;
                    return photograph;
                }
                finally
                {
                    if (file is not null)
                        await file.DisposeAsync();
                }
            }
        );

    private async Task<T> ReadingAsync<T>(string sha256, string fileName, Func<string, string, Task<T>> read)
    {
        var path = PathOf(sha256);
        var expected = $"{fileName} as it was kept, with the SHA-256 in the file's name";
        try
        {
            return await read(path, expected);
        }
        catch (Exception broken) when (FileTrouble.Is(broken))
        {
            throw Refused(path, FileTrouble.InWords(broken), expected);
        }
    }

    /// <summary>Whether there is a file of a photograph, damaged or not.</summary>
    public bool Has(string sha256) => File.Exists(PathOf(sha256));

    /// <summary>The bytes of a photograph's file, damaged or not; null where there is none.</summary>
    public async Task<byte[]?> AsFoundAsync(string sha256, CancellationToken stop)
    {
        var path = PathOf(sha256);
        try
        {
            return File.Exists(path) ? await BytesAsync(path, "a photograph as it was kept", stop) : null;
        }
        catch (Exception broken) when (FileTrouble.Is(broken))
        {
            throw Refused(path, FileTrouble.InWords(broken), "a photograph as it was kept");
        }
    }

    /// <summary>Removes a photograph that no run rests on any more, and what is left of its being written.</summary>
    public void Remove(string sha256)
    {
        var path = PathOf(sha256);
        FileTrouble.Refusing(
            path,
            "a photograph that can be removed",
            () =>
            {
                var shelf = Path.GetDirectoryName(path)!;
                if (Directory.Exists(shelf))
                    foreach (var each in Directory.EnumerateFiles(shelf, $"{sha256}*"))
                        File.Delete(each);
            }
        );
    }

    /// <summary>Notes photographs that may be left without a run, should what is begun now be broken off.</summary>
    /// <returns>The note's file, to be deleted once that is done; null where there are none.</returns>
    public async Task<string?> NoteAsync(IReadOnlyCollection<string> sha256s, CancellationToken stop)
    {
        if (sha256s.Count == 0)
            return null;
        var note = Path.Combine(folder, $"{NoteName}{Guid.NewGuid():N}");
        try
        {
            OwnersOnly.MakeFolder(folder);
            await DurableFile.WriteAsync(note, Encoding.ASCII.GetBytes(string.Join('\n', sha256s)), stop);
            return note;
        }
        catch (Exception broken) when (FileTrouble.Is(broken))
        {
            throw Refused(note, FileTrouble.InWords(broken), "a place where photographs can be kept");
        }
    }

    /// <summary>Takes a note back: nothing was left.</summary>
    public static void Forget(string? note)
    {
        try
        {
            if (note is not null)
                File.Delete(note);
        }
        catch (Exception broken) when (FileTrouble.Is(broken))
        {
            // Read an hour later, it names photographs that runs rest on.
        }
    }

    /// <summary>Every note there is.</summary>
    public IEnumerable<string> Notes =>
        Directory.Exists(folder) ? Directory.EnumerateFiles(folder, $"{NoteName}*", OwnFiles) : [];

    private static void RefuseUnlessSame(string path, string found, string sha256, string expected)
    {
        if (found != sha256)
            throw Refused(path, $"a damaged file (its SHA-256 is {found})", expected);
    }

    /// <summary>Every file there is but the notes, whatever its name. Links are not followed.</summary>
    public IEnumerable<string> All =>
        Directory.Exists(folder)
            ? Directory
                .EnumerateFiles(folder, "*", OwnFilesBelow)
                .Where(path => !Path.GetFileName(path).StartsWith(NoteName, StringComparison.Ordinal))
            : [];

    /// <summary>Whether a photograph could be named so.</summary>
    public static bool IsName(string sha256) => sha256.Length == 64 && sha256.All(char.IsAsciiHexDigitLower);

    // A name from a damaged database must not lead out of the folder.
    private string PathOf(string sha256) =>
        IsName(sha256)
            ? Path.Combine(folder, sha256[..2], sha256)
            : throw Refused(folder, $"a photograph named {sha256}", "64 hexadecimal digits");

    private static async Task<bool> HoldsAsync(string path, ReadOnlyMemory<byte> bytes, CancellationToken stop) =>
        File.Exists(path)
        && (await BytesAsync(path, "a place where a photograph can be kept", stop)).AsSpan().SequenceEqual(bytes.Span);

    private static async Task<byte[]> BytesAsync(string path, string expected, CancellationToken stop) =>
        IsEmpty(path, expected) ? [] : await File.ReadAllBytesAsync(path, stop);

    // From a link, which is none of ours, nothing is read, and from a pipe or a device neither: it could wait for ever, or never end. Those have no
    // length, as an empty file has none.
    private static bool IsEmpty(string path, string expected)
    {
        var file = new FileInfo(path);
        if (file.Exists && file.Attributes.HasFlag(FileAttributes.ReparsePoint))
            throw Refused(path, "a link", expected);
        if (!file.Exists || file.Length > 0)
            return false;
        PlainFile.Open(path, path, expected).Dispose();
        return true;
    }

    private static InputRefusedException Refused(string path, string found, string expected) =>
        new(new InputProblem(path, 0, "", "photograph", found, expected));
}
