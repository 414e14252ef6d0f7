using System.Globalization;
using System.Text;
using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Tests.Shared;

namespace Alburnum.Records.Tests.Facts;

/// <summary>How much of what the commonest enquiries rest on is remembered and not read: <c>docs/from-memory.md</c>.</summary>
public sealed class FromMemoryTests
{
    /// <summary>What the same table said before timbers and sources were gone through again.</summary>
    private const string Before = "143 of 373, 38 %";

    private static readonly (string Rulebook, string Component, string Species, string UseClass)[] Commonest =
    [
        ("british-2014", "fence post", "Scots pine", ""),
        ("british-2014", "fence post", "Norway spruce", ""),
        ("british-2014", "fence post", "Sitka spruce", ""),
        ("british-2014", "fence post", "European larch", ""),
        ("british-2014", "fence post", "Douglas fir (Europe)", ""),
        ("british-2014", "fence rail", "Norway spruce", ""),
        ("british-2014", "fence rail", "Sitka spruce", ""),
        ("british-2014", "fence rail", "Scots pine", ""),
        ("british-2014", "gravel board", "Norway spruce", ""),
        ("british-2014", "gravel board", "Scots pine", ""),
        ("british-2014", "deck board", "Scots pine", ""),
        ("british-2014", "deck board", "European larch", ""),
        ("british-2014", "deck board", "Norway spruce", ""),
        ("british-2014", "deck joist", "Norway spruce", ""),
        ("british-2014", "deck joist", "Scots pine", ""),
        ("british-2014", "cladding", "European larch", ""),
        ("british-2014", "cladding", "western red cedar (N America)", ""),
        ("british-2014", "cladding", "Douglas fir (Europe)", ""),
        ("british-2014", "window frame", "Scots pine", ""),
        ("british-2014", "window frame", "European oak", ""),
        ("british-2014", "tiling batten", "Norway spruce", ""),
        ("british-2014", "sole plate", "Norway spruce", ""),
        ("british-2014", "external wall stud", "Norway spruce", ""),
        ("british-2014", "ground-floor joist", "Norway spruce", ""),
        ("british-2014", "playground timber", "Scots pine", ""),
        ("british-2014", "retaining wall", "Scots pine", ""),
        ("british-2014", "agricultural post", "sweet chestnut", ""),
        ("nordic-classes", "", "Scots pine", "AB"),
        ("nordic-classes", "", "Scots pine", "A"),
        ("nordic-classes", "", "Scots pine", "B"),
        ("spanish-se-m", "", "maritime pine", "3.2"),
        ("spanish-se-m", "", "Scots pine", "4"),
        ("spanish-se-m", "", "radiata pine", "4"),
        ("american-use-categories", "", "southern pine", "UC3B"),
        ("american-use-categories", "", "southern pine", "UC4A"),
        ("american-use-categories", "", "Douglas fir (N America)", "UC4A"),
        ("american-use-categories", "", "western hemlock", "UC4B"),
        ("american-round", "utility pole", "southern pine", ""),
        ("american-round", "utility pole", "Douglas fir (N America)", ""),
        ("american-round", "utility pole", "western red cedar (N America)", ""),
    ];

    private static readonly FactLibrary Library = new(Repository.At("data"));

    [Fact]
    public void The_table_in_the_docs_is_what_the_facts_say()
    {
        var page = Page();
        if (Environment.GetEnvironmentVariable("ALBURNUM_WRITE_FROM_MEMORY") is { Length: > 0 } path)
            File.WriteAllText(path, page);

        Assert.Equal(File.ReadAllText(Repository.At("docs", "from-memory.md")), page);
    }

    private static string Page()
    {
        var page = new StringBuilder(
            """
            # What the commonest enquiries rest on

            For each enquiry, the rows of the code that decide it and what is known of the timber: natural durability, treatability
            of heartwood and sapwood, width of the sapwood, density. A fact *from memory* has not been read for this and wants a look
            into the document. Which forty enquiries are the commonest is our judgement.
            Written by `./test --write-from-memory` from the facts; do not edit by hand.

            | code | part or class | timber | facts | from memory |
            |---|---|---|---|---|

            """
        );
        var (facts, remembered) = (0, 0);
        foreach (var (rulebook, component, species, useClass) in Commonest)
        {
            var standings = Standings(rulebook, component, species, useClass).ToList();
            var fromMemory = standings.Count(each => each == Standing.FromMemory);
            (facts, remembered) = (facts + standings.Count, remembered + fromMemory);
            page.Append(
                CultureInfo.InvariantCulture,
                $"| {rulebook} | {component}{useClass} | {species} | {standings.Count} | {fromMemory} |\n"
            );
        }
        page.Append(
            CultureInfo.InvariantCulture,
            $"\nTogether {remembered} of {facts} facts are from memory, {100.0 * remembered / facts:0} %. Before: {Before}.\n"
        );
        return page.ToString();
    }

    private static IEnumerable<Standing> Standings(string rulebook, string component, string species, string useClass)
    {
        var timber = Library.Species.Get(species);
        var enquiry = new Enquiry
        {
            Species = timber,
            Form = component == "utility pole" ? TimberForm.Round : TimberForm.Sawn,
        };
        if (component.Length > 0)
            enquiry = enquiry with { Component = Assert.IsType<Component>(Library.Components.Named(component)) };
        else if (rulebook == "spanish-se-m")
            enquiry = enquiry with { UseClasses = [useClass == "4" ? UseClass.Four : UseClass.ThreeTwo] };
        else
            enquiry = enquiry with { StatedClass = useClass, Preservative = "ACQ-D" };

        var trace = Library.Rulebooks.Named(rulebook).Answer(enquiry).Trace;
        var rows = trace.Steps.Where(step => step.Subject != Subject.Advice).SelectMany(step => step.Matched).ToList();
        var demands = rows.Select(row => row.Demand).OfType<PenetrationDemand>().ToList();
        return rows.Select(row => row.Provenance)
            .Concat(demands.Select(demand => demand.DefinedBy).OfType<Provenance>())
            .Concat(demands.Select(demand => demand.Zone?.Provenance).OfType<Provenance>())
            .Concat(
                new[]
                {
                    timber.Durability?.Provenance,
                    timber.HeartwoodTreatability?.Provenance,
                    timber.SapwoodTreatability?.Provenance,
                    timber.SapwoodWidth?.Provenance,
                    timber.Density?.Provenance,
                }.OfType<Provenance>()
            )
            .Select(provenance => provenance.Standing);
    }
}
