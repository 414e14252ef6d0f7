using Alburnum.Records.Facts;
using Alburnum.Reports.Requirements;
using Alburnum.Reports.Words;
using Alburnum.Requirements;
using Alburnum.Tests.Shared;
using Alburnum.Workflows.Requirements;

namespace Alburnum.Reports.Tests.Requirements;

/// <summary>Head, clause and reasons name one use class, as it was written or as the code has it; whoever gives another is told of once.</summary>
public sealed class UseClassesToldTests
{
    private static readonly FactLibrary Facts = new(Repository.At("data"));

    private static readonly string?[] Stated = [null, "2", "3", "3c", "3.2", "4", "5"];

    public static TheoryData<string> Rulebooks => [.. Facts.Rulebooks.All.Select(book => book.Name)];

    [Theory]
    [MemberData(nameof(Rulebooks))]
    public void One_use_class_is_named_throughout(string rulebook)
    {
        foreach (var component in (ReadOnlySpan<string>)["sole plate", "window frame", "deck board", "fence post"])
        foreach (var stated in Stated)
        foreach (bool? inGround in (bool?[])[null, true, false])
        foreach (var contract in (string?[])[null, "AB", "H3", "UC4A", "NP5"])
            Check(rulebook, component, stated, inGround, contract);
    }

    private static void Check(string rulebook, string component, string? stated, bool? inGround, string? contract)
    {
        var use = stated is null ? null : UseClassWords.Read(stated)!;
        var found = FindRequirement.Run(
            new()
            {
                Component = Facts.Components.All.Single(each => each.Name == component),
                Species = Facts.Species.Get("Scots pine"),
                Form = TimberForm.Sawn,
                HasExposedHeartwood = false,
                UseClasses = use?.Classes ?? [],
                UseClassAsWritten = use?.Label,
                IsCoatedByClass = use?.IsCoated,
                Exposure = new() { TouchesGroundOrFreshWater = inGround, IsCoated = use?.IsCoated },
                StatedClass = contract,
            },
            Facts.Rulebooks.Named(rulebook),
            Facts,
            progress: null,
            TestContext.Current.CancellationToken
        );
        var document = AnswerMapping.From(found);
        var about = $"{rulebook}: {component}, {stated}, {inGround}, {contract}";

        if (found.Answer.Trace.UseClassGiven is not { } given)
            return;
        var label = $"use class {RequirementWords.Current.Rows.Label(given)}";
        if (stated is not null)
        {
            Assert.True(label.StartsWith($"use class {stated}", StringComparison.Ordinal), about);
            Assert.True(AnswerParts.Asked(document.Enquiry).Contains(label, StringComparison.Ordinal), about);
        }
        Assert.True(document.Trace[0].Finding.Contains(label, StringComparison.Ordinal), about);
        if (document.Clause is { } clause)
            Assert.True(clause.Contains(label, StringComparison.OrdinalIgnoreCase), about);

        List<string> said = [.. document.Warnings, .. document.Remarks, .. document.Requirement?.Conditions ?? []];
        Assert.Equal(said.Distinct(StringComparer.Ordinal), said);
        foreach (
            var odd in found.Warnings.OfType<FactsAtOdds>().Select(each => each.Discrepancy).OfType<UseClassesDiffer>()
        )
        {
            var other = RequirementWords.Current.Rows.Label(odd.Against);
            Assert.True(
                document.Warnings.Any(line =>
                    line.Contains(RequirementWords.Current.Rows.Label(given), StringComparison.Ordinal)
                    && line.Contains($" {other}", StringComparison.Ordinal)
                ),
                about
            );
        }
    }

    [Theory]
    [InlineData(null, "nobody has said which live where it is used")]
    [InlineData("none", "No insect that attacks dry timber is said to live there")]
    [InlineData("termites", "Said to live there: termites")]
    public void A_use_class_says_of_insects_what_is_said_of_them_and_orders_nothing(string? insects, string says)
    {
        Exposure indoors = new()
        {
            TouchesGroundOrFreshWater = false,
            IsExposedToWeather = false,
            MayGetDamp = false,
            Insects = insects is null ? null : Insect.Parse(insects, Facts.Insects),
        };

        var document = UseClassMapping.From(FindUseClass.Run(indoors, Facts));

        Assert.Contains(says, Assert.Single(document.Remarks), StringComparison.Ordinal);
        Assert.DoesNotContain("pecify", document.Remarks[0], StringComparison.Ordinal);
        // The same insects count for a rulebook's answer.
        var rafter = FindRequirement.Run(
            new()
            {
                Component = Facts.Components.All.Single(each => each.Name == "dry roof timber"),
                Exposure = new() { Insects = indoors.Insects },
            },
            Facts.Rulebooks.Named("british-2014"),
            Facts,
            progress: null,
            TestContext.Current.CancellationToken
        );
        var found = FindUseClass.Run(indoors, Facts);
        Assert.Equal(found.NotRuledOut, rafter.Insects);
        Assert.Equal(found.Insects.Attacking.Count > 0, rafter.Answer is NotCovered { Reason: InsectsAtWork });
    }
}
