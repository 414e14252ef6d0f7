using System.IO.Compression;
using System.Text;
using Alburnum.Records.Ledger;
using Alburnum.Records.Store;
using Microsoft.Data.Sqlite;

namespace Alburnum.Records.Bundles;

/// <summary>A case as one file to hand over: its ledger, runs, files and photographs, each by its hash in a manifest that the practice signs.</summary>
public static class WriteBundle
{
    /// <summary>Writes it. The store is not changed; the file is whole under its name or not there.</summary>
    /// <param name="storePath">Database file of the store.</param>
    /// <param name="caseNumber">Number of the case.</param>
    /// <param name="to">The file to write.</param>
    /// <param name="key">Signs it.</param>
    /// <param name="say">Told in a line when another program has to be waited for.</param>
    /// <param name="stop">Signalled to give up.</param>
    /// <exception cref="InputRefusedException">
    /// The case is not there or was changed since it was kept, or the file is there already or cannot be written.
    /// </exception>
    public static async Task<BundleWritten> RunAsync(
        string storePath,
        int caseNumber,
        string to,
        PracticeKey key,
        Action<string> say,
        CancellationToken stop
    )
    {
        ArgumentNullException.ThrowIfNull(key);
        Examine(to);
        var file = new SqliteFile(storePath, say, CaseStore.LongestWait);
        await file.RefuseUnlessReadableAsync(stop);
        var contents = await ContentsAsync(file, caseNumber, stop);
        var part = $"{Path.GetFullPath(to)}.{Guid.NewGuid():N}.part";
        try
        {
            BundleWritten written;
            await using (var stream = OwnersOnly.New(part))
            {
                written = await ZipAsync(stream, contents, file.Photographs, key, stop);
                stream.Flush(flushToDisk: true);
            }
            File.Move(part, Path.GetFullPath(to));
            DurableFile.FlushFolder(Path.GetDirectoryName(part)!);
            return written;
        }
        catch (Exception broken) when (FileTrouble.Is(broken))
        {
            throw Refused(to, FileTrouble.InWords(broken), "a file that can be written");
        }
        finally
        {
            File.Delete(part);
        }
    }

    /// <summary>Refuses a path that no bundle can be written to, before any work is done.</summary>
    /// <exception cref="InputRefusedException">A file or a folder is there already, or its own folder is missing.</exception>
    public static void Examine(string to)
    {
        WholeFile.Examine(to);
        if (File.Exists(to))
            throw Refused(to, "a file that is there already", "a name that is free: no bundle is overwritten");
    }

    private sealed record Contents(
        int CaseNumber,
        IReadOnlyList<KeptEntry> Entries,
        IReadOnlyList<HeldFile> Files,
        IReadOnlyList<PhotographRow> Photographs
    );

    private static async Task<Contents> ContentsAsync(SqliteFile file, int caseNumber, CancellationToken stop)
    {
        var contents = await file.RefusingAsync(() =>
            file.WaitAsync(
                async () =>
                {
                    using var context = file.Open(SqliteOpenMode.ReadOnly);
                    return await SqliteStore.AtOneMomentAsync(
                        context,
                        async () =>
                        {
                            var entries = await new LedgerTable(context).EntriesAsync(caseNumber, stop);
                            var held = await HeldFiles.InTablesAsync(context, caseNumber, each => each, stop);
                            return new Contents(caseNumber, entries, held.Files, held.Photographs);
                        },
                        stop
                    );
                },
                stop
            )
        );
        if (contents.Files.Count == 0)
            throw file.Refused($"no case {caseNumber}, or one that was deleted", "a case that is in the store");
        var sums = await HeldFiles.SumsAsync(
            new HeldInTables<HeldSum>([.. contents.Files.Select(each => each.Sum)], contents.Photographs),
            file.Photographs,
            stop
        );
        var findings = LedgerCheck.OfCase(file.Path, contents.Entries, sums);
        return findings.Faults.Count == 0 ? contents : throw new InputRefusedException(findings.Faults);
    }

    private static async Task<BundleWritten> ZipAsync(
        Stream stream,
        Contents contents,
        PhotographFiles photographs,
        PracticeKey key,
        CancellationToken stop
    )
    {
        using var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true);
        var files = new List<BundledFile>();
        var lines = string.Concat(contents.Entries.Select(entry => LedgerJson.Line(entry) + "\n"));
        Add(new(BundleNames.Ledger, Encoding.UTF8.GetBytes(lines)));
        foreach (var each in contents.Files)
            Add(each);
        foreach (var row in contents.Photographs)
            Add(
                new(
                    HeldPath.Photograph(row.Sha256),
                    (await photographs.ReadAsync(row.Sha256, row.FileName, stop)).Bytes
                )
            );
        var head = contents.Entries[^1].Hash;
        var manifest = new BundleManifest(
            ProgramName.WithVersion,
            DateTime.UtcNow,
            contents.CaseNumber,
            contents.Entries.Count,
            head,
            key.Public.Fingerprint,
            files
        ).Write();
        Pack(zip, BundleNames.PublicKey, Encoding.ASCII.GetBytes(key.Public.Pem));
        Pack(zip, BundleNames.Signature, key.Sign(manifest));
        Pack(zip, BundleNames.Manifest, manifest);
        return new(contents.Entries.Count, files.Count, head, key.Public.Fingerprint);

        void Add(HeldFile file)
        {
            if (!BundleNames.StaysInside(file.Path))
                throw Refused(file.Path, "a name that leads out of its folder", "a name within it");
            Pack(zip, file.Path, file.Bytes.Span);
            files.Add(new(file.Path, file.Sum.Sha256, file.Bytes.Length));
        }
    }

    private static void Pack(ZipArchive zip, string name, ReadOnlySpan<byte> bytes)
    {
        // Photographs are packed already.
        using var entry = zip.CreateEntry(name, CompressionLevel.Fastest).Open();
        entry.Write(bytes);
    }

    private static InputRefusedException Refused(string path, string found, string expected) =>
        new(new InputProblem(path, 0, "", "", found, expected));
}

/// <summary>A bundle that was written.</summary>
/// <param name="Entries">How many entries of the ledger it holds.</param>
/// <param name="Files">How many files.</param>
/// <param name="Head">Hash of the last entry.</param>
/// <param name="Fingerprint">Fingerprint of the key that signed it.</param>
public sealed record BundleWritten(int Entries, int Files, string Head, string Fingerprint);
