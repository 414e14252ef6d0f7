using System.Globalization;

namespace Alburnum.Records.Ledger;

/// <summary>
/// Holds a ledger against itself, and against what is kept beside it. Pure: the entries and the hashes of what is there come in, what is wrong comes out.
/// </summary>
/// <param name="place">Where the ledger is, for messages.</param>
internal sealed class LedgerCheck(string place)
{
    private readonly List<InputProblem> _faults = [];

    /// <summary>Checks the ledger of a store.</summary>
    /// <param name="place">Where it is, for messages.</param>
    /// <param name="kept">Every entry, by the numbers under which they are kept.</param>
    /// <param name="held">Every file there is.</param>
    public static LedgerFindings OfStore(string place, IReadOnlyList<KeptEntry> kept, IReadOnlyList<HeldSum> held)
    {
        var check = new LedgerCheck(place);
        var entries = check.Entries(kept);
        check.CheckChain([
            .. entries.Select(each => new Link(
                each.Kept.Number,
                each.Entry?.Place.Number ?? each.Kept.Number,
                each.Kept,
                each.IsAtItsPlace ? each.Entry!.Place.Previous : null
            )),
        ]);
        // What is wrong with the whole chain is also wrong with those of the cases: said once.
        if (check._faults.Count == 0)
            foreach (var ofCase in entries.GroupBy(each => each.Kept.CaseNumber))
                check.CheckChain([.. ofCase.Select(InCase)]);
        check.CheckNames([.. entries.Select(each => each.Entry).OfType<LedgerEntry>()], held);
        return check.Found(entries, held);
    }

    /// <summary>Checks the entries of one case, as a bundle holds them.</summary>
    /// <inheritdoc cref="OfStore"/>
    public static LedgerFindings OfCase(string place, IReadOnlyList<KeptEntry> kept, IReadOnlyList<HeldSum> held)
    {
        var check = new LedgerCheck(place);
        var entries = check.Entries(kept);
        check.CheckChain([.. entries.Select(InCase)]);
        return check.Found(entries, held);
    }

    private LedgerFindings Found(IReadOnlyList<Read> entries, IReadOnlyList<HeldSum> held)
    {
        List<LedgerEntry> sound = [.. entries.Select(each => each.Entry).OfType<LedgerEntry>()];
        CheckTexts(sound);
        CheckHeld(LedgerHoldings.Of(sound), held);
        return new(
            entries.Count,
            entries.Count > 0 ? entries[^1].Kept.Hash : null,
            held.Count,
            _faults,
            [
                .. sound
                    .Zip(sound.Skip(1))
                    .Where(pair => pair.Second.At < pair.First.At)
                    .Select(pair => new ClockSetBack(pair.Second.Place.Number, pair.First.At, pair.Second.At)),
            ]
        );
    }

    private sealed record Read(KeptEntry Kept, LedgerEntry? Entry, bool IsAtItsPlace);

    /// <param name="Position">The place that it takes in the chain, from 1; 0 where that is not known.</param>
    /// <param name="Claim">The place that it says it has: two that were exchanged are told as that, and not as breaks as well.</param>
    /// <param name="Kept">The entry.</param>
    /// <param name="Previous">Hash that it follows; null where what is wrong with it is told already.</param>
    private sealed record Link(int Position, int Claim, KeptEntry Kept, string? Previous);

    private static Link InCase(Read each)
    {
        var position = each.Entry?.Place.NumberInCase ?? 0;
        return new(position, position, each.Kept, each.IsAtItsPlace ? each.Entry!.Place.PreviousInCase : null);
    }

    private IReadOnlyList<Read> Entries(IReadOnlyList<KeptEntry> kept)
    {
        var read = new List<Read>();
        foreach (var each in kept)
        {
            var entry = LedgerJson.Entry(each);
            var isAtItsPlace = entry?.Place.Number == each.Number && entry.CaseNumber == each.CaseNumber;
            var found = Sha256Of.Text(each.Sealed);
            if (found != each.Hash)
            {
                Fault(
                    each.Number,
                    $"text that was changed (its SHA-256 is {found})",
                    $"the text with the SHA-256 {each.Hash}"
                );
                entry = null;
            }
            else if (entry is null)
                Fault(each.Number, "text that is no entry", "an entry");
            else if (!isAtItsPlace)
                Fault(
                    each.Number,
                    $"entry {Whole(entry.Place.Number)} of case {Whole(entry.CaseNumber)}",
                    $"entry {Whole(each.Number)} of case {Whole(each.CaseNumber)}: entries were exchanged or renumbered"
                );
            read.Add(new(each, entry, entry is not null && isAtItsPlace));
        }
        return read;
    }

    private void CheckChain(IReadOnlyList<Link> links)
    {
        var byClaim = new Dictionary<int, KeptEntry>();
        foreach (var link in links)
            byClaim.TryAdd(link.Claim, link.Kept);
        var expected = 1;
        foreach (var link in links.Where(link => link.Position > 0))
        {
            if (link.Position > expected)
                Missing(link, expected);
            else if (link.Position < expected)
                Fault(link.Kept.Number, "an entry out of order", "entries in the order of their numbers, each once");
            expected = link.Position + 1;
            var before = link.Position == 1 ? LedgerPlace.Nothing : byClaim.GetValueOrDefault(link.Position - 1)?.Hash;
            if (link.Previous is { } previous && before is not null && before != previous)
                Fault(
                    link.Kept.Number,
                    $"an entry that follows one with the SHA-256 {previous}",
                    $"one that follows {before}: the entry before it was rewritten, or this one was"
                );
        }
    }

    private void Missing(Link link, int from)
    {
        var which =
            link.Position - 1 == from
                ? $"entry {Whole(from)} missing"
                : $"entries {Whole(from)} to {Whole(link.Position - 1)} missing";
        Fault(link.Kept.Number, $"{which} before it", "every entry of the ledger");
    }

    private void CheckTexts(IReadOnlyList<LedgerEntry> entries)
    {
        var removed = entries
            .Where(entry => entry.Act is LedgerAct.Redacted or LedgerAct.CaseDeleted)
            .Select(entry => entry.After?.Text)
            .OfType<string>()
            .SelectMany(LedgerJson.Removed)
            .ToHashSet();
        foreach (var entry in entries)
        foreach (var (name, text) in entry.Texts)
        {
            if (!text.Holds)
                Fault(
                    entry.Place.Number,
                    "a text other than the one that was sealed",
                    "the text as it was entered",
                    name
                );
            else if (text.IsRemoved && !removed.Contains((entry.Place.Number, name)))
                Fault(entry.Place.Number, "no text", "the text as it was entered, or a redaction that names it", name);
        }
    }

    private void CheckHeld(IReadOnlyDictionary<string, LedgerHolding> expected, IReadOnlyList<HeldSum> held)
    {
        var there = held.ToLookup(file => file.Path, file => file.Sha256, StringComparer.Ordinal);
        foreach (var (path, holding) in expected.OrderBy(each => each.Value.Entry))
        {
            var says = $"the one that entry {Whole(holding.Entry)} names, with the SHA-256 {holding.Sha256}";
            if (!there.Contains(path))
                Held(path, "nothing", says);
            else if (there[path].First() is var sha256 && sha256 != holding.Sha256)
                Held(path, $"a file that was changed (its SHA-256 is {sha256})", says);
        }
        foreach (var file in held.Where(file => !expected.ContainsKey(file.Path)))
            Held(file.Path, "a file that no entry names", "what the ledger names and nothing else");
    }

    private void CheckNames(IReadOnlyList<LedgerEntry> entries, IReadOnlyList<HeldSum> held)
    {
        var names = entries
            .Where(entry => entry.Act == LedgerAct.PhotographTakenIn)
            .ToLookup(entry => entry.After?.Text, entry => entry.Subject?.Text, StringComparer.Ordinal);
        foreach (var file in held.Where(file => file.CameInAs is not null && names.Contains(file.Sha256)))
            // Where one of its names was redacted, any may be what is left of it.
            if (!names[file.Sha256].Any(name => name is null || name == file.CameInAs))
                Held(
                    file.Path,
                    $"the name {file.CameInAs}",
                    $"the name under which it came in, {names[file.Sha256].First()}"
                );
    }

    private void Held(string path, string found, string expected) =>
        _faults.Add(new InputProblem(place, 0, path, "", found, expected));

    private void Fault(int entry, string found, string expected, string field = "") =>
        _faults.Add(new InputProblem(place, 0, $"entry {Whole(entry)}", field, found, expected));

    private static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);
}
