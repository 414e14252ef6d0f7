using Alburnum.Requirements;
using Alburnum.Timber;
using CsCheck;

namespace Alburnum.Records.Tests.Facts;

/// <summary>Laws that every shipped rulebook must keep.</summary>
public sealed class ShippedRulebooksTests
{
    public static TheoryData<string> Names => [.. ShippedData.Library.Rulebooks.All.Select(rulebook => rulebook.Name)];

    private static Gen<Enquiry> Enquiries(Rulebook book)
    {
        var stated = book
            .Rows.SelectMany(row => row.When)
            .OfType<OneOf>()
            .Where(each => each.Field == Field.StatedClass)
            .SelectMany(each => each.Allowed)
            .Distinct()
            .ToList();
        var codes = book
            .Rows.SelectMany(row => row.When)
            .OfType<OneOf>()
            .Where(each => each.Field == Field.Preservative)
            .SelectMany(each => each.Allowed)
            .Distinct()
            .ToList();
        var lives = book.Lives.Count > 0 ? book.Lives : [15, 30, 60];
        return from component in Maybe(ShippedData.Library.Components.All)
            from species in Maybe(ShippedData.Library.Species.All)
            from useClass in Gen.Int[-1, 5]
            from life in Gen.Int[-1, lives.Count - 1]
            from thickness in Gen.Int[20, 200]
            from isRound in Gen.Bool
            from known in Gen.Int[0, 2].Array[3]
            from moisture in Gen.Int[8, 60]
            from name in Maybe(stated)
            from code in Maybe(codes)
            from insect in Gen.Int[-2, ShippedData.Library.Insects.Count - 1]
            select new Enquiry
            {
                Component = component,
                Species = species,
                UseClasses = useClass < 0 ? [] : [(UseClass)useClass],
                Life = life < 0 ? null : new DesiredServiceLife(lives[life]),
                Section = isRound ? new RoundSection(thickness) : new RectangularSection(thickness, thickness + 20),
                HasExposedHeartwood = Answer(known[0]),
                IsIncised = Answer(known[1]),
                MoisturePercent = moisture,
                StatedClass = name,
                Preservative = code,
                Exposure = new()
                {
                    IsCoated = Answer(known[2]),
                    Insects =
                        insect == -2 ? null
                        : insect == -1 ? []
                        : [ShippedData.Library.Insects[insect]],
                },
            };
    }

    private static bool? Answer(int known) => known == 2 ? null : known == 1;

    private static Gen<T?> Maybe<T>(IReadOnlyList<T> values)
        where T : class => Gen.Int[-1, values.Count - 1].Select(index => index < 0 ? null : values[index]);

    [Theory]
    [MemberData(nameof(Names))]
    public void A_shipped_rulebook_holds_together(string name)
    {
        var findings = RulebookCheck.Run(
            ShippedData.Library.Rulebooks.Named(name),
            TestContext.Current.CancellationToken
        );
        Assert.DoesNotContain(findings, finding => finding.IsFault || finding.Kind == RulebookFindingKind.TooLarge);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_enquiry_has_exactly_one_answer_and_never_a_contradiction(string name)
    {
        var book = ShippedData.Library.Rulebooks.Named(name);
        Enquiries(book)
            .Sample(
                enquiry =>
                {
                    var answer = book.Answer(enquiry);
                    return answer.Trace.Steps.All(step => step.Finding is not Contradicted)
                        && answer is not NotCovered { Reason: CellNotRead { Note.Length: 0 } }
                        && answer is not NotPermitted { Reason.Length: 0 };
                },
                iter: 2000
            );
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Nothing_is_forbidden_without_a_published_source(string name) =>
        Assert.All(
            ShippedData.Library.Rulebooks.Named(name).Rows.Where(row => row.Demand is Forbidden),
            row => Assert.Equal(Standing.Published, row.Provenance.Standing)
        );

    /// <summary>A rulebook of nothing but the rows that the trace names gives the same answer.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void The_trace_alone_reproduces_the_answer(string name)
    {
        var book = ShippedData.Library.Rulebooks.Named(name);
        Enquiries(book)
            .Sample(
                enquiry =>
                {
                    var answer = book.Answer(enquiry);
                    var rows = answer
                        .Trace.Steps.SelectMany(step =>
                            step.Matched.Concat(step.SetAside)
                                .Concat(step.Open.Select(miss => miss.Row))
                                // That all of these ask for a class is the answer.
                                .Concat(
                                    answer is NotCovered { Reason: ClassNotStated }
                                        ? step.NearMisses.Select(miss => miss.Row)
                                        : []
                                )
                        )
                        .ToList();
                    var keys = rows.Select(row => row.Key).ToHashSet(StringComparer.Ordinal);
                    // Rows that were given by the enquiry are not needed; exceptions to rows that did not hold end nowhere.
                    var alone = new Rulebook([
                        .. rows.Select(row => row with { Overrides = [.. row.Overrides.Where(keys.Contains)] }),
                    ])
                    {
                        Name = book.Name,
                        Title = book.Title,
                        Document = book.Document,
                        Edition = book.Edition,
                        Lives = book.Lives,
                        Groups = book.Groups,
                    };
                    return Same(answer, alone.Answer(enquiry));
                },
                iter: 1000
            );
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_harsher_class_or_a_longer_life_never_asks_for_less(string name)
    {
        var book = ShippedData.Library.Rulebooks.Named(name);
        var lives = book.Lives.Count > 0 ? book.Lives : [15, 30];
        Gen.Select(Enquiries(book), Gen.Int[0, 5].Array[2], Gen.Int[0, lives.Count - 1].Array[2])
            .Sample(
                each =>
                {
                    var (enquiry, classes, years) = each;
                    Answer At(int useClass, int life) =>
                        book.Answer(
                            enquiry with
                            {
                                Component = null,
                                UseClasses = [(UseClass)useClass],
                                Life = new DesiredServiceLife(lives[life]),
                            }
                        );
                    return (At(classes.Min(), years.Min()), At(classes.Max(), years.Max())) switch
                    {
                        (Required mild, Required harsh) => !DepthOrder.AsksLess(
                            harsh.Requirement.Penetration,
                            mild.Requirement.Penetration
                        ),
                        (NotPermitted, Required) => false,
                        _ => true,
                    };
                },
                iter: 5000
            );
    }

    /// <summary>Factors multiply a critical value of the use class, so that they compare within one class only.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void A_longer_life_never_asks_for_a_lesser_multiple_of_the_critical_value(string name)
    {
        var book = ShippedData.Library.Rulebooks.Named(name);
        foreach (var useClass in Enum.GetValues<UseClass>())
        foreach (var isCoated in new[] { true, false })
        {
            var factors = book
                .Lives.Select(years =>
                    book.Answer(
                        new Enquiry
                        {
                            UseClasses = [useClass],
                            Exposure = new() { IsCoated = isCoated },
                            Life = new DesiredServiceLife(years),
                        }
                    )
                )
                .Select(answer => (answer.Trace.Step(Subject.Retention)!.Finding as Settled)?.Demand)
                .OfType<RetentionFactor>()
                .Select(demand => demand.Factor)
                .ToList();
            Assert.Equal(factors.Order(), factors);
        }
    }

    [Fact]
    public void A_rulebook_is_marked_complete() =>
        Assert.Contains(ShippedData.Library.Rulebooks.All, book => book.CompleteOver.Count > 0);

    [Fact]
    public void The_complete_rulebook_answers_every_case_of_its_axes()
    {
        var book = ShippedData.Library.Rulebooks.Named("spanish-se-m");
        Assert.Equal([Field.UseClass, Field.Form, Field.SapwoodTreatability, Field.Durability], book.CompleteOver);
        foreach (
            var species in ShippedData.Library.Species.All.Where(each =>
                each.SapwoodTreatability is { Value: var cell }
                && (
                    cell.High == 1
                    || (
                        cell.Low > 1
                        && each.Durability is { Value: var durability }
                        && durability.Low == durability.High
                    )
                )
            )
        )
        foreach (var useClass in Enum.GetValues<UseClass>())
        foreach (var form in Enum.GetValues<TimberForm>())
            // Of timber that decay spares for a time, marine borers decide: only that is left open.
            Assert.Equal(
                useClass == UseClass.Five
                    && species.SapwoodTreatability!.Value.Low > 1
                    && species.Durability!.Value.Low is 2 or 3,
                book.Answer(
                    new Enquiry
                    {
                        Species = species,
                        UseClasses = [useClass],
                        Form = form,
                    }
                ) is NotCovered
            );
    }

    private static bool Same(Answer a, Answer b) =>
        (a, b) switch
        {
            (Required x, Required y) => x.Requirement.PenetrationName == y.Requirement.PenetrationName
                && x.Requirement.Penetration.Equals(y.Requirement.Penetration)
                && Equals(x.Requirement.Retention, y.Requirement.Retention)
                && Equals(x.Requirement.RequiredRetention, y.Requirement.RequiredRetention)
                && Equals(x.Requirement.MoistureMaxPercent, y.Requirement.MoistureMaxPercent)
                && SameReason(x.Requirement.RetentionOpen, y.Requirement.RetentionOpen)
                && x.Trace.WeakestStanding == y.Trace.WeakestStanding,
            (NotNeeded x, NotNeeded y) => x.Reason == y.Reason,
            (NotPermitted x, NotPermitted y) => x.Reason == y.Reason,
            (NotCovered x, NotCovered y) => x.Missing.SequenceEqual(y.Missing),
            _ => false,
        };

    // Rows that just failed are not in the trace's own rulebook, so that how near they were does not count.
    private static bool SameReason(NotCoveredReason? a, NotCoveredReason? b) =>
        (a, b) switch
        {
            (DependsOn x, DependsOn y) => x.Fields.SequenceEqual(y.Fields),
            (NoRowHolds, NoRowHolds) or (RowsContradict, RowsContradict) => true,
            _ => Equals(a, b),
        };
}
