using System.Text;
using Alburnum.Records.Store;
using Alburnum.Records.Tables;

namespace Alburnum.Records.CaseFolders;

/// <summary>The written files of a case; remembers which were read, so that they can be kept with a run.</summary>
/// <param name="files">Where they come from.</param>
/// <param name="problems">Gains what is wrong with them.</param>
internal sealed class CasePapers(ICaseFiles files, List<InputProblem> problems)
{
    private readonly List<PaperRecord> _read = [];

    /// <summary>Every file read, in that order.</summary>
    public IReadOnlyList<PaperRecord> Read => _read;

    /// <summary>Adds a file that was read elsewhere.</summary>
    public void Add(string file, ReadOnlyMemory<byte> bytes)
    {
        if (!_read.Exists(paper => paper.FileName == file))
            _read.Add(new(file, bytes));
    }

    /// <summary>The text of a file that was added.</summary>
    public string Text(string file)
    {
        using var text = Open(_read.Single(paper => paper.FileName == file).Bytes);
        return text.ReadToEnd();
    }

    /// <summary>Reads a table in CSV; empty, and a problem noted, where it cannot be had.</summary>
    public IReadOnlyList<T> Table<T>(
        string file,
        IReadOnlyList<string> columns,
        IReadOnlyList<string> optional,
        Func<CsvLine, T> read
    )
    {
        var name = files.NameOf(file);
        if (!files.TryRead(file, out var bytes, out var fault))
        {
            problems.Add(
                new InputProblem(name, 0, "", "", $"a file {fault.InWords()}", "a table in CSV within the case folder")
            );
            return [];
        }
        Add(file, bytes);
        using var text = Open(bytes);
        return CsvTable.Read(text, name, columns, optional, problems, read);
    }

    private static StreamReader Open(ReadOnlyMemory<byte> bytes) =>
        new(new MemoryStream(bytes.ToArray(), writable: false), Encoding.UTF8);
}
