using Alburnum.Records.Facts;
using Alburnum.Records.Store;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Json;
using Alburnum.Workflows.Cases;

namespace Alburnum.Web.Asking;

/// <summary>Holds a kept case against another rulebook: measured and judged anew, kept as a new run.</summary>
internal static class HoldAgain
{
    /// <summary>Judges the case anew; nothing is kept yet. Null where there is no such case, or where it was kept without its files.</summary>
    /// <param name="caseNumber">Number of the case.</param>
    /// <param name="rulebook">The rulebook.</param>
    /// <param name="problems">What was wrong with the rulebook as it was sent.</param>
    /// <param name="store">Has the case.</param>
    /// <param name="facts">The facts that it rests on.</param>
    /// <param name="stop">Gives up.</param>
    /// <exception cref="InputRefusedException">The rulebook cannot be read, or the case cannot be held against it.</exception>
    public static async Task<CaseReading?> JudgeAsync(
        int caseNumber,
        SentRulebook rulebook,
        List<InputProblem> problems,
        ICaseStore store,
        FactLibrary facts,
        CancellationToken stop
    )
    {
        if (
            await store.RunAsync(caseNumber, null, stop) is not { } run
            || KeptMapping.Case(run, KeptDocument.Of(run)) is not { } kept
        )
            return null;
        if (problems.Count == 0 && rulebook is { Name: null, File: null })
            problems.Add(SentFields.Problem(EnquiryFields.Rulebook.Key, "nothing", EnquiryFields.Rulebook.Expected));
        if (problems.Count == 0)
            _ = rulebook.Read(facts, problems);
        if (problems.Count > 0)
            throw new InputRefusedException(problems);
        var under = rulebook.File is { } file ? kept.Under(file) : kept.Under(rulebook.Name!);
        return await ReadAgain.CaseAsync(under, store, facts, progress: null, stop);
    }
}
