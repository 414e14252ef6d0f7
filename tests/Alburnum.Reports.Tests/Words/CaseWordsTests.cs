using Alburnum.Acceptance;
using Alburnum.Assaying;
using Alburnum.Cases;
using Alburnum.Impregnation.Charging;
using Alburnum.Records.Facts;
using Alburnum.Reports.Words;
using Alburnum.Requirements;
using Alburnum.Tests.Shared;
using Alburnum.Timber;

namespace Alburnum.Reports.Tests.Words;

public sealed class CaseWordsTests
{
    private static readonly Species Pine = new FactLibrary(Repository.At("data")).Species.Get("Scots pine");
    private static readonly ProductFormula Cca = new FactLibrary(Repository.At("data")).Substances.Products.Single(
        product => product.Key == "cca-c"
    );
    private static readonly Component Rafter = new("rafter");

    /// <summary>At least one remark of each kind, with how its sentence starts.</summary>
    internal static IReadOnlyList<(CaseRemark Remark, string Start)> Remarks { get; } =
    [
        (new NoDepthToReach(), "Nothing is predicted: the code demands no depth"),
        (new PermeabilityNotKnown(Pine, IsHeartwood: false), "Nothing is predicted: the permeability of the sapwood"),
        (new PermeabilityNotKnown(Pine, IsHeartwood: true), "Nothing is predicted: the permeability of the heartwood"),
        (
            new ChargeNotPlanned(new StrengthTooHigh(3.25, 2, IsOfLabel: true)),
            "No charge should be run to its plan: a strength of 3.25 % would be needed, where the label allows 2 %."
        ),
        (
            new ChargeNotPlanned(new StrengthTooHigh(64, 50, IsOfLabel: false)),
            "No charge should be run to its plan: a strength of 64 % would be needed, and no solution holds more than 50 %."
        ),
        (
            new ChargeNotPlanned(new StrengthTooHigh(double.PositiveInfinity, 50, IsOfLabel: false)),
            "No charge should be run to its plan: the zone takes nothing."
        ),
        (
            new ChargeNotPlanned(new ZoneTooUncertain(new(40, 30))),
            "No charge should be run to its plan: what the zone takes, 40 ± 30 L/m³ of zone, is known too badly"
        ),
        (
            new ChargeNotPlanned(new DepthTooSeldom()),
            "No charge should be run to its plan: too few cores reach the depth."
        ),
        (new DensityNotKnown(Pine), "Nothing is predicted: the density of Scots pine"),
        (new SapwoodNotKnown(Pine), "Nothing is predicted: the usual width of the sapwood of Scots pine"),
        (
            new NotInWater(
                new FactLibrary(Repository.At("data")).Preservatives.All.Single(kind => kind.Key == "creosote")
            ),
            "Nothing is predicted for creosote: it goes in with hot oil"
        ),
        (
            new MeasuredOutsidePrediction(new(9, 0.4), new(12.5, 18, 24)),
            "The mean depth measured, 9.0 ± 0.4 mm, is less than the 12.5 to 24.0 mm"
        ),
        (
            new MeasuredOutsidePrediction(new(30, 0.4), new(12.5, 18, 24)),
            "The mean depth measured, 30.0 ± 0.4 mm, is more than the 12.5 to 24.0 mm"
        ),
        (
            new ZoneLeftOpen(),
            "Retention is asked for in more than one zone, and not every assay says which was cut. Less goes deep than stays outside: a content that is enough is taken to be enough in the shallowest, "
                + "one that is too low to be too low in the deepest; nothing else is taken from such an assay."
        ),
        (
            new OtherZoneAssayed(new MeasuredAssay(new(6, 0.3), "S2") { Zone = new(12) }),
            "Sample S2 is of a zone 12 mm deep, for which no retention is required"
        ),
        (
            new OtherZoneAssayed(new MeasuredAssay(new(6, 0.3), "S2") { Zone = new(DepthMm: null) }),
            "Sample S2 is of all the sapwood, for which no retention is required"
        ),
        (
            new SampleOffFormula("composite 1", Cca, [new(Cca.Parts[0].Compound, new(0.6, 0.01), 0.475)]),
            "Sample composite 1: The parts of CCA type C do not stand to each other as its formula has them"
        ),
        (
            new ProductOfAnotherKind(
                new FactLibrary(Repository.At("data")).Preservatives.All.Single(kind => kind.Key == "acq"),
                Cca
            ),
            "The preservative is stated as alkaline copper quaternary, and the retention is counted as CCA type C: one of"
        ),
        (
            new SamplesInPart(["S1", "S2"], ["tebuconazole", "propiconazole"]),
            "Not analysed: tebuconazole, propiconazole (sample S1, S2). The retention is worked out from the rest"
        ),
        (new EnquiryAtOdds(new TooMoist(40, 28)), "A moisture of 40 % before treatment is stated"),
        (new SampledBeforeTreated(new(2026, 5, 12), new(2026, 5, 20)), "The sections were cut on 12 May 2026, before"),
        (new MoistureMeasuredLater(new(2026, 5, 2), new(2026, 5, 1)), "The moisture was measured on 2 May 2026, after"),
        (new BorderNotDistinct(Pine, 25), "Scots pine shows no clear border"),
        (new IncisionsNotStated(["P01", "P02"]), "P01, P02: the front has fingers"),
        (new IncisionsNotSeen(["P01"]), "P01: the timber is said to be incised"),
        (new SizesOnTrust(8), "Depths of 8 pieces rest on the nominal size, taken on trust"),
        (
            new SapwoodAsStated(new(25, 2), IsUncertaintyStated: true, MovesDemand: true),
            "Where a section shows no border, the sapwood is taken as stated, 25 mm deep; its standard uncertainty as stated, 2.00 mm,"
        ),
        (
            new SapwoodAsStated(new(25, 0.29), IsUncertaintyStated: false, MovesDemand: true),
            "Where a section shows no border, the sapwood is taken as stated, 25 mm deep; no uncertainty of it is stated, so it is taken as read to the millimetre"
        ),
        (
            new SapwoodAsStated(new(25, 2), IsUncertaintyStated: true, MovesDemand: false),
            "Where a section shows no border, the sapwood is taken as stated, 25 mm deep."
        ),
        (
            new SapwoodByRuler(0.5),
            "A border of the sapwood read with a ruler is taken to be as uncertain as the depth read beside it (standard uncertainty 0.50 mm at most)"
        ),
    ];

    private static readonly UseClassByContract ForAbove = new(
        "AB",
        new("3.2", [UseClass.ThreeTwo], null),
        IsOfCode: true
    );

    /// <summary>At least one discrepancy of each kind, with how its sentence starts.</summary>
    internal static IReadOnlyList<(Discrepancy Discrepancy, string Start)> Odd { get; } =
    [
        (
            new UseClassesDiffer(
                new UseClassStated("3c", [UseClass.ThreeOne, UseClass.ThreeTwo], IsCoated: true),
                new UseClassByCode("rafter", new("1", [UseClass.One], null), "An invented code")
            ),
            "The use class is stated as 3c (taken as 3.1 or 3.2); for rafter, An invented code has use class 1: one of the two"
        ),
        (
            new UseClassesDiffer(
                new UseClassStated("4", [UseClass.Four], IsCoated: null),
                new UseClassByName("wall plate", [UseClass.One])
            ),
            "The use class is stated as 4; for wall plate it is usually use class 1: one of the two"
        ),
        (
            new UseClassesDiffer(
                new UseClassByPlace([UseClass.One, UseClass.Two]),
                new UseClassByCode("post", new("4", [UseClass.Four], null), "An invented code")
            ),
            "Where it stands makes it use class 1 or 2; for post, An invented code has use class 4: one of the two"
        ),
        (
            new UseClassesDiffer(
                ForAbove,
                new UseClassByCode("fence post", new("3u", [UseClass.Four], null), "An invented code")
            ),
            "The contract's class AB is for use class 3.2; for fence post, An invented code has use class 3u: one of the two does not fit, or the place is unusual. What the contract's class asks for may be too little there."
        ),
        (
            new UseClassesDiffer(new UseClassStated("4", [UseClass.Four], IsCoated: null), ForAbove),
            "The contract's class AB is for use class 3.2; the use class is stated as 4: one of the two does not fit, or the place is unusual. What the contract's class asks"
        ),
        (new CoatingAgainstClass(IsCoated: true), "Use class 3u stands for uncoated timber"),
        (new CoatingAgainstClass(IsCoated: false), "Use class 3c stands for coated timber"),
        (new CoatingAgainstCode(Rafter, new("3c", [UseClass.ThreeOne], true), IsCoated: false), "No coating is said"),
        (new CoatingAgainstCode(Rafter, new("3u", [UseClass.ThreeOne], false), IsCoated: true), "A coating is said"),
        (new LifeBeyondUsual(Rafter, new(60), new(30)), "A life of 60 years is asked for, and the code takes 30 years"),
        (
            new LifeNotOfCode("post", new(60), new(15), "Another code", "This code"),
            "A life of 60 years is asked for; for post no code here takes more than 15 years as usual (Another code). This code has no lives"
        ),
        (
            new LifeNotOfCode("post", new(60), new(15), null, "This code"),
            "A life of 60 years is asked for; 15 years are usual for post. This code has no lives for it"
        ),
        (new TooMoist(40, 28), "A moisture of 40 % before treatment is stated, and the code allows at most 28 %"),
        (new HeartwoodOnRound(null), "Heartwood is said to reach a face of a round piece"),
        (new HeartwoodOnRound(new RoundSection(100)), "Heartwood is said to reach a face of ø 100 mm"),
    ];

    private static readonly DiscrepancyWords OddWords = new(Wording.English);

    [Fact]
    public void Every_discrepancy_has_its_sentence() =>
        Assert.All(
            Odd,
            each => Assert.StartsWith(each.Start, OddWords.Say(each.Discrepancy), StringComparison.Ordinal)
        );

    [Fact]
    public void No_kind_of_discrepancy_is_left_out() =>
        Assert.Equal(
            typeof(Discrepancy).Assembly.GetTypes().Where(type => type.BaseType == typeof(Discrepancy)).ToHashSet(),
            Odd.Select(each => each.Discrepancy.GetType()).ToHashSet()
        );

    [Fact]
    public void Every_remark_has_its_sentence() =>
        Assert.All(
            Remarks,
            each => Assert.StartsWith(each.Start, CaseWords.Current.Say(each.Remark), StringComparison.Ordinal)
        );

    [Fact]
    public void No_kind_of_remark_is_left_out() =>
        Assert.Equal(
            typeof(CaseRemark).Assembly.GetTypes().Where(type => type.BaseType == typeof(CaseRemark)).ToHashSet(),
            Remarks.Select(each => each.Remark.GetType()).ToHashSet()
        );
}
