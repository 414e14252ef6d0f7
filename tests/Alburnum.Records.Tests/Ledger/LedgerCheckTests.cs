using Alburnum.Records.Ledger;
using CsCheck;

namespace Alburnum.Records.Tests.Ledger;

/// <summary>The law of the chain: as it was made it holds, and no single change to it goes unseen.</summary>
public sealed class LedgerCheckTests
{
    private static readonly DateTime Start = new(2026, 5, 12, 8, 0, 0, DateTimeKind.Utc);

    // Of each entry: its case, and what it says.
    private static readonly Gen<(int Case, string Text)[]> Acts = Gen.Select(Gen.Int[0, 3], Gen.String).Array[1, 12];

    [Fact]
    public void A_chain_as_it_was_made_holds_and_so_does_each_case_by_itself() =>
        Acts.Sample(acts =>
        {
            var kept = Chain(acts);

            Assert.Empty(LedgerCheck.OfStore("store", kept, []).Faults);
            foreach (var ofCase in kept.GroupBy(entry => entry.CaseNumber))
                Assert.Empty(LedgerCheck.OfCase("bundle", [.. ofCase], []).Faults);
        });

    [Fact]
    public void An_entry_dropped_anywhere_but_at_the_end_is_named() =>
        Gen.Select(Acts.Where(acts => acts.Length > 1), Gen.Int[0, 1000])
            .Sample(
                (acts, seed) =>
                {
                    var kept = Chain(acts);
                    var dropped = seed % (kept.Count - 1);

                    var fault = Assert.Single(Faults([.. kept.Where((_, i) => i != dropped)]));

                    Assert.Equal(
                        $"store, row \"entry {dropped + 2}\": found entry {dropped + 1} missing before it, expected every entry of the ledger.",
                        fault
                    );
                }
            );

    [Fact]
    public void Two_entries_exchanged_are_both_named_and_nothing_else() =>
        Gen.Select(Acts.Where(acts => acts.Length > 1), Gen.Int[0, 1000], Gen.Int[1, 1000])
            .Sample(
                (acts, seed, step) =>
                {
                    var kept = Chain(acts).ToList();
                    var first = seed % kept.Count;
                    var second = (first + 1 + (step % (kept.Count - 1))) % kept.Count;
                    (kept[first], kept[second]) = (
                        kept[second] with
                        {
                            Number = first + 1,
                        },
                        kept[first] with
                        {
                            Number = second + 1,
                        }
                    );

                    Assert.Equal(
                        new[] { first + 1, second + 1 }.Order().Select(number => $"entry {number}"),
                        LedgerCheck.OfStore("store", kept, []).Faults.Select(fault => fault.Row)
                    );
                }
            );

    [Fact]
    public void A_letter_changed_in_what_is_hashed_is_named_with_its_entry() =>
        Gen.Select(Acts, Gen.Int[0, 1000], Gen.Int[0, 100_000])
            .Sample(
                (acts, seed, at) =>
                {
                    var kept = Chain(acts).ToList();
                    var changed = seed % kept.Count;
                    var letters = kept[changed].Sealed.ToCharArray();
                    letters[at % letters.Length] = letters[at % letters.Length] == 'x' ? 'y' : 'x';
                    kept[changed] = kept[changed] with { Sealed = new(letters) };

                    var fault = Assert.Single(Faults(kept));

                    Assert.StartsWith(
                        $"store, row \"entry {changed + 1}\": found text that was changed",
                        fault,
                        StringComparison.Ordinal
                    );
                }
            );

    [Fact]
    public void A_text_changed_or_taken_out_is_named_with_its_entry() =>
        Gen.Select(Acts, Gen.Int[0, 1000], Gen.Bool)
            .Sample(
                (acts, seed, isTakenOut) =>
                {
                    var kept = Chain(acts).ToList();
                    var changed = seed % kept.Count;
                    var entry = LedgerJson.Entry(kept[changed])!;
                    var after = isTakenOut
                        ? entry.After! with
                        {
                            Salt = null,
                            Text = null,
                        }
                        : entry.After! with
                        {
                            Text = entry.After.Text + "x",
                        };
                    kept[changed] = kept[changed] with { Opened = LedgerJson.Opened(entry with { After = after }) };

                    var fault = Assert.Single(LedgerCheck.OfStore("store", kept, []).Faults);

                    Assert.Equal(($"entry {changed + 1}", "after"), (fault.Row, fault.Field));
                }
            );

    [Fact]
    public void An_entry_rewritten_with_a_hash_of_its_own_breaks_the_link_of_the_next()
    {
        var kept = Chain([(1, "a"), (1, "b"), (1, "c")]).ToList();
        var entry = LedgerJson.Entry(kept[1])!;
        kept[1] = KeptEntry.Of(entry with { After = SealedText.Of("forged") });

        var fault = Assert.Single(Faults(kept));

        Assert.StartsWith(
            "store, row \"entry 3\": found an entry that follows one with the SHA-256",
            fault,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void An_end_cut_off_is_seen_only_against_a_head_that_was_noted()
    {
        var kept = Chain([(1, "a"), (1, "b"), (1, "c")]);
        IReadOnlyList<KeptEntry> cut = [.. kept.Take(2)];

        Assert.Empty(Faults(cut));
        Assert.Contains(
            $"found no entry with the hash {kept[2].Hash}",
            Assert
                .Single(LedgerCheck.OfStore("store", cut, []).WithNotedHead(kept[2].Hash, cut, "store").Faults)
                .ToString(),
            StringComparison.Ordinal
        );
        var whole = LedgerCheck.OfStore("store", kept, []).WithNotedHead(kept[0].Hash, kept, "store");
        Assert.Equal((0, 2), (whole.Faults.Count, whole.AfterNotedHead));
    }

    [Fact]
    public void A_clock_set_back_is_a_remark_and_no_fault()
    {
        var kept = Chain([(1, "a"), (1, "b"), (1, "c")], minutes: [0, 10, 5]);

        var findings = LedgerCheck.OfStore("store", kept, []);

        Assert.Empty(findings.Faults);
        Assert.Equal([new ClockSetBack(3, Start.AddMinutes(10), Start.AddMinutes(5))], findings.SetBack);
    }

    [Fact]
    public void What_is_held_must_be_what_the_entries_name()
    {
        HeldSum[] named = [new("cases/1/runs/1/report.json", "aa"), new("cases/1/runs/1/run.json", "bb")];
        var kept = Chain([(1, LedgerJson.OfRun(1, named))], act: LedgerAct.CaseRun);

        Assert.Empty(LedgerCheck.OfStore("store", kept, named).Faults);
        Assert.Equal(
            [
                ("cases/1/runs/1/report.json", "a file that was changed (its SHA-256 is cc)"),
                ("cases/1/runs/1/run.json", "nothing"),
                ("cases/1/runs/2/run.json", "a file that no entry names"),
            ],
            LedgerCheck
                .OfStore("store", kept, [named[0] with { Sha256 = "cc" }, new("cases/1/runs/2/run.json", "dd")])
                .Faults.Select(fault => (fault.Row, fault.Found))
        );
    }

    [Theory]
    [InlineData("")]
    [InlineData("{")]
    [InlineData("null")]
    [InlineData("{\"format\": \"alburnum ledger 1\", \"number\": \"one\"}")]
    public void Text_that_is_no_entry_is_named_whatever_it_is(string text)
    {
        var fault = Assert.Single(Faults([new(1, 1, text, "{}", Sha256Of.Text(text))]));

        Assert.Equal("store, row \"entry 1\": found text that is no entry, expected an entry.", fault);
    }

    private static IReadOnlyList<string> Faults(IReadOnlyList<KeptEntry> kept) =>
        [.. LedgerCheck.OfStore("store", kept, []).Faults.Select(fault => fault.ToString())];

    private static IReadOnlyList<KeptEntry> Chain(
        IReadOnlyList<(int Case, string Text)> acts,
        int[]? minutes = null,
        LedgerAct act = LedgerAct.Corrected
    )
    {
        var kept = new List<KeptEntry>();
        foreach (var (i, (ofCase, text)) in acts.Index())
        {
            var inCase = kept.FindAll(entry => entry.CaseNumber == ofCase);
            kept.Add(
                KeptEntry.Of(
                    new(
                        new(
                            i + 1,
                            inCase.Count + 1,
                            kept.Count > 0 ? kept[^1].Hash : LedgerPlace.Nothing,
                            inCase.Count > 0 ? inCase[^1].Hash : LedgerPlace.Nothing
                        ),
                        ofCase,
                        Start.AddMinutes(minutes?[i] ?? i),
                        act,
                        SealedText.Of(LedgerJson.OfPerson(new("jo", PersonKnownBy.Command)))!,
                        Subject: null,
                        Before: null,
                        SealedText.Of(text)
                    )
                )
            );
        }
        return kept;
    }
}
