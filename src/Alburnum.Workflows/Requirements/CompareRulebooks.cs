using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Workflows.Requirements;

/// <summary>What changes between two rulebooks.</summary>
/// <param name="Before">The first rulebook.</param>
/// <param name="After">The second rulebook.</param>
/// <param name="Enquiries">Number of enquiries asked of both.</param>
/// <param name="Answers">What becomes of them.</param>
public sealed record ComparedRulebooks(Rulebook Before, Rulebook After, int Enquiries, ComparedAnswers Answers);

/// <summary>Asks the same of two rulebooks, usually two editions of one code, and lists what they answer differently.</summary>
public static class CompareRulebooks
{
    private static readonly int[] UsualLives = [15, 30, 60];

    /// <summary>Compares them.</summary>
    /// <param name="before">The first rulebook: a file, or the name of one that ships.</param>
    /// <param name="after">The second rulebook.</param>
    /// <param name="archive">Enquiries to ask of both; null asks about every usual component, life and form, and every class that a contract may name.</param>
    /// <param name="facts">The rulebooks that ship, components and species.</param>
    /// <param name="stop">Signalled to stop early.</param>
    /// <exception cref="InputRefusedException">A rulebook cannot be read.</exception>
    public static ComparedRulebooks Run(
        string before,
        string after,
        IReadOnlyList<Enquiry>? archive,
        FactLibrary facts,
        CancellationToken stop
    )
    {
        ArgumentNullException.ThrowIfNull(facts);
        var (first, second) = (RulebookFile.Named(before, facts), RulebookFile.Named(after, facts));
        var enquiries = archive ?? Usual(facts, first, second);
        return new(first, second, enquiries.Count, RulebookComparison.Of(first, second, enquiries, stop));
    }

    private static IReadOnlyList<Enquiry> Usual(FactLibrary facts, Rulebook before, Rulebook after)
    {
        var lives = before.Lives.Union(after.Lives).Order().ToList();
        IReadOnlyList<Species> species = [facts.Species.Get("Scots pine"), facts.Species.Get("Norway spruce")];
        return
        [
            .. RulebookComparison.UsualEnquiries(facts.Components.All, species, lives.Count > 0 ? lives : UsualLives),
            .. RulebookComparison.EnquiriesByClass(before, after, species),
        ];
    }
}
