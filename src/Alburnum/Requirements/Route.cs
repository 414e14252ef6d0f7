using Alburnum.Facts;
using Alburnum.Timber;

namespace Alburnum.Requirements;

/// <summary>One way to make an enquiry possible.</summary>
/// <param name="Change">What is changed.</param>
/// <param name="IsIncisedToo">True where the faces are incised as well.</param>
/// <param name="Enquiry">The enquiry after the change.</param>
/// <param name="Answer">What the rulebook then says: a demand, or that it is silent; null where no preservative is needed.</param>
/// <param name="Reach">Whether the demand is usually met then.</param>
/// <param name="Untreated">The verdict on untreated timber, where that is the route.</param>
public sealed record Route(
    RouteChange Change,
    bool IsIncisedToo,
    Enquiry Enquiry,
    Answer? Answer,
    ReachVerdict Reach,
    UntreatedTimber? Untreated
)
{
    /// <summary>What kind of change it is.</summary>
    public RouteKind Kind => Change.Kind;

    /// <summary>Greatest moisture to which the timber, too wet as it is, is dried as well, %; null where it need not be, or drying is the change.</summary>
    public double? DriedTooPercent { get; init; }

    /// <summary>The depth that decides then, of code and contract; null where none is known or required.</summary>
    public DepthRule? Depth { get; init; }

    /// <summary>What becomes of the class that the contract names; null where none is named, or where the code answers by it.</summary>
    public ContractClass? Contract { get; init; }

    /// <summary>That the timber is commonly sold for the component; null where that is not known, or no other timber is proposed.</summary>
    public CommonTimber? CommonlySold { get; init; }

    /// <summary>How long such heartwood, of the worse end of its durability, lasted in the ground; null where that does not matter or is not known.</summary>
    public YearsInGround? Trial { get; init; }
}

/// <summary>Searches the neighbourhood of an enquiry for what would make it possible.</summary>
public sealed class RouteSearch(
    Rulebook rulebook,
    SpeciesCatalogue species,
    NaturalDurability durability,
    UsualReach reach,
    CommonChoices common
)
{
    private const int SpeciesMax = 3;
    private const double UnknownDensityKgPerM3 = 600;

    /// <summary>Rulebooks in which a class that the contract names is looked up; may be empty where none is named.</summary>
    public IEnumerable<Rulebook> Known { get; init; } = [];

    // Poles and posts are ordered by full steps of diameter. Our own choice.
    private const double DiameterStepMm = 5;

    /// <summary>Every change tried: what is usually reached first, of that what is commonly sold for the component, of that what asks least of the client; then what the rulebook is silent on; what will not do last.</summary>
    /// <remarks>
    /// Where it is not known whether heartwood of a sawn piece is exposed, it is taken to be: the careful side. Two changes are
    /// combined only with incising. Where the rulebook answers the enquiry itself but is silent on a kind of change, that is
    /// given once. A shorter life or a lower class for which the code asks the same depth changes nothing, and is left out.
    /// </remarks>
    public IReadOnlyList<Route> Find(Enquiry enquiry)
    {
        ArgumentNullException.ThrowIfNull(enquiry);
        if (enquiry.FormOrFromSection == TimberForm.Sawn)
            enquiry = enquiry with { HasExposedHeartwood = enquiry.HasExposedHeartwood ?? true };
        var isSilent = rulebook.Answer(enquiry) is NotCovered;
        var treated = Changes(enquiry)
            .SelectMany(WithAndWithoutIncising)
            .Select(changed => Dried(changed, enquiry))
            .OfType<Changed>()
            .Where(changed => !AsksTheSame(changed, enquiry))
            .Select(Asked)
            .OfType<Route>()
            .Where(route => !(isSilent && route.Answer is NotCovered));
        return
        [
            .. KeepBest([.. treated, .. DurableHeartwood(enquiry)])
                .OrderBy(route => route.Reach)
                .ThenBy(route => route.Answer is NotCovered)
                .ThenBy(route => route.CommonlySold is null)
                .ThenBy(route => route.Kind),
        ];
    }

    // Timber that is too wet is dried whatever else is changed; that it is incised alone is then no way out.
    private Changed? Dried(Changed changed, Enquiry now) =>
        TooWet(changed.Enquiry) is not { } max ? changed
        : changed.Change is InciseFaces ? null
        : changed with
        {
            DriedTooPercent = changed.Enquiry.Species == now.Species ? max : null,
            Enquiry = changed.Enquiry with { MoisturePercent = max },
        };

    // Greatest moisture before treatment, where the timber is known to be moister; null otherwise.
    private double? TooWet(Enquiry enquiry) =>
        rulebook.Answer(enquiry) is Required { Requirement.MoistureMaxPercent: { } max }
        && enquiry.MoisturePercent > max
            ? max
            : null;

    private static IEnumerable<Changed> WithAndWithoutIncising(Changed change)
    {
        yield return change;
        if (change.Enquiry.IsIncised != true)
            yield return change with
            {
                IsIncisedToo = true,
                Enquiry = change.Enquiry with { IsIncised = true },
            };
    }

    // Another life or class is of use only where the code then asks for another depth.
    private bool AsksTheSame(Changed changed, Enquiry now) =>
        changed.Change is ShortenLife or LowerClass
        && rulebook.Answer(changed.Enquiry) is var then
        && rulebook.Answer(now with { IsIncised = changed.Enquiry.IsIncised }) is Required before
        && Deciding(then) is { } depth
        && depth.Equals(Deciding(before));

    private DepthRule? Deciding(Answer answer) =>
        ContractClass.Deciding(answer, ContractClass.Of(answer, rulebook, Known));

    // What the code does not permit is no route.
    private Route? Asked(Changed changed)
    {
        var (change, isIncisedToo, enquiry) = (changed.Change, changed.IsIncisedToo, changed.Enquiry);
        var sold = change is TakeSpecies { Species: var other } ? Sold(other, enquiry, isTreated: true) : null;
        var answer = rulebook.Answer(enquiry);
        var contract = ContractClass.Of(answer, rulebook, Known);
        var depth = ContractClass.Deciding(answer, contract);
        return answer switch
        {
            Required required => new Route(
                change,
                isIncisedToo,
                enquiry,
                required,
                reach.Judge(
                    depth ?? required.Requirement.Penetration,
                    enquiry.Species,
                    enquiry.IsIncised == true,
                    enquiry.HeartwoodAtFace
                ),
                null
            )
            {
                Depth = depth,
                Contract = contract,
                CommonlySold = sold,
                DriedTooPercent = changed.DriedTooPercent,
            },
            // What the contract orders all the same is not got rid of so.
            NotNeeded when depth is not null => null,
            NotNeeded none => new Route(change, isIncisedToo, enquiry, none, ReachVerdict.Likely, null),
            NotCovered silent => new Route(change, isIncisedToo, enquiry, silent, ReachVerdict.NotKnown, null)
            {
                Depth = depth,
                Contract = contract,
                CommonlySold = sold,
            },
            _ => null,
        };
    }

    private IEnumerable<Changed> Changes(Enquiry enquiry)
    {
        if (enquiry.IsIncised != true)
            yield return new(new InciseFaces(), false, enquiry with { IsIncised = true });
        if (TooWet(enquiry) is { } max)
            yield return new(new DryFirst(max), false, enquiry with { MoisturePercent = max });
        if (enquiry.FormOrFromSection == TimberForm.Sawn && common.IsSoldRound(enquiry.Component))
            yield return Rounded(enquiry);
        foreach (var other in Permeable(enquiry))
            yield return new(new TakeSpecies(other, enquiry.Species), false, enquiry with { Species = other });
        var life = enquiry.Life?.Years ?? int.MaxValue;
        foreach (var years in rulebook.Lives.Where(years => years < life).Reverse())
        {
            var shorter = new DesiredServiceLife(years);
            yield return new(new ShortenLife(shorter), false, enquiry with { Life = shorter });
        }
        if (
            rulebook.Answer(enquiry) is Required now
            && ContractClass.Of(now, rulebook, Known)
                is ContractDemand { Stricter: StricterDemand.Contract or StricterDemand.NotComparable } contract
        )
            yield return new(
                new TakeCodesClass(contract.Name),
                false,
                enquiry with
                {
                    StatedClass = null,
                    StatedClassMeans = null,
                }
            );
        foreach (var lower in LowerClasses(enquiry))
            yield return new(
                new LowerClass(lower, ClassNow(enquiry)),
                false,
                enquiry with
                {
                    UseClasses = [lower],
                    UseClassAsWritten = null,
                    IsCoatedByClass = null,
                    Exposure = enquiry.Exposure with
                    {
                        TouchesGroundOrFreshWater =
                            ClassNow(enquiry) == UseClass.Four ? false : enquiry.Exposure.TouchesGroundOrFreshWater,
                    },
                    Component = null,
                    CalledAs = null,
                }
            );
    }

    private static Changed Rounded(Enquiry enquiry)
    {
        var round = enquiry.Section is RectangularSection sawn ? AsStrong(sawn) : null;
        return new(
            new TakeRound(round),
            false,
            enquiry with
            {
                Form = TimberForm.Round,
                Section = round,
                HasExposedHeartwood = false,
            }
        );
    }

    // The least full step of diameter whose section modulus is no less; null where no log is so thick.
    private static RoundSection? AsStrong(RectangularSection sawn)
    {
        var diameter = Math.Ceiling(sawn.DiameterOfEqualModulusMm / DiameterStepMm) * DiameterStepMm;
        return Ranges.SectionMm.Holds(diameter) ? new RoundSection(diameter) : null;
    }

    private CommonTimber? Sold(Species wood, Enquiry enquiry, bool isTreated) =>
        common
            .For(enquiry, rulebook.NameInFacts, isTreated)
            .FirstOrDefault(row => row.SpeciesNames.Contains(wood.Name, StringComparer.Ordinal));

    // What is commonly sold for the component, the commonest first. Where nothing is known of the component, what is sold
    // there for anything; where of that nothing either, every timber.
    private IEnumerable<Species> Candidates(Enquiry enquiry, bool isTreated)
    {
        var rows = common.IsKnown(enquiry.Component, rulebook.NameInFacts)
            ? common.For(enquiry, rulebook.NameInFacts, isTreated)
            : common.For(rulebook.NameInFacts, isTreated);
        return rows.Count == 0 && !common.IsKnown(enquiry.Component, rulebook.NameInFacts)
            ? species.All
            : rows.SelectMany(row => row.SpeciesNames)
                .Distinct(StringComparer.Ordinal)
                .Select(name => species.All.FirstOrDefault(each => each.Name == name))
                .OfType<Species>();
    }

    // Species whose sapwood is easy to treat. Where none is known to be sold, those nearest in density first, since they will do the same work.
    private IEnumerable<Species> Permeable(Enquiry enquiry)
    {
        var instead = enquiry.Species;
        var permeable = Candidates(enquiry, isTreated: true)
            .Where(each => each.SapwoodTreatability?.Value.High == 1 && !each.Equals(instead))
            .Where(each => instead is null || each.Type == instead.Type);
        return common.IsKnown(enquiry.Component, rulebook.NameInFacts)
            ? permeable
            : permeable.OrderBy(each => Math.Abs(Density(each) - Density(instead)));
    }

    private static double Density(Species? wood) => wood?.Density?.Value.TypicalKgPerM3 ?? UnknownDensityKgPerM3;

    private IEnumerable<UseClass> LowerClasses(Enquiry enquiry)
    {
        var now = ClassNow(enquiry);
        UseClass[] lower = now switch
        {
            UseClass.Four => [UseClass.ThreeTwo, UseClass.ThreeOne],
            UseClass.ThreeTwo => [UseClass.ThreeOne, UseClass.Two],
            UseClass.ThreeOne => [UseClass.Two],
            _ => [],
        };
        // What is to be drier than 3.2 must leave the ground first.
        return lower.Where(each =>
            common.IsOpen(each, enquiry.Component)
            && (now != UseClass.Four || common.IsOpen(UseClass.ThreeTwo, enquiry.Component))
        );
    }

    private static UseClass ClassNow(Enquiry enquiry) =>
        enquiry.UseClasses.Count == 0 ? UseClass.One : enquiry.UseClasses.Max();

    // Heartwood that is durable enough against decay, and lasts as long as is asked. In salt water only what is used there: marine
    // borers decide, not decay. Of round timber likewise: the sapwood runs all the way round it.
    private IEnumerable<Route> DurableHeartwood(Enquiry enquiry)
    {
        if (enquiry.UseClasses.Count == 0)
            yield break;
        var useClass = enquiry.UseClasses.Max();
        var isSoldOnly = useClass == UseClass.Five || enquiry.FormOrFromSection == TimberForm.Round;
        // A joist that a code puts in class 4 all the same hangs clear of the ground.
        var isInGround = useClass == UseClass.Four && enquiry.TouchesGround != false;
        var usual = rulebook.Answer(enquiry with { Life = null }).Trace.Life;
        foreach (var other in Candidates(enquiry, isTreated: false))
        {
            var untreated = durability.Judge(other, useClass);
            var sold = Sold(other, enquiry, isTreated: false);
            var life = new HeartwoodLife(untreated, durability, enquiry.Life, usual, isInGround);
            // What is sold for it and will not do is told, so that nobody buys it.
            if (sold is null && (isSoldOnly || life.AtWorst == ReachVerdict.Unlikely))
                continue;
            yield return new Route(
                new TakeHeartwood(other),
                false,
                enquiry with
                {
                    Species = other,
                },
                null,
                life.Reach,
                untreated
            )
            {
                CommonlySold = sold,
                Trial = isInGround ? durability.InGround(other) : null,
            };
        }
    }

    // Within a kind: no incising where it works without, nothing unlikely beside what is likely, nothing silent beside an
    // answer, and of many species only the first few.
    private static IEnumerable<Route> KeepBest(IReadOnlyList<Route> routes) =>
        routes
            .GroupBy(route => route.Kind)
            .SelectMany(kind =>
            {
                var answered = kind.Where(route => route.Answer is not NotCovered).ToList();
                if (answered.Count == 0)
                    return kind.Take(1);
                var isAnyLikely = answered.Exists(route => route.Reach == ReachVerdict.Likely);
                return answered
                    .Where(route => !(isAnyLikely && route.Reach == ReachVerdict.Unlikely))
                    .Where(route => !answered.Exists(other => IsSameWithoutIncising(other, route)))
                    .GroupBy(route => route.Reach)
                    .SelectMany(same =>
                        kind.Key is RouteKind.OtherSpecies or RouteKind.DurableHeartwood ? same.Take(SpeciesMax) : same
                    );
            });

    private static bool IsSameWithoutIncising(Route other, Route route) =>
        route.Enquiry.IsIncised == true
        && other.Enquiry.IsIncised != true
        && other.Reach <= route.Reach
        && other.Enquiry == (route.Enquiry with { IsIncised = other.Enquiry.IsIncised });

    private sealed record Changed(RouteChange Change, bool IsIncisedToo, Enquiry Enquiry)
    {
        public double? DriedTooPercent { get; init; }
    }
}
