using Alburnum.Records.Facts;
using Alburnum.Requirements;

namespace Alburnum.Workflows.Acceptance;

/// <summary>The AQL that a code of practice has for the penetration of a timber.</summary>
public static class CodeAql
{
    /// <summary>Finds it, with its source.</summary>
    /// <param name="rulebook">The code: a file, or the name of one that ships.</param>
    /// <param name="timber">The timber: species and form, as far as known.</param>
    /// <param name="facts">The rulebooks that ship.</param>
    /// <exception cref="InputRefusedException">There is no such rulebook, or it has no AQL for the timber.</exception>
    public static Fact<double> Find(string rulebook, Enquiry timber, FactLibrary facts)
    {
        return Known(rulebook, timber, facts)
            ?? throw new InputRefusedException(
                new InputProblem(
                    "command line",
                    0,
                    "",
                    "rulebook",
                    $"no AQL for this timber in {RulebookFile.Named(rulebook, facts).Citation}",
                    "a rulebook, species and form for which one is known, or an AQL or share of your own"
                )
            );
    }

    /// <summary>The same; null where the rulebook has none for the timber.</summary>
    /// <param name="rulebook">The code: a file, or the name of one that ships.</param>
    /// <param name="timber">The timber: species and form, as far as known.</param>
    /// <param name="facts">The rulebooks that ship.</param>
    /// <exception cref="InputRefusedException">There is no such rulebook.</exception>
    public static Fact<double>? Known(string rulebook, Enquiry timber, FactLibrary facts) =>
        RulebookFile.Named(rulebook, facts).Answer(timber).Trace.AqlPercent;
}
