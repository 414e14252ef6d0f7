using Alburnum.Requirements;
using Alburnum.Workflows.Requirements;

namespace Alburnum.Reports.Words;

/// <summary>What a code of practice demands, and why, in words.</summary>
public sealed class RequirementWords
{
    private readonly Wording _wording;

    /// <summary>In a language.</summary>
    /// <param name="wording">The language.</param>
    public RequirementWords(Wording wording)
    {
        _wording = wording;
        Depths = new(wording);
        Rows = new(wording, Depths);
        Exposure = new(wording);
        Answers = new(wording, Rows, Exposure);
        Preservatives = new(wording, Rows);
        Names = new(wording);
        Routes = new(wording);
        Checks = new(wording, Rows);
        Durability = new(wording);
    }

    /// <summary>In the language chosen.</summary>
    public static RequirementWords Current => new(Wording.Current);

    /// <summary>How deep a rule asks the preservative to be found.</summary>
    public DepthRuleWords Depths { get; }

    /// <summary>What the rows of a rulebook ask and demand.</summary>
    public RowWords Rows { get; }

    /// <summary>What a rulebook answers.</summary>
    public AnswerWords Answers { get; }

    /// <summary>What would make an enquiry possible.</summary>
    public RouteWords Routes { get; }

    /// <summary>What a check of a rulebook found.</summary>
    public RulebookCheckWords Checks { get; }

    /// <summary>Where a piece stands, and its use class.</summary>
    public ExposureWords Exposure { get; }

    /// <summary>Whether timber will do untreated.</summary>
    public DurabilityWords Durability { get; }

    /// <summary>What is known of a timber.</summary>
    public NameWords Names { get; }

    /// <summary>Preservatives, and the marks of other systems.</summary>
    public PreservativeWords Preservatives { get; }

    /// <summary>"sawn" or "round".</summary>
    public string Say(TimberForm form) =>
        form == TimberForm.Sawn ? _wording.Say("requirements.form.sawn") : _wording.Say("requirements.form.round");

    /// <summary>What a reader should know beside a requirement.</summary>
    public string Say(RequirementRemark remark) =>
        remark switch
        {
            FactsAtOdds(var odd) => new DiscrepancyWords(_wording).Say(odd),
            HeartwoodTakenAsExposed => _wording.Say("requirements.remark.heartwood-exposed"),
            NoteOnSpecies(var species) => _wording.Say(
                "requirements.remark.note",
                ("species", species.Name),
                ("note", species.Notes)
            ),
            LastedInGround lasted => Say(lasted),
            OnOtherScales(var species, var scales) => _wording.Say(
                "requirements.remark.other-scales",
                ("species", species.Name),
                ("scales", string.Join(". ", scales.Select(OnScale)))
            ),
            TrapOfUseClass(var trap) => Exposure.Say(trap),
            ElsewhereCalled(var match) => _wording.Say(
                "requirements.remark.elsewhere",
                ("situation", match.Situation),
                ("anz", match.AustralianNewZealand),
                ("american", match.American),
                ("standing", _wording.Say(match.Provenance.Standing)),
                ("source", match.Provenance.Citation)
            ),
            OrientationOnReach(var rests) => _wording.Say(
                "requirements.remark.reach",
                (
                    "sources",
                    string.Join("; ", rests.Select(source => source.Document).Distinct(StringComparer.Ordinal))
                ),
                ("standing", _wording.Say(Provenance.Weakest(rests.Select(source => source.Standing))))
            ),
            LimitsOfPreservative(var kind) => Preservatives.Limit(kind, string.Join(" ", kind.Limits), kind.Provenance),
            OtherCarrier(var kind) => Preservatives.NotPredicted(kind),
            SpreadsByDiffusion(var kind) => _wording.Say(
                "preservatives.spreads-by-diffusion",
                ("name", Wording.Capital(kind.Name))
            ),
            OfPreservative(var finding) => Preservatives.Say(finding),
            UseClassOfCode or MarkOfOtherSystem or MarkNotKnown => OfMark(remark),
            MarineBorersAttack => _wording.Say("requirements.remark.marine-borers"),
            InsectNotAnswered(var insect, var rulebook) => _wording.Say(
                "requirements.remark.insects-not-answered",
                ("insects", insect.Name),
                ("rulebook", rulebook.Citation)
            ),
            InsectNoThreat(var insect, var species) => _wording.Say(
                "requirements.remark.insects-no-threat",
                ("insects", insect.Name),
                ("species", species.Name),
                ("standing", _wording.Say(insect.Provenance.Standing)),
                ("source", insect.Provenance.Citation)
            ),
            CodeGoverns => _wording.Say("requirements.remark.code-governs"),
            _ => throw new ArgumentOutOfRangeException(nameof(remark), remark, "Not a remark."),
        };

    private string Say(LastedInGround lasted)
    {
        (string, string) durability = ("durability", Figures.Whole(lasted.Trial.DurabilityClass));
        (string, string) years = ("years", Durability.Years(lasted.Trial));
        (string, string) standing = ("standing", _wording.Say(lasted.Standing));
        (string, string) source = ("source", lasted.Trial.Provenance.Citation);
        return lasted.IsOfWorseEnd
            ? _wording.Say(
                "requirements.remark.lasted-worse",
                ("species", lasted.Species.Name),
                ("range", lasted.Species.Durability!.Value.Label),
                durability,
                years,
                standing,
                source
            )
            : _wording.Say("requirements.remark.lasted", durability, years, standing, source);
    }

    private string OfMark(RequirementRemark remark) =>
        remark switch
        {
            UseClassOfCode(var stated, var classes, var rulebook, var isAnswered) => _wording.Say(
                isAnswered ? "requirements.remark.own-class" : "requirements.remark.own-class-elsewhere",
                ("stated", stated),
                ("use", Rows.Say(classes)),
                ("rulebook", rulebook.Citation)
            ),
            MarkOfOtherSystem(var mark, var rulebook) => _wording.Say(
                "requirements.remark.other-mark",
                ("mark", Preservatives.Say(mark)),
                ("standing", _wording.Say(mark.Provenance.Standing)),
                ("source", mark.Provenance.Citation),
                ("rulebook", rulebook.Citation)
            ),
            MarkNotKnown(var stated, { Count: 0 }, var rulebook) => _wording.Say(
                "requirements.remark.mark-not-known",
                ("mark", stated),
                ("rulebook", rulebook.Citation)
            ),
            MarkNotKnown(var stated, var near, var rulebook) => _wording.Say(
                "requirements.remark.mark-not-known-near",
                ("mark", stated),
                ("rulebook", rulebook.Citation),
                ("near", string.Join(", ", near))
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(remark), remark, "Not a remark on a mark."),
        };

    private string OnScale(Timber.OtherScale scale) =>
        _wording.Say(
            "requirements.remark.other-scale",
            ("scale", scale.Scale),
            ("says", scale.Says),
            ("means", scale.Means),
            ("standing", _wording.Say(scale.Provenance.Standing))
        );
}
