using Alburnum.Impregnation;
using Alburnum.Impregnation.Incising;
using Alburnum.Impregnation.Prediction;
using Alburnum.Requirements;
using Alburnum.Timber;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Reports.Words;

/// <summary>What every answer about treating says of the wood, the cuts and what is asked, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class TreatingWords(Wording wording)
{
    /// <summary>In the language chosen.</summary>
    public static TreatingWords Current => new(Wording.Current);

    /// <summary>Said on every prediction.</summary>
    /// <param name="moisturePercent">Moisture content before treatment, %: wet timber is said first.</param>
    /// <param name="isWarmed">Whether wood and solution differ in temperature, or steam or hot air warms the wood.</param>
    public IReadOnlyList<string> Cautions(double moisturePercent, bool isWarmed) =>
        [
            .. TooWet(moisturePercent),
            .. isWarmed ? new[] { wording.Say("treating.caution-heat") } : [],
            wording.Say("treating.caution-check"),
            wording.Say("treating.caution-label"),
        ];

    /// <summary>The same of one question.</summary>
    public IReadOnlyList<string> Cautions(TreatingQuestion asked)
    {
        ArgumentNullException.ThrowIfNull(asked);
        return
        [
            .. TooHot(asked.Schedule.Value),
            .. TooDeep(asked.Prediction.Section, asked.Prediction.ZoneDepthMm),
            .. Cautions(asked.MoisturePercent, asked.Prediction.Warming is not null),
        ];
    }

    /// <summary>That a zone is deeper than the piece; nothing where it is not.</summary>
    /// <param name="section">The piece.</param>
    /// <param name="zoneMm">Depth of the zone, mm; null where there is none.</param>
    public IEnumerable<string> TooDeep(Section section, double? zoneMm)
    {
        var deepest = SectionBorder.DeepestMm(section);
        if (zoneMm > deepest)
            yield return wording.Say(
                "treating.caution-zone",
                ("zone", Figures.Digits(zoneMm.Value, 1)),
                ("section", section.Label),
                ("deepest", Figures.Digits(deepest, 1))
            );
    }

    // Wood Handbook, chapter 15, published.
    private const double HottestSteamCelsius = 118;

    private IEnumerable<string> TooHot(Schedule schedule)
    {
        var hottest = schedule
            .Stages.Where(stage => stage.Contact == Contact.Air)
            .Select(stage => stage.Celsius ?? 0)
            .DefaultIfEmpty(0)
            .Max();
        if (hottest > HottestSteamCelsius)
            yield return wording.Say(
                "treating.caution-steam",
                ("hottest", Figures.Number(hottest, 0)),
                ("most", Figures.Number(HottestSteamCelsius, 0))
            );
    }

    /// <summary>That timber is too wet for treatment; nothing where it is not.</summary>
    /// <param name="moisturePercent">Moisture content before treatment, %.</param>
    public IEnumerable<string> TooWet(double moisturePercent)
    {
        if (TreatingQuestion.IsTooWet(moisturePercent))
            yield return wording.Say(
                "treating.caution-wet",
                ("moisture", Figures.Number(moisturePercent, 0)),
                ("limit", Figures.Number(TreatingQuestion.WetFromPercent, 0))
            );
    }

    /// <summary>What is asked, in one line.</summary>
    public string Title(TreatingQuestion asked)
    {
        ArgumentNullException.ThrowIfNull(asked);
        return Title(asked.Species, asked.Prediction.Section, asked.Schedule.Value.Name);
    }

    /// <summary>The same from its parts.</summary>
    public string Title(Species species, Section section, string schedule)
    {
        ArgumentNullException.ThrowIfNull(species);
        ArgumentNullException.ThrowIfNull(section);
        return wording.Say(
            "treating.title",
            ("species", species.Name),
            ("section", section.Label),
            ("schedule", schedule)
        );
    }

    /// <summary>What must be reached.</summary>
    public static string Demand(DepthRule rule)
    {
        ArgumentNullException.ThrowIfNull(rule);
        return RequirementWords.Current.Depths.Say(rule);
    }

    /// <summary>That this must be reached.</summary>
    /// <param name="demand">What, in words.</param>
    public string Required(string demand) => wording.Say("treating.required", ("demand", demand));

    /// <summary>That this was assumed.</summary>
    /// <param name="sentences">One sentence for each assumption, one or more.</param>
    public string Assumed(params IEnumerable<string> sentences) =>
        wording.Say("treating.assumed", ("assumptions", string.Join(' ', sentences)));

    /// <summary>What a permeability law speaks of, and whether it was fitted.</summary>
    public string Name(PermeabilityLaw law)
    {
        ArgumentNullException.ThrowIfNull(law);
        return law.FittedCharges is { } charges
            ? wording.Say(
                "treating.law-fitted",
                ("name", law.Name),
                ("charges", wording.Count("count.charge", charges))
            )
            : law.Name;
    }

    /// <summary>One sentence for each assumption, in their order.</summary>
    public IReadOnlyList<string> Say(IEnumerable<LogAssumption> assumptions) => [.. assumptions.Select(Say)];

    /// <summary>The sentence of an assumption.</summary>
    /// <exception cref="ArgumentOutOfRangeException">An assumption of a kind that no sentence is known for.</exception>
    public string Say(LogAssumption assumption) =>
        assumption switch
        {
            SapwoodNotDistinct alike => wording.Say(
                "treating.sapwood-not-distinct",
                ("species", alike.Species.Name),
                ("standing", wording.Say(alike.Standing))
            ),
            SapwoodAsUsual usual => wording.Say(
                "treating.sapwood-as-usual",
                ("width", Figures.Digits(usual.Width.Mm, 1)),
                ("narrowest", Figures.Digits(usual.Width.NarrowestMm, 1)),
                ("widest", Figures.Digits(usual.Width.WidestMm, 1)),
                ("standing", wording.Say(usual.Standing))
            ),
            PithInTheMiddle => wording.Say("treating.pith-in-the-middle"),
            PithAtACorner => wording.Say("treating.pith-at-a-corner"),
            SmallestLog => wording.Say("treating.smallest-log"),
            _ => throw new ArgumentOutOfRangeException(nameof(assumption), assumption, "Not an assumption."),
        };

    /// <summary>The cuts of a pattern.</summary>
    public string Say(IncisingPattern pattern)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        return wording.Say(
            "treating.pattern",
            ("depth", Figures.Digits(pattern.DepthMm, 1)),
            ("length", Figures.Digits(pattern.LengthMm, 1)),
            ("along", Figures.Digits(pattern.AlongMm, 1)),
            ("across", Figures.Digits(pattern.AcrossMm, 1)),
            ("density", Figures.Number(pattern.DensityPerM2, 0))
        );
    }

    /// <summary>What design codes take off for the cuts of a pattern, or why their factors do not hold for it.</summary>
    public string Penalty(IncisingPenalty penalty, IncisingPattern pattern)
    {
        ArgumentNullException.ThrowIfNull(penalty);
        return penalty.Beyond(pattern) is { Count: > 0 } beyond
            ? wording.Say("treating.strength-by-test", ("reasons", string.Join(" ", beyond.Select(Say))))
            : wording.Say(
                "treating.strength-factors",
                ("strength", Figures.Number(penalty.Strength, 2)),
                ("stiffness", Figures.Number(penalty.ModulusOfElasticity, 2)),
                ("bearing", Figures.Number(penalty.Bearing, 2))
            );
    }

    private string Say(BeyondFactors beyond) =>
        beyond switch
        {
            CutsTooDeep deep => wording.Say(
                "treating.cuts-too-deep",
                ("depth", Figures.Digits(deep.Mm, 1)),
                ("greatest", Figures.Digits(deep.GreatestMm, 1))
            ),
            CutsTooLong length => wording.Say(
                "treating.cuts-too-long",
                ("length", Figures.Digits(length.Mm, 1)),
                ("greatest", Figures.Digits(length.GreatestMm, 1))
            ),
            CutsTooDense dense => wording.Say(
                "treating.cuts-too-dense",
                ("cuts", Figures.Number(dense.PerM2, 0)),
                ("greatest", Figures.Number(dense.GreatestPerM2, 0))
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(beyond), beyond, "Not a limit of the factors."),
        };
}
