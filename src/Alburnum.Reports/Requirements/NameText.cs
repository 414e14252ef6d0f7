using Alburnum.Reports.Words;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Reports.Requirements;

/// <summary>What is known under a word, as plain lines.</summary>
public static class NameText
{
    private const int Width = 96;

    /// <summary>Timber, component, preservatives and marks, line by line.</summary>
    public static IEnumerable<string> Lines(NameDocument known)
    {
        ArgumentNullException.ThrowIfNull(known);
        return
        [
            .. known.Timber is { } timber ? Timber(known.Word, timber) : [],
            .. known.Component is { } component ? Component(component) : [],
            .. known.Preservatives.SelectMany(Preservative),
            .. known.Marks.SelectMany(Mark),
        ];
    }

    private static IEnumerable<string> Timber(string word, NamedTimberDocument timber)
    {
        var means = timber.Species.Select(species => species.Name).ToList();
        yield return Head(Said("names.timber"), word);
        foreach (var line in Part(timber.Says))
            yield return line;
        if (means.Count > 1)
            foreach (var line in Part(Said(MayBe(timber.Kind), ("names", Joined(means)))))
                yield return line;
        if (timber.Decides.Length > 0)
            foreach (var line in Part(Said("names.decides", ("what", timber.Decides))))
                yield return line;
        if (timber is { LeastTreatable: { } least, Kind: Alburnum.Timber.TimberKind.Mixture })
            foreach (var line in Part(Said("names.least-treatable", ("species", least))))
                yield return line;
        if (timber.TreatabilityNotKnown is { Count: > 0 } open)
            foreach (var line in Part(Said("names.treatability-not-known", ("species", string.Join(", ", open)))))
                yield return line;
        if (timber is { Standing: { } standing, Source: { } source })
            foreach (var line in Part(Sourced(Said("names.name"), standing, source)))
                yield return line;
        foreach (var line in timber.Species.SelectMany(Species))
            yield return line;
    }

    private static string MayBe(Alburnum.Timber.TimberKind kind) =>
        kind == Alburnum.Timber.TimberKind.Modified ? "names.made-from" : "names.may-mean";

    private static IEnumerable<string> Species(SpeciesDocument species) =>
        [
            .. Part(Said("names.species", ("name", species.Name), ("botanical", string.Join(", ", species.Botanical)))),
            .. species.Facts.SelectMany(fact => Part(Sourced(fact.Fact, fact.Standing, fact.Source), "    ")),
            .. Part(species.Notes, "    "),
        ];

    private static IEnumerable<string> Component(NamedComponentDocument component)
    {
        yield return Head(Said("names.component"), component.Name);
        if (component.Components.Count > 0)
            foreach (var line in Part(Said("names.in-codes", ("names", Joined(component.Components)))))
                yield return line;
        if (component.Narrower.Count > 0)
            foreach (var line in Part(Said("names.may-mean", ("names", Joined(component.Narrower)))))
                yield return line;
        if (component.Decides.Length > 0)
            foreach (var line in Part(Said("names.decides", ("what", component.Decides))))
                yield return line;
        if (component.Exposure is { } exposure)
            foreach (
                var line in Part(
                    Said("names.exposure", ("classes", Joined(component.UseClasses)), ("exposure", exposure))
                )
            )
                yield return line;
        if (component.AskNext is { } next)
            foreach (var line in Part(Said("requirements.use-class.ask-next", ("question", next))))
                yield return line;
        if (component is { LifeYears: { } years, LifeStanding: { } standing, LifeSource: { } source })
            foreach (var line in Part(Sourced(Said("names.life", ("years", Figures.Whole(years))), standing, source)))
                yield return line;
        foreach (var line in Part(Sourced(Said("names.name"), component.Standing, component.Source)))
            yield return line;
    }

    private static IEnumerable<string> Preservative(PreservativeDocument preservative)
    {
        yield return Head(Said("names.preservative"), preservative.Name);
        foreach (var line in Part(Said("names.kind", ("kind", preservative.Kind), Listed("codes", preservative.Codes))))
            yield return line;
        foreach (
            var line in Part(
                Said(
                    preservative.FixedInWood ? "names.fixed" : "names.not-fixed",
                    Listed("agents", preservative.ProtectsAgainst),
                    Listed("ways", preservative.AppliedBy)
                )
            )
        )
            yield return line;
        foreach (var line in Part(Said("names.meant-for", Listed("classes", preservative.UseClasses))))
            yield return line;
        foreach (var line in preservative.Limits.SelectMany(limit => Part(limit)))
            yield return line;
        foreach (
            var line in preservative.Restrictions.SelectMany(law => Part(Sourced(law.Fact, law.Standing, law.Source)))
        )
            yield return line;
        foreach (var line in Part(Sourced(Said("names.row"), preservative.Standing, preservative.Source)))
            yield return line;
    }

    private static IEnumerable<string> Mark(MarkDocument mark) =>
        [
            Head(Said("names.mark"), mark.Mark),
            .. Part(Said("names.system", ("system", mark.System), ("means", mark.Means))),
            .. mark switch
            {
                { UseClass: { } use, IsUseClassItself: true } => Part(Said("names.use-class-itself", ("class", use))),
                { UseClass: { } near } => Part(Said("names.roughly", ("class", near))),
                _ => [],
            },
            .. Part(Sourced(Said("names.row"), mark.Standing, mark.Source)),
        ];

    private static string Head(string what, string name) => Said("names.head", ("what", what), ("name", name));

    private static string Joined(IReadOnlyList<string> names) => Wording.Current.Joined("rows.either", names);

    private static (string, string) Listed(string name, IReadOnlyList<string> words) =>
        (name, words.Count > 0 ? string.Join(", ", words) : Said("rows.none"));

    private static string Sourced(string what, Standing standing, string source) =>
        Said(
            "names.sourced",
            ("what", what.TrimEnd('.')),
            ("standing", Wording.Current.Say(standing)),
            ("source", source)
        );

    // Nothing is no line.
    private static IEnumerable<string> Part(string text, string indent = "  ") =>
        text.Length == 0
            ? []
            : Wrap.Lines(text, Width - indent.Length - 2)
                .Select((line, index) => indent + (index == 0 ? "" : "  ") + line);
}
