using System.Globalization;
using Alburnum.Records.Bundles;
using Alburnum.Records.Ledger;

namespace Alburnum.Reports.Words;

/// <summary>What the ledger says, in words.</summary>
public sealed class LedgerWords(Wording wording)
{
    private const int HashDigits = 64;
    private const int ShownDigits = 12;

    /// <summary>In the language chosen.</summary>
    public static LedgerWords Current => new(Wording.Current);

    /// <summary>The entries of a case on a line each, under a line that says how many they are.</summary>
    /// <param name="caseNumber">Number of the case.</param>
    /// <param name="entries">Its entries.</param>
    /// <param name="command">The command that verifies.</param>
    public IEnumerable<string> Lines(int caseNumber, IReadOnlyList<LedgerEntry> entries, string command)
    {
        ArgumentNullException.ThrowIfNull(entries);
        yield return wording.Say(
            "ledger.of-case",
            ("case", Figures.Whole(caseNumber)),
            ("entries", Figures.Whole(entries.Count)),
            ("command", command)
        );
        foreach (var entry in entries)
            yield return wording.Say(
                "ledger.entry",
                ("number", Figures.Whole(entry.Place.Number)),
                ("at", Figures.Moment(entry.At, wording)),
                ("person", Who(entry)),
                ("says", Says(entry))
            );
    }

    /// <summary>Who did it, and how that is known.</summary>
    public string Who(LedgerEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return entry.Who is not { } person
            ? wording.Say("ledger.removed")
            : person.KnownBy switch
            {
                PersonKnownBy.System => wording.Say("ledger.by-system", ("name", Shown(person.Name))),
                _ => Shown(person.Name),
            };
    }

    /// <summary>What was done, with what was before and after.</summary>
    public string Says(LedgerEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        var act = Act(entry.Act);
        var subject = Subject(entry);
        var done = subject.Length == 0 ? act : wording.Say("ledger.of-subject", ("act", act), ("subject", subject));
        var (before, after) = (
            All(entry.PartsBefore, IsRemoved(entry, "before")),
            All(entry.PartsAfter, IsRemoved(entry, "after"))
        );
        return entry.Before is null && entry.After is null ? done
            : entry.Before is null ? wording.Say("ledger.new", ("act", done), ("after", after))
            : entry.After is null ? wording.Say("ledger.no-longer", ("act", done), ("before", before))
            : wording.Say("ledger.changed", ("act", done), ("before", before), ("after", after));
    }

    /// <summary>What was verified, a sentence a line; only for findings without a fault.</summary>
    /// <param name="findings">What was found.</param>
    /// <param name="headCommand">The command that holds a noted head against the ledger.</param>
    public IEnumerable<string> Verified(LedgerFindings findings, string headCommand)
    {
        ArgumentNullException.ThrowIfNull(findings);
        yield return wording.Say(
            "ledger.verified",
            ("entries", Figures.Whole(findings.Entries)),
            ("files", Figures.Whole(findings.Files))
        );
        foreach (var remark in SetBack(findings))
            yield return remark;
        if (findings.AfterNotedHead is { } later)
            yield return wording.Say("ledger.noted-found", ("entries", Figures.Whole(later)));
        if (findings.Head is { } head)
            yield return wording.Say("ledger.head", ("head", head), ("command", headCommand));
    }

    /// <summary>What was verified of a bundle, a sentence a line; only for findings without a fault.</summary>
    /// <param name="bundle">What was found.</param>
    /// <param name="isKeyNamed">Whether the key was compared with one that was named.</param>
    /// <param name="keyOption">The option by which a key is named.</param>
    public IEnumerable<string> Verified(BundleFindings bundle, bool isKeyNamed, string keyOption)
    {
        ArgumentNullException.ThrowIfNull(bundle);
        yield return wording.Say(
            "ledger.bundle-verified",
            ("case", Figures.Whole(bundle.CaseNumber)),
            ("made", Figures.Moment(bundle.MadeAt, wording)),
            ("program", Shown(bundle.Program)),
            ("entries", Figures.Whole(bundle.Ledger.Entries)),
            ("files", Figures.Whole(bundle.Ledger.Files))
        );
        foreach (var remark in SetBack(bundle.Ledger))
            yield return remark;
        yield return wording.Say("ledger.signed", ("fingerprint", bundle.Fingerprint));
        if (!isKeyNamed)
            yield return wording.Say("ledger.compare", ("option", keyOption));
    }

    private IEnumerable<string> SetBack(LedgerFindings findings) =>
        findings.SetBack.Select(each =>
            wording.Say(
                "ledger.set-back",
                ("entry", Figures.Whole(each.Entry)),
                ("at", ToTheSecond(each.At)),
                ("before", ToTheSecond(each.Before))
            )
        );

    private string ToTheSecond(DateTime at) =>
        wording.Say(
            "date.moment",
            ("day", Figures.Day(DateOnly.FromDateTime(at), wording)),
            ("time", at.ToString("HH:mm:ss", CultureInfo.InvariantCulture))
        );

    private static bool IsRemoved(LedgerEntry entry, string text) =>
        entry.Removed.Contains(text, StringComparer.Ordinal);

    private string Subject(LedgerEntry entry) =>
        IsRemoved(entry, "subject") ? wording.Say("ledger.removed") : Shown(entry.Subject?.Text ?? "");

    private string All(IReadOnlyList<LedgerPart> parts, bool isRemoved) =>
        isRemoved
            ? wording.Say("ledger.removed")
            : string.Join(
                "; ",
                parts.Select(part =>
                    part.Name.Length == 0
                        ? Short(part.Text)
                        : wording.Say("ledger.part", ("name", Name(part.Name)), ("text", Short(part.Text)))
                )
            );

    private string Name(string name) =>
        name switch
        {
            "reference" => wording.Say("ledger.part.reference"),
            "title" => wording.Say("ledger.part.title"),
            "client" => wording.Say("ledger.part.client"),
            "run" => wording.Say("ledger.part.run"),
            "files" => wording.Say("ledger.part.files"),
            "removed" => wording.Say("ledger.part.removed"),
            "program" => wording.Say("ledger.part.program"),
            "facts_sha256" => wording.Say("ledger.part.facts"),
            "rulebook" => wording.Say("ledger.part.rulebook"),
            "rulebook_sha256" => wording.Say("ledger.part.rulebook-file"),
            // The name of a file.
            _ => Shown(name),
        };

    private string Act(LedgerAct act) =>
        act switch
        {
            LedgerAct.LedgerBegun => wording.Say("ledger.begun"),
            LedgerAct.RunFound => wording.Say("ledger.found"),
            LedgerAct.CaseNamed => wording.Say("ledger.named"),
            LedgerAct.PhotographTakenIn => wording.Say("ledger.taken-in"),
            LedgerAct.MarksPlaced => wording.Say("ledger.marks"),
            LedgerAct.PhotographLeftOut => wording.Say("ledger.left-out"),
            LedgerAct.RulebookChosen => wording.Say("ledger.rulebook"),
            LedgerAct.InputsUsed => wording.Say("ledger.inputs"),
            LedgerAct.CaseRun => wording.Say("ledger.run"),
            LedgerAct.VerdictGiven => wording.Say("ledger.verdict"),
            LedgerAct.ReportsIssued => wording.Say("ledger.reports"),
            LedgerAct.Corrected => wording.Say("ledger.corrected"),
            LedgerAct.Redacted => wording.Say("ledger.redacted"),
            LedgerAct.CaseDeleted => wording.Say("ledger.deleted"),
            _ => throw new ArgumentOutOfRangeException(nameof(act), act, "Not an act."),
        };

    // Twelve digits are enough to tell two apart; the whole stands in the JSON.
    private static string Short(string text) =>
        text.Length == HashDigits && text.All(char.IsAsciiHexDigitLower) ? $"{text[..ShownDigits]}…" : Shown(text);

    private static string Shown(string text) => InputProblem.Visible(text);
}
