using Alburnum.Records.CaseFolders;
using Alburnum.Records.Facts;
using Spectre.Console;

namespace Alburnum.Cli.Cases;

/// <summary>Takes a case folder from its files to its verdict.</summary>
internal static class FolderReading
{
    /// <summary>Reads a folder, measures its photographs and judges the case.</summary>
    /// <exception cref="InputRefusedException">Anything in the folder is missing or wrong.</exception>
    public static async Task<CaseReading> ReadAsync(
        IAnsiConsole console,
        FactLibrary facts,
        string path,
        CancellationToken stop
    )
    {
        var indicators = facts.Indicators;
        var folder = CaseFolderReader.Read(new FolderFiles(path), facts, indicators);
        var readings = await Progress.EachAsync(
            console,
            "Reading sections",
            folder.Photographs,
            photograph => photograph.FileName,
            photograph => CaseReading.Measure(photograph, folder, indicators, stop),
            stop
        );
        return CaseReading.Judge(folder, readings, facts);
    }
}
