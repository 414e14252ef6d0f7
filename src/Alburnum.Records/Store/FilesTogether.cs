namespace Alburnum.Records.Store;

/// <summary>Files that are put into a folder together: all of them whole, or none, and then what stood there before stands there again.</summary>
/// <param name="folder">The folder; made where it is missing.</param>
/// <param name="files">The files by their names.</param>
public sealed class FilesTogether(string folder, IReadOnlyList<(string Name, ReadOnlyMemory<byte> Bytes)> files)
    : IDisposable
{
    private const string PartEnding = ".part";
    private const string BeforeEnding = ".before";

    /// <summary>Younger than this, what looks left behind may belong to a program that is at work.</summary>
    private static readonly TimeSpan LeftBehindAfter = TimeSpan.FromHours(1);

    private readonly List<Placing> _placings = [];

    // What was set aside is all there is of the files before, where it could not be put back.
    private bool _isBeforeNeeded;

    private sealed record Placing(string Path, string Part, string Before)
    {
        public bool IsPlaced { get; set; }
    }

    /// <summary>The files by their names and hashes.</summary>
    internal IReadOnlyList<(string Name, string Sha256)> Sums =>
        [.. files.Select(file => (file.Name, Sha256Of.Bytes(file.Bytes.Span)))];

    /// <summary>No files.</summary>
    public static FilesTogether None => new("", []);

    /// <summary>Writes them under other names beside their places and flushes them to the disk.</summary>
    /// <exception cref="InputRefusedException">The folder cannot be written to, or the disk is full.</exception>
    internal async Task PrepareAsync(CancellationToken stop)
    {
        if (files.Count == 0)
            return;
        try
        {
            Directory.CreateDirectory(folder);
            foreach (var (name, bytes) in files)
            {
                RemoveLeftBehind(name);
                var path = Path.Combine(Path.GetFullPath(folder), name);
                var own = $"{path}.{Guid.NewGuid():N}";
                var placing = new Placing(path, own + PartEnding, own + BeforeEnding);
                _placings.Add(placing);
                await using var stream = new FileStream(placing.Part, FileMode.CreateNew, FileAccess.Write);
                await stream.WriteAsync(bytes, stop);
                stream.Flush(flushToDisk: true);
            }
        }
        catch (Exception broken) when (FileTrouble.Is(broken))
        {
            throw OutFolder.Refused(folder, FileTrouble.InWords(broken));
        }
    }

    /// <summary>Gives all of them their names; what stood there is set aside.</summary>
    /// <exception cref="InputRefusedException">One cannot be named; all is as it was before.</exception>
    internal void Place()
    {
        try
        {
            foreach (var placing in _placings)
            {
                if (File.Exists(placing.Path))
                    File.Replace(placing.Part, placing.Path, placing.Before);
                else
                    File.Move(placing.Part, placing.Path);
                placing.IsPlaced = true;
            }
            if (_placings.Count > 0)
                DurableFile.FlushFolder(Path.GetDirectoryName(_placings[0].Path)!);
        }
        catch (Exception broken) when (FileTrouble.Is(broken))
        {
            TakeBack();
            throw OutFolder.Refused(folder, FileTrouble.InWords(broken));
        }
    }

    /// <summary>Puts everything back as it was before they were placed.</summary>
    internal void TakeBack()
    {
        _isBeforeNeeded = true;
        foreach (var placing in _placings.Where(placing => placing.IsPlaced))
        {
            if (File.Exists(placing.Before))
                File.Move(placing.Before, placing.Path, overwrite: true);
            else
                File.Delete(placing.Path);
            placing.IsPlaced = false;
        }
        _isBeforeNeeded = false;
    }

    /// <summary>Removes what is no longer needed: what was set aside, or what was never placed.</summary>
    public void Dispose()
    {
        foreach (var placing in _placings)
        {
            RemoveIfPossible(placing.Part);
            if (!_isBeforeNeeded)
                RemoveIfPossible(placing.Before);
        }
    }

    // A program killed in between can remove nothing.
    private void RemoveLeftBehind(string name)
    {
        foreach (var ending in new[] { PartEnding, BeforeEnding })
        foreach (var left in Directory.EnumerateFiles(folder, $"{name}.*{ending}"))
            if (DateTime.UtcNow - File.GetLastWriteTimeUtc(left) > LeftBehindAfter)
                RemoveIfPossible(left);
    }

    private static void RemoveIfPossible(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception broken) when (FileTrouble.Is(broken))
        {
            // A file too many harms nobody.
        }
    }
}
