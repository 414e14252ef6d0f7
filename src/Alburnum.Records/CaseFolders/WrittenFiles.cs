using Alburnum.Records.Store;
using Alburnum.Records.Tables;

namespace Alburnum.Records.CaseFolders;

/// <summary>The written files of a case; remembers which were read, so that they can be kept with a run.</summary>
/// <param name="files">Where they come from.</param>
/// <param name="problems">Gains what is wrong with them.</param>
internal sealed class WrittenFiles(ICaseFiles files, List<InputProblem> problems)
{
    private readonly List<KeptFile> _read = [];

    /// <summary>Every file read, in that order.</summary>
    public IReadOnlyList<KeptFile> Read => _read;

    /// <summary>Adds a file that was read elsewhere.</summary>
    public void Add(string file, ReadOnlyMemory<byte> bytes)
    {
        if (!_read.Exists(read => read.FileName == file))
            _read.Add(new(file, bytes));
    }

    /// <summary>The text of a file that was added.</summary>
    public string Text(string file) =>
        PlainFile.Text(_read.Single(read => read.FileName == file).Bytes, files.NameOf(file));

    /// <summary>Opens a table; null, and a problem noted, where it cannot be had.</summary>
    public Table? Table(string file) =>
        Opened(
            file,
            "a table (CSV or .xlsx) within the case folder",
            (name, bytes) => Tables.Table.Read(name, () => new MemoryStream(bytes.ToArray(), writable: false), null)
        );

    /// <summary>Reads a file; null, and a problem noted, where it cannot be had or says something that cannot be read.</summary>
    /// <param name="file">Its name within the case.</param>
    /// <param name="expected">What it should be, for messages.</param>
    /// <param name="read">Reads it, given its name for messages and its bytes.</param>
    public T? Opened<T>(string file, string expected, Func<string, ReadOnlyMemory<byte>, T> read)
        where T : class
    {
        var name = files.NameOf(file);
        if (!files.TryRead(file, out var bytes, out var fault))
        {
            problems.Add(new InputProblem(name, 0, "", "", $"a file {fault.InWords()}", expected));
            return null;
        }
        Add(file, bytes);
        try
        {
            return read(name, bytes);
        }
        catch (InputRefusedException refused)
        {
            problems.AddRange(refused.Problems);
            return null;
        }
    }
}
