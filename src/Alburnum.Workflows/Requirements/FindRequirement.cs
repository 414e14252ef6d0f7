using Alburnum.Impregnation;
using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Timber;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Workflows.Requirements;

/// <summary>What a code of practice demands of a piece, with what helps to act on it.</summary>
/// <param name="Answer">What the rulebook says, and why.</param>
/// <param name="Untreated">Whether the timber will do untreated; null where species or use class is not known.</param>
/// <param name="Insects">Insects that would make treatment wise although the code asks for none: those that may attack the timber and that nobody has ruled out.</param>
/// <param name="Expected">What pressure treatment is expected to reach; null where no depth is required, too little of the piece is known, or it is too wet to be treated.</param>
/// <param name="Routes">Every change tried, best first; empty where nothing is wrong, and where it is not known what is required.</param>
/// <param name="Warnings">What must be known before the demand is read, in the order in which it is said.</param>
/// <param name="Remarks">What else a reader should know, in the order in which it is said.</param>
/// <param name="Contract">What becomes of the class that the contract names; null where none is named, or where the rulebook answers by it.</param>
public sealed record FoundRequirement(
    Answer Answer,
    UntreatedTimber? Untreated,
    IReadOnlyList<Insect> Insects,
    TreatingPrediction? Expected,
    IReadOnlyList<FoundRoute> Routes,
    IReadOnlyList<RequirementRemark> Warnings,
    IReadOnlyList<RequirementRemark> Remarks,
    ContractClass? Contract
)
{
    /// <summary>True where a class that the contract names is for another use, so that nothing can be ordered yet.</summary>
    public bool IsHeldUpByContract =>
        Warnings.OfType<FactsAtOdds>().Any(odd => odd.Discrepancy is UseClassesDiffer { HoldsUpOrder: true });

    /// <summary>The preservative with which the piece may not be treated where the code is in force; null where nothing is known to forbid it.</summary>
    public Preservative? HeldUpByLaw =>
        Warnings
            .OfType<OfPreservative>()
            .FirstOrDefault(each => each.Finding is RestrictedByLaw { HoldsUpOrder: true })
            ?.Finding.Preservative;

    /// <summary>What may make it possible, likeliest first.</summary>
    public IEnumerable<FoundRoute> Ways => Routes.Where(route => route.Reach != ReachVerdict.Unlikely);

    /// <summary>What would not do, though it lies near.</summary>
    public IEnumerable<FoundRoute> Failing => Routes.Where(route => route.Reach == ReachVerdict.Unlikely);
}

/// <summary>A route, with what pressure treatment is expected to reach on it.</summary>
/// <param name="Route">The route.</param>
/// <param name="Expected">The prediction; null where no depth is required or too little of the piece is known.</param>
public sealed record FoundRoute(Route Route, TreatingPrediction? Expected)
{
    // A route is recommended on fewer doubts than an answer is given. Our own choice.
    private const double MostPieces = 0.75;
    private const double FewPieces = 0.25;

    /// <summary>What is usual by treatability and incising alone, where the prediction keeps it from being the answer; null where the two agree.</summary>
    public ReachVerdict? UsualAgainstPrediction =>
        Expected?.Usual?.Verdict is { } usual and not ReachVerdict.NotKnown && usual != Reach ? usual : null;

    /// <summary>True where nothing speaks for it or against it: neither what is usual nor a prediction.</summary>
    public bool IsNotKnownAtAll => Reach == ReachVerdict.NotKnown && Expected is null;

    /// <summary>Whether the demand is met then: not known where what is usual and what is predicted point different ways; where nothing is usual, few pieces predicted are a no.</summary>
    public ReachVerdict Reach =>
        (Route.Reach, Expected?.Quick.PieceShare.Value) switch
        {
            (ReachVerdict.Likely, < MostPieces) => ReachVerdict.NotKnown,
            (ReachVerdict.NotKnown, < FewPieces) => ReachVerdict.Unlikely,
            _ when Expected is { DiffersFromUsual: true } => ReachVerdict.NotKnown,
            _ => Route.Reach,
        };
}

/// <summary>Asks a rulebook what it demands of a piece, and looks for what would make it possible.</summary>
public static class FindRequirement
{
    /// <summary>Asks.</summary>
    /// <param name="enquiry">What is known of the piece.</param>
    /// <param name="rulebook">The rulebook to ask.</param>
    /// <param name="facts">Species, durability, and what is known beside the codes.</param>
    /// <param name="progress">Told the share of the routes whose depth is predicted; null where nobody looks.</param>
    /// <param name="stop">Stops the work.</param>
    public static FoundRequirement Run(
        Enquiry enquiry,
        Rulebook rulebook,
        FactLibrary facts,
        IProgress<WorkDone>? progress,
        CancellationToken stop
    )
    {
        ArgumentNullException.ThrowIfNull(rulebook);
        ArgumentNullException.ThrowIfNull(facts);
        var answer = rulebook.Answer(enquiry);
        var asked = answer.Trace.AsAnswered;
        var contract = ContractClass.Of(answer, rulebook, facts.Rulebooks.All);
        // Where it is open what is required, nothing can be known to meet it.
        var depth = answer is NotCovered { Least: not null } ? null : ContractClass.Deciding(answer, contract);
        // Timber that is too wet is not treated as it is: what it reaches when dry is told of drying it.
        var isTooWet =
            answer is Required { Requirement: var demand } && asked.MoisturePercent > demand.MoistureMaxPercent;
        var expected = isTooWet ? null : Expected(answer, depth, asked, facts, stop);
        var routes = Predicted(Routes(answer, contract, asked, rulebook, facts), facts, progress, stop);
        var untreated = asked is { Species: { } species, UseClasses.Count: > 0 }
            ? facts.Durability.Judge(species, asked.UseClasses.Max()) with
            {
                IsUseClassOpen = asked.UseClasses.Count > 1,
            }
            : null;
        // Timber that is too wet to be treated is told with the demand.
        var atOdds = Discrepancies
            .Of(answer, facts.Rulebooks.All)
            .Where(odd => odd is not TooMoist || answer is not Required)
            .ToLookup(odd => odd is UseClassesDiffer, odd => new FactsAtOdds(odd));
        return new(
            answer,
            untreated,
            InsectsNotRuledOut(answer, contract, facts),
            expected,
            routes,
            [.. atOdds[true], .. RequirementWarnings.Of(answer, rulebook, contract, facts)],
            [.. atOdds[false], .. Remarks(asked, routes.Count > 0, facts)],
            contract
        );
    }

    /// <summary>Insects that would make treatment wise although the code asks for none: those that may attack the timber and that nobody has ruled out. None where the contract has it treated all the same.</summary>
    internal static IReadOnlyList<Insect> InsectsNotRuledOut(
        Answer answer,
        ContractClass? contract,
        FactLibrary facts
    ) =>
        answer is NotNeeded { IsUnlessInsects: true } && contract is not ContractDemand
            ? answer.Trace.Enquiry.Insects.NotRuledOut(facts.Insects)
            : [];

    // By the same model, from the same data and with the same draws as a prediction that is asked for, with the usual schedule and cuts.
    private static TreatingPrediction? Expected(
        Answer answer,
        DepthRule? depth,
        Enquiry enquiry,
        FactLibrary facts,
        CancellationToken stop
    )
    {
        if (
            enquiry.PreservativeKind is { Carrier: not null } or { Diffuses: true }
            || depth is null or NoDepth
            || enquiry is not { Species: { } species, Section: { } section and not QuarteredSection }
        )
            return null;
        var request = new PredictionRequest
        {
            Treating = new()
            {
                Species = species,
                Section = section,
                Demand = depth,
                Incising = enquiry.IsIncised == true ? TreatingRequest.UsualIncising : null,
                // Timber that is too wet is dried first.
                MoisturePercent = Math.Min(
                    enquiry.MoisturePercent ?? TreatingRequest.UsualMoisturePercent,
                    (answer as Required)?.Requirement.MoistureMaxPercent ?? TreatingRequest.UsualMoisturePercent
                ),
            },
            Pieces = Draws.Pieces,
            Seed = Draws.Seed,
        };
        if (!Predict.Knows(request.Treating, facts))
            return null;
        var sapwood = Predict.Run(request, facts, progress: null, stop);
        // No limit on untreated heartwood is predicted, only what is asked of the sapwood beside it.
        if (DepthOrder.LimitsUntreatedHeartwood(depth))
            sapwood = sapwood with { LesserPart = WoodZone.Sapwood };
        return MayAskOfHeartwood(depth, enquiry, sapwood)
            ? WithHeartwood(sapwood, request, enquiry, facts, stop)
            : sapwood;
    }

    // A piece that is drawn with heartwood at its faces holds it in its figures already.
    private static bool MayAskOfHeartwood(DepthRule depth, Enquiry enquiry, TreatingPrediction drawn) =>
        DepthOrder.AsksOfHeartwoodAtFace(depth)
        && (enquiry.HeartwoodAtFace ?? drawn.Quick.Places.All(place => place.SapwoodMm > 0));

    // How much heartwood shows is not known: each wood is predicted as if there were no other at the faces, and whatever meets both meets the harder.
    private static TreatingPrediction WithHeartwood(
        TreatingPrediction sapwood,
        PredictionRequest request,
        Enquiry enquiry,
        FactLibrary facts,
        CancellationToken stop
    )
    {
        var heartwood = Predict.Run(
            request with
            {
                Treating = request.Treating with { All = WoodThroughout.Heartwood },
            },
            facts,
            progress: null,
            stop
        );
        var lesser =
            sapwood.Quick.PieceShare.Value < heartwood.Quick.PieceShare.Value
                ? sapwood with
                {
                    LesserPart = WoodZone.Sapwood,
                    Usual = heartwood.Usual,
                }
                : heartwood with
                {
                    LesserPart = WoodZone.ExposedHeartwood,
                };
        return lesser with { WithoutHeartwoodAtFace = enquiry.HeartwoodAtFace is null ? sapwood : null };
    }

    private static IReadOnlyList<FoundRoute> Predicted(
        IReadOnlyList<Route> routes,
        FactLibrary facts,
        IProgress<WorkDone>? progress,
        CancellationToken stop
    )
    {
        var found = new List<FoundRoute>(routes.Count);
        foreach (var route in routes)
        {
            stop.ThrowIfCancellationRequested();
            var expected = route.Answer is { } then ? Expected(then, route.Depth, route.Enquiry, facts, stop) : null;
            found.Add(new(route, expected));
            progress?.Report(new((double)found.Count / routes.Count));
        }
        // What is half known stands before what is not known at all; where kind and sale are alike, the likelier first.
        return
        [
            .. found
                .OrderBy(each => each.Reach)
                .ThenBy(each => each.IsNotKnownAtAll)
                .ThenBy(each => each.Route.Answer is NotCovered)
                .ThenBy(each => each.Route.CommonlySold is null)
                .ThenBy(each => each.Route.Kind)
                .ThenByDescending(each => each.Expected?.Quick.PieceShare.Value ?? 0),
        ];
    }

    private static IReadOnlyList<Route> Routes(
        Answer answer,
        ContractClass? contract,
        Enquiry enquiry,
        Rulebook rulebook,
        FactLibrary facts
    )
    {
        // Of what is no timber of one species nothing can be changed until it is known what it is; what diffuses asks for no other timber.
        if (enquiry.NotOneSpecies is not null || enquiry.PreservativeKind is { Diffuses: true })
            return [];
        var search = new RouteSearch(rulebook, facts.Species, facts.Durability, facts.UsualReach, facts.CommonChoices)
        {
            Known = enquiry.StatedClass is null ? [] : facts.Rulebooks.All,
        };
        if (answer is NotPermitted or NotCovered { Reason: TimberNotCovered })
            return search.Find(enquiry);
        // Where it is not known what is required, nothing can be known to meet it.
        if (answer is not Required { Requirement: var demand })
            return [];
        if (
            facts.UsualReach.Judge(
                ContractClass.Deciding(answer, contract) ?? demand.Penetration,
                enquiry.Species,
                enquiry.IsIncised == true,
                enquiry.HeartwoodAtFace
            ) == ReachVerdict.Unlikely
        )
            return search.Find(enquiry);
        return enquiry.MoisturePercent > demand.MoistureMaxPercent
            ? [.. search.Find(enquiry).Where(route => route.Kind == RouteKind.Dry)]
            : [];
    }

    private static IEnumerable<RequirementRemark> Remarks(Enquiry enquiry, bool hasRoutes, FactLibrary facts)
    {
        if (hasRoutes && enquiry is { FormOrFromSection: TimberForm.Sawn, HasExposedHeartwood: null })
            yield return new HeartwoodTakenAsExposed();
        if (hasRoutes)
            yield return new OrientationOnReach([.. facts.UsualReach.Rows.Select(row => row.Provenance)]);
        if (enquiry.Species is { } species)
        {
            foreach (var remark in OfSpecies(species, enquiry, facts))
                yield return remark;
        }
        if (enquiry.PreservativeKind is { Carrier: not null } carried)
            yield return new OtherCarrier(carried);
        if (enquiry.PreservativeKind is { Diffuses: true } spreading)
            yield return new SpreadsByDiffusion(spreading);
        if (enquiry.PreservativeKind is { Limits.Count: > 0 } preservative)
            yield return new LimitsOfPreservative(preservative);
        foreach (var trap in facts.UseClassTraps.Where(trap => trap.UseClasses.Intersect(enquiry.UseClasses).Any()))
            yield return new TrapOfUseClass(trap);
        foreach (var match in facts.Equivalences.Where(match => match.UseClasses.Intersect(enquiry.UseClasses).Any()))
            yield return new ElsewhereCalled(match);
        yield return new CodeGoverns();
    }

    // What is known of the timber beside its classes: conflicts between sources, trials, scales of other systems.
    private static IEnumerable<RequirementRemark> OfSpecies(Species species, Enquiry enquiry, FactLibrary facts)
    {
        if (species.Notes.Length > 0)
            yield return new NoteOnSpecies(species);
        if (
            enquiry.UseClasses.Contains(UseClass.Four)
            && enquiry.TouchesGround != false
            && facts.Durability.InGround(species) is { } trial
        )
            yield return new LastedInGround(species, trial);
        var scales = facts
            .OtherScales.Where(scale => scale.SpeciesNames.Contains(species.Name, StringComparer.Ordinal))
            .ToList();
        if (scales.Count > 0)
            yield return new OnOtherScales(species, scales);
    }
}
