using Alburnum.Records.Facts;
using Alburnum.Records.Store;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Json;
using Alburnum.Workflows.Cases;

namespace Alburnum.Web.Asking;

/// <summary>Keeps a case that was read again, beside its earlier runs.</summary>
internal static class NewRun
{
    /// <summary>Keeps it.</summary>
    /// <param name="again">The case measured and judged again.</param>
    /// <param name="caseNumber">Number of the case.</param>
    /// <param name="store">Where it is kept.</param>
    /// <param name="facts">Cautions that go with it.</param>
    /// <param name="stop">Gives up; the run is not kept then.</param>
    /// <returns>The result as JSON, as it was kept.</returns>
    public static async Task<string> KeepAsync(
        CaseReading again,
        int caseNumber,
        ICaseStore store,
        FactLibrary facts,
        CancellationToken stop
    )
    {
        var result = CaseMapping.From(again, facts.Cautions, ProgramName.WithVersion, DateTime.UtcNow);
        RunReport report = new(result.RunAt, DocumentJson.Write(result), FilesTogether.None)
        {
            CaseNumber = caseNumber,
        };
        await RunCase.KeepAsync(again, report, store, stop);
        return report.Document;
    }
}
