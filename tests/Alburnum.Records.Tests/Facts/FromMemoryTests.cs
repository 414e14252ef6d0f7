using System.Globalization;
using System.Text;
using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Tests.Shared;

namespace Alburnum.Records.Tests.Facts;

/// <summary>How much of what the commonest enquiries rest on is remembered and not read: <c>docs/from-memory.md</c>.</summary>
public sealed class FromMemoryTests
{
    /// <summary>
    /// What the facts at 56266dc6, before timbers and sources were gone through again, said to the same enquiries: counted over those that are answered
    /// today, over all, and over the 23 that were answered then.
    /// </summary>
    private const string Before =
        "84 of 216, 39 %; of all, 131 of 354, 37 %. Of the facts behind the 23 enquiries that were answered then, 91 of 234, 39 %, were from memory";

    private const string Code = "british-2014";

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
            into the document. The enquiries are those of `data/commonest-enquiries.yaml`, put to the British code; that they are
            the commonest is our judgement.
            Written by `./test --write-from-memory` from the facts; do not edit by hand.

            | part | timber | section | years | answer | facts | from memory |
            |---|---|---|---|---|---|---|

            """
        );
        List<(string What, Standing Standing)> all = [],
            ofAnswered = [];
        var notCovered = 0;
        foreach (var enquiry in Library.CommonestEnquiries)
        {
            var facts = Facts(enquiry).ToList();
            var answer = Library.Rulebooks.Named(Code).Answer(enquiry);
            all.AddRange(facts);
            if (answer is NotCovered { Possible.Count: 0 })
                notCovered++;
            else
                ofAnswered.AddRange(facts);
            page.Append(
                CultureInfo.InvariantCulture,
                $"| {enquiry.Component?.Name} | {enquiry.Species!.Name} | {enquiry.Section!.Label} | {enquiry.Life!.Value.Years} | {InWords(answer)} | {facts.Count} | {Remembered(facts).Count()} |\n"
            );
        }
        var remembered = Remembered(all).ToList();
        page.Append(
            CultureInfo.InvariantCulture,
            $"\n{notCovered} of {Library.CommonestEnquiries.Count} have no row. Of the facts behind the others {Share(ofAnswered)} are from memory; of all, {Share(all)[..^1]}.\nOn the same enquiries, before timbers and sources were gone through again: {Before}.\n"
        );
        page.Append(
            "\nThe facts that are from memory, those that decide the most enquiries first:\n\n| fact | enquiries |\n|---|---|\n"
        );
        foreach (var (what, count) in remembered.CountBy(what => what).OrderByDescending(each => each.Value))
            page.Append(CultureInfo.InvariantCulture, $"| {what} | {count} |\n");
        return page.ToString();
    }

    private static string InWords(Answer answer) =>
        answer switch
        {
            NotNeeded => "not needed",
            NotPermitted => "not permitted",
            NotCovered { Possible: { Count: > 0 } possible } =>
                $"by {string.Join(", ", possible.SelectMany(each => each.Where).Select(each => each.Field.Key()).Distinct(StringComparer.Ordinal))}",
            NotCovered => "not covered",
            _ => "required",
        };

    private static string Share(List<(string What, Standing Standing)> facts)
    {
        var remembered = Remembered(facts).Count();
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{remembered} of {facts.Count}, {100.0 * remembered / facts.Count:0} %,"
        );
    }

    private static IEnumerable<string> Remembered(IEnumerable<(string What, Standing Standing)> facts) =>
        facts.Where(each => each.Standing == Standing.FromMemory).Select(each => each.What);

    private static IEnumerable<(string What, Standing Standing)> Facts(Enquiry enquiry)
    {
        var timber = enquiry.Species!;
        var trace = Library.Rulebooks.Named(Code).Answer(enquiry).Trace;
        var rows = trace.Steps.Where(step => step.Subject != Subject.Advice).SelectMany(step => step.Matched).ToList();
        var demands = rows.Select(row => row.Demand).OfType<PenetrationDemand>().ToList();
        return new (string, Provenance?)[]
        {
            ("natural durability", timber.Durability?.Provenance),
            ("treatability of the heartwood", timber.HeartwoodTreatability?.Provenance),
            ("treatability of the sapwood", timber.SapwoodTreatability?.Provenance),
            ("width of the sapwood", timber.SapwoodWidth?.Provenance),
            ("density", timber.Density?.Provenance),
        }
            .Select(cell => ($"{timber.Name}: {cell.Item1}", cell.Item2))
            .Concat(rows.Select(row => ($"{Code}: {row.Subject}, row {row.Key}", (Provenance?)row.Provenance)))
            .Concat(demands.Select(demand => ($"{demand.Name}: the depth", demand.DefinedBy)))
            .Concat(demands.Select(demand => ($"{demand.Name}: the analytical zone", demand.Zone?.Provenance)))
            .Where(each => each.Item2 is not null)
            .Select(each => (each.Item1, each.Item2!.Standing));
    }
}
