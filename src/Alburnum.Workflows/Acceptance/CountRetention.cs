using Alburnum.Assaying;
using Alburnum.Records.Assays;
using Alburnum.Records.Facts;

namespace Alburnum.Workflows.Acceptance;

/// <summary>Turns a laboratory's figures of one sample into the retention that is required.</summary>
public static class CountRetention
{
    /// <summary>Counts them.</summary>
    /// <param name="figures">The figures as the laboratory wrote them. At least one.</param>
    /// <param name="basis">What they count as.</param>
    /// <param name="facts">What substances hold.</param>
    /// <exception cref="InputRefusedException">A figure cannot be read, or they cannot be counted.</exception>
    public static CountedRetention Run(IReadOnlyList<string> figures, AssayBasis basis, FactLibrary facts)
    {
        ArgumentNullException.ThrowIfNull(figures);
        ArgumentNullException.ThrowIfNull(facts);
        List<ReportedContent> contents =
        [
            .. figures.Select(text =>
                ContentText.Read(text, facts.Substances)?.Content
                ?? throw Refused($"\"{text}\"", ContentText.Expected(text, facts.Substances))
            ),
        ];
        return CountedRetention.Of(contents, basis, facts.Substances) switch
        {
            CountedRetention counted => counted,
            NotCounted not => throw Refused(string.Join(", ", figures), not.Expected(basis)),
            var other => throw new InvalidOperationException($"{other} is not a counting."),
        };
    }

    private static InputRefusedException Refused(string found, string expected) =>
        new(new InputProblem("command line", 0, "", "", found, expected));
}
