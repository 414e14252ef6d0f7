using Alburnum.Reports.Documents;
using Alburnum.Reports.Words;

namespace Alburnum.Reports.Sheets;

/// <summary>What a sheet says of whether the retention is met.</summary>
public static class RetentionRows
{
    /// <summary>The verdict and its reasons; where several retentions are asked for, each by itself under the joint verdict.</summary>
    /// <param name="retention">The assays and what was found.</param>
    public static IEnumerable<string> Says(RetentionDocument retention)
    {
        ArgumentNullException.ThrowIfNull(retention);
        var joint = retention.Verdict;
        if (retention.ByDemand.Count < 2)
            return joint.Reasons.Prepend(
                SheetWords.Current.Rule(joint.Verdict, joint.ProbabilityLow, joint.ProbabilityHigh)
            );
        // A chance is that of one demand, and its reasons tell it: none stands for several of which some may not be judged.
        return retention
            .ByDemand.SelectMany(each =>
                each.Verdict.Reasons.Prepend(
                    SheetWords.Current.Named(
                        Wording.Capital(each.Demand),
                        Wording.Current.SayRule(each.Verdict.Verdict)
                    )
                )
            )
            .Prepend(SheetWords.Current.Rule(joint.Verdict, low: null, high: null));
    }
}
