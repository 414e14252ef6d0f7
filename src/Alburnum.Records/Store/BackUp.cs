using System.IO.Compression;
using System.Text;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Alburnum.Records.Store;

/// <summary>
/// A store as one file: a ZIP with the tables as they were at one moment, every photograph that a run rests on, and the SHA-256 of each in the form that
/// <c>sha256sum --check</c> reads.
/// </summary>
public static class BackUp
{
    private const string Tables = "cases.db";
    private const string Sums = "SHA256SUMS";
    private const long SmallBytes = 16L << 20;

    /// <summary>Tables that hold reports as text are packed to a tenth or so; what is packed to less than this is no store.</summary>
    private const long MostPacked = 200;
    private const string Expected = "a back-up of a case store, whole and as it was written";

    /// <summary>Backs a store up. The store is not changed, and the file is whole under its name or not there.</summary>
    /// <param name="path">Database file of the store.</param>
    /// <param name="to">The file to write.</param>
    /// <param name="say">Told in a line when another program has to be waited for.</param>
    /// <param name="stop">Signalled to give up.</param>
    /// <returns>How many photographs are in it.</returns>
    /// <exception cref="InputRefusedException">The store cannot be read or lacks a photograph, or the file is there already or cannot be written.</exception>
    public static async Task<int> WriteAsync(string path, string to, Action<string> say, CancellationToken stop)
    {
        var file = new SqliteFile(path, say, CaseStore.LongestWait);
        await file.RefuseUnlessReadableAsync(stop);
        WholeFile.Examine(to);
        if (File.Exists(to))
            throw Refused(to, "a file that is there already", "a name that is free: no back-up is overwritten");
        var part = $"{Path.GetFullPath(to)}.{Guid.NewGuid():N}.part";
        var copy = part + ".db";
        try
        {
            await file.RefusingAsync(() =>
                file.WaitAsync(
                    () =>
                    {
                        File.Delete(copy);
                        file.CopyTo(copy);
                        return Task.FromResult(true);
                    },
                    stop
                )
            );
            await file.RefusingAsync(() => RefuseUnlessWholeAsync(path, copy, stop));
            int photographs;
            await using (var stream = OwnersOnly.New(part))
            {
                photographs = await ZipAsync(stream, copy, file.Photographs, stop);
                stream.Flush(flushToDisk: true);
            }
            File.Move(part, Path.GetFullPath(to));
            DurableFile.FlushFolder(Path.GetDirectoryName(part)!);
            return photographs;
        }
        catch (Exception broken) when (FileTrouble.Is(broken))
        {
            throw Refused(to, FileTrouble.InWords(broken), "a file that can be written");
        }
        finally
        {
            File.Delete(copy);
            File.Delete(part);
        }
    }

    /// <summary>Makes a store of a back-up. It is there whole, or not at all; cut off, it can be done again.</summary>
    /// <param name="from">The back-up.</param>
    /// <param name="path">Database file of the store to make; its folder is made where it is missing.</param>
    /// <param name="stop">Signalled to give up.</param>
    /// <returns>How many photographs it has.</returns>
    /// <exception cref="InputRefusedException">The file is no back-up or is damaged, or a store is there already.</exception>
    public static async Task<int> RestoreAsync(string from, string path, CancellationToken stop)
    {
        var file = new SqliteFile(path, _ => { }, CaseStore.LongestWait);
        using var stream = PlainFile.Open(from, from, Expected);
        file.RefuseUnlessFree();
        var part = $"{file.Path}.{Guid.NewGuid():N}.part";
        try
        {
            using var zip = new ZipArchive(stream, ZipArchiveMode.Read);
            var sums = SumsOf(from, zip);
            Directory.CreateDirectory(Path.GetDirectoryName(file.Path)!);
            await DurableFile.WriteAsync(part, Checked(from, zip, Tables, sums), stop);
            var photographs = await PhotographsOfAsync(from, part, stop);
            foreach (var sha256 in photographs)
                await file.Photographs.WriteAsync(sha256, Checked(from, zip, NameOf(sha256), sums), stop);
            // Last, so that a store is never there without its photographs.
            File.Move(part, file.Path);
            DurableFile.FlushFolder(Path.GetDirectoryName(file.Path)!);
            return photographs.Count;
        }
        catch (Exception damaged) when (damaged is InvalidDataException or EndOfStreamException)
        {
            throw Refused(from, "a file that is no ZIP, or is damaged", Expected);
        }
        catch (Exception broken) when (FileTrouble.Is(broken))
        {
            throw file.Refused(FileTrouble.InWords(broken));
        }
        finally
        {
            if (File.Exists(part))
                File.Delete(part);
        }
    }

    private static async Task<int> ZipAsync(
        Stream stream,
        string copy,
        PhotographFiles photographs,
        CancellationToken stop
    )
    {
        var sums = new StringBuilder();
        using var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true);
        Add(zip, Tables, await File.ReadAllBytesAsync(copy, stop), sums);
        List<PhotographRow> rows;
        using (var context = SqliteFile.Open(SqliteOpenMode.ReadOnly, copy))
            rows = await context.Photographs.AsNoTracking().OrderBy(row => row.Sha256).ToListAsync(stop);
        foreach (var row in rows)
            Add(
                zip,
                NameOf(row.Sha256),
                (await photographs.ReadAsync(row.Sha256, row.FileName, stop)).Bytes.Span,
                sums
            );
        Add(zip, Sums, Encoding.UTF8.GetBytes(sums.ToString()), new StringBuilder());
        return rows.Count;
    }

    private static void Add(ZipArchive zip, string name, ReadOnlySpan<byte> bytes, StringBuilder sums)
    {
        sums.Append(Sha256Of.Bytes(bytes)).Append("  ").Append(name).Append('\n');
        // Photographs are packed already.
        using var entry = zip.CreateEntry(name, CompressionLevel.Fastest).Open();
        entry.Write(bytes);
    }

    private static string NameOf(string sha256) => $"photographs/{sha256}";

    private static Dictionary<string, string> SumsOf(string from, ZipArchive zip)
    {
        using var lines = new StringReader(Encoding.UTF8.GetString(Bytes(from, Entry(from, zip, Sums))));
        var sums = new Dictionary<string, string>(StringComparer.Ordinal);
        while (lines.ReadLine() is { } line)
            if (line.Split("  ", 2) is [var sum, var name])
                sums[name] = sum;
        return sums;
    }

    private static byte[] Checked(string from, ZipArchive zip, string name, Dictionary<string, string> sums)
    {
        var found = Bytes(from, Entry(from, zip, name));
        return Sha256Of.Bytes(found) == sums.GetValueOrDefault(name)
            ? found
            : throw Refused(from, $"{name} damaged (its SHA-256 is not that in {Sums})", Expected);
    }

    // A part unpacks to what it says that it holds, and not to more than its packed bytes make likely: a small file must not fill the memory.
    private static byte[] Bytes(string from, ZipArchiveEntry entry)
    {
        if (
            entry.Length > Array.MaxLength
            || entry.Length > SmallBytes && entry.Length > MostPacked * entry.CompressedLength
        )
            throw Refused(from, $"{entry.FullName}, which would unpack to {entry.Length >> 20} MB", Expected);
        using var stream = entry.Open();
        var bytes = new byte[entry.Length];
        stream.ReadExactly(bytes);
        return stream.ReadByte() < 0
            ? bytes
            : throw Refused(from, $"{entry.FullName}, which unpacks to more than it says", Expected);
    }

    private static ZipArchiveEntry Entry(string from, ZipArchive zip, string name) =>
        zip.GetEntry(name) ?? throw Refused(from, $"no {name} in it", Expected);

    // The photographs that the tables name, once the tables are known to be whole and ours.
    private static async Task<IReadOnlyList<string>> PhotographsOfAsync(
        string from,
        string tables,
        CancellationToken stop
    )
    {
        try
        {
            using var context = SqliteFile.Open(SqliteOpenMode.ReadOnly, tables);
            if (StoreState.Of(context) is not OfVersion { IsThisVersion: true })
                throw Refused(from, "tables of another version, or of another program", Expected);
            return (await StoreTables.FaultsAsync(context, from, stop)).Count == 0
                ? await context.Photographs.Select(row => row.Sha256).ToListAsync(stop)
                : throw Refused(from, "damaged tables", Expected);
        }
        catch (SqliteException)
        {
            throw Refused(from, "damaged tables", Expected);
        }
    }

    // A damaged store is not backed up as if it were whole.
    private static async Task<bool> RefuseUnlessWholeAsync(string path, string copy, CancellationToken stop)
    {
        using var context = SqliteFile.Open(SqliteOpenMode.ReadOnly, copy);
        return await StoreTables.FaultsAsync(context, path, stop) is { Count: > 0 } faults
            ? throw new InputRefusedException(faults)
            : true;
    }

    private static InputRefusedException Refused(string path, string found, string expected) =>
        new(new InputProblem(path, 0, "", "", found, expected));
}
