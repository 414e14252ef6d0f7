using Alburnum.Reports.Words;
using Alburnum.Requirements;
using Alburnum.Timber;
using Alburnum.Workflows.Requirements;

namespace Alburnum.Reports.Requirements;

/// <summary>From what is known under a word to its document.</summary>
public static class NameMapping
{
    private static RequirementWords Words => RequirementWords.Current;

    /// <summary>The document.</summary>
    public static NameDocument From(KnownName known)
    {
        ArgumentNullException.ThrowIfNull(known);
        return new()
        {
            Format = "alburnum name",
            Version = 1,
            Word = known.Word,
            Timber = known is { Timber: null, Species: [] } ? null : From(known.Timber, known.Species),
            Component = known.Component is { } component ? From(component) : null,
            Preservatives = [.. known.Preservatives.Select(From)],
            Marks = [.. known.Marks.Select(From)],
        };
    }

    private static NamedTimberDocument From(TimberName? name, IReadOnlyList<Species> species) =>
        new()
        {
            Kind = name?.Kind ?? TimberKind.Species,
            Says = name?.Says ?? "",
            Decides = name?.Decides ?? "",
            LeastTreatable = species.Count > 1 ? name?.LeastTreatable?.Name : null,
            Where = name?.Where ?? [],
            Standing = name?.Provenance.Standing,
            Source = name?.Provenance.Citation,
            TreatabilityNotKnown = name is { Kind: TimberKind.Mixture }
                ? [.. name.OfUnknownTreatability.Select(each => each.Name)]
                : [],
            Species = [.. species.Select(each => name is { Kind: TimberKind.Modified } ? Changed(each) : From(each))],
        };

    // What is known of the wood no longer holds of it.
    private static SpeciesDocument Changed(Species species) => From(species) with { Facts = [], Notes = "" };

    private static SpeciesDocument From(Species species) =>
        new()
        {
            Name = species.Name,
            Botanical = species.BotanicalNames,
            Facts =
            [
                .. Fact(species.Durability, Words.Names.Durability),
                .. Fact(species.HeartwoodTreatability, Words.Names.HeartwoodTreatability),
                .. Fact(species.SapwoodTreatability, Words.Names.SapwoodTreatability),
                .. Fact(species.SapwoodWidth, Words.Names.SapwoodWidth),
                .. Fact(species.Density, Words.Names.Density),
            ],
            Notes = species.Notes,
        };

    private static IEnumerable<FactDocument> Fact<T>(Fact<T>? fact, Func<T, string> say)
    {
        if (fact is not null)
            yield return new()
            {
                Fact = say(fact.Value),
                Standing = fact.Provenance.Standing,
                Source = fact.Provenance.Citation,
            };
    }

    private static NamedComponentDocument From(ComponentName name)
    {
        var saysWhere = name.Exposure.SaysWhere;
        var use = name.Exposure.UseClass();
        return new()
        {
            Name = name.Name,
            Group = name.Group,
            Components = [.. name.Is.Select(component => component.Name)],
            Narrower = name.Narrower,
            Decides = name.Decides,
            Exposure = saysWhere ? Words.Exposure.Say(name.Exposure) : null,
            UseClasses = saysWhere ? [.. use.Classes.Select(each => each.Label())] : [],
            AskNext = saysWhere && use.NextQuestion is { } next ? Words.Exposure.Say(next) : null,
            LifeYears = name.Life?.Value.Years,
            LifeStanding = name.Life?.Provenance.Standing,
            LifeSource = name.Life?.Provenance.Citation,
            Standing = name.Provenance.Standing,
            Source = name.Provenance.Citation,
        };
    }

    private static PreservativeDocument From(Preservative preservative) =>
        new()
        {
            Name = preservative.Name,
            Codes = preservative.Codes,
            AlsoCalled = preservative.AlsoCalled,
            Kind = preservative.Kind,
            ActiveElements = preservative.ActiveElements,
            ProtectsAgainst = [.. preservative.ProtectsAgainst.Select(Words.Preservatives.Say)],
            FixedInWood = preservative.IsFixed,
            AppliedBy = preservative.AppliedBy,
            UseClasses = [.. preservative.UseClasses.Select(each => each.Label())],
            Limits = preservative.Limits,
            Restrictions =
            [
                .. preservative.Restrictions.Select(restriction => new FactDocument
                {
                    Fact = restriction.Says,
                    Standing = restriction.Provenance.Standing,
                    Source = restriction.Provenance.Citation,
                }),
            ],
            Standing = preservative.Provenance.Standing,
            Source = preservative.Provenance.Citation,
        };

    private static MarkDocument From(TreatmentMark mark) =>
        new()
        {
            Mark = mark.Name,
            System = mark.System,
            Means = mark.Means,
            UseClass = mark.UseClass?.Label(),
            IsUseClassItself = mark.IsUseClassItself,
            Standing = mark.Provenance.Standing,
            Source = mark.Provenance.Citation,
        };
}
