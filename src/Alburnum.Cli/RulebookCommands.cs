using System.ComponentModel;
using System.Globalization;
using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli;

/// <summary>Names the rulebooks that ship.</summary>
internal sealed class RulebookListCommand(IAnsiConsole console) : AsyncCommand
{
    public override async Task<int> ExecuteAsync(CommandContext context, CancellationToken cancellationToken)
    {
        var output = console.Profile.Out.Writer;
        foreach (var rulebook in FactLibrary.Load(FactLibrary.DefaultFolder).Rulebooks)
        {
            var line = FormattableString.Invariant(
                $"{rulebook.Name, -28} {rulebook.Citation}: {rulebook.Title} ({rulebook.Rows.Count} rows)"
            );
            await output.WriteLineAsync(line.AsMemory(), cancellationToken);
        }
        return CommandLine.Done;
    }
}

/// <summary>Reports what does not hold together in a rulebook.</summary>
internal sealed class RulebookCheckCommand(IAnsiConsole console) : AsyncCommand<RulebookCheckCommand.Settings>
{
    private const int CasesShown = 6;

    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<FILE|NAME>")]
        [Description("A rulebook file of your own, or the name of one that ships")]
        public required string Rulebook { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var facts = FactLibrary.Load(FactLibrary.DefaultFolder);
        var rulebook = RulebookArgument.Read(settings.Rulebook, facts);
        var findings = RulebookCheck.Run(rulebook, cancellationToken);
        var output = console.Profile.Out.Writer;
        await output.WriteLineAsync(
            FormattableString
                .Invariant($"{rulebook.Citation}: {rulebook.Title}, {rulebook.Rows.Count} rows")
                .AsMemory(),
            cancellationToken
        );
        foreach (var line in findings.SelectMany(Lines))
            await output.WriteLineAsync(line.AsMemory(), cancellationToken);
        var faults = findings.Count(finding => finding.IsFault);
        var end = faults == 0 ? "No faults." : FormattableString.Invariant($"{faults} to mend.");
        await output.WriteLineAsync(end.AsMemory(), cancellationToken);
        return faults == 0 ? CommandLine.Done : CommandLine.Refused;
    }

    private static IEnumerable<string> Lines(RulebookFinding finding)
    {
        yield return $"{Kind(finding.Kind)} ({finding.Subject.ToString().ToLowerInvariant()}): {finding.InWords}";
        foreach (var box in finding.Cases.Take(CasesShown))
            yield return $"    {box.InWords}";
        if (finding.Cases.Count > CasesShown)
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"    and {finding.Cases.Count - CasesShown} more groups of cases"
            );
    }

    private static string Kind(RulebookFindingKind kind) =>
        kind switch
        {
            RulebookFindingKind.Contradiction => "contradiction",
            RulebookFindingKind.AsksLess => "asks for less",
            RulebookFindingKind.Unreachable => "unreachable row",
            RulebookFindingKind.Gap => "gap",
            RulebookFindingKind.Silent => "not covered",
            RulebookFindingKind.Overlap => "overlap",
            RulebookFindingKind.TooLarge => "not checked",
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind."),
        };
}

/// <summary>Lists, case by case, what changes between two rulebooks.</summary>
internal sealed class RulebookCompareCommand(IAnsiConsole console) : AsyncCommand<RulebookCompareCommand.Settings>
{
    private const int ChangesShown = 200;

    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<BEFORE>")]
        [Description("File or name of the first rulebook")]
        public required string Before { get; init; }

        [CommandArgument(1, "<AFTER>")]
        [Description("File or name of the second rulebook")]
        public required string After { get; init; }

        [CommandOption("--cases <CSV>")]
        [Description("Archived enquiries to ask of both; every usual component, life and form where left out")]
        public string? Cases { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var facts = FactLibrary.Load(FactLibrary.DefaultFolder);
        var (before, after) = (
            RulebookArgument.Read(settings.Before, facts),
            RulebookArgument.Read(settings.After, facts)
        );
        var enquiries = settings.Cases is { } file ? EnquiryTable.Read(file, facts) : Usual(facts, before, after);
        var changed = RulebookComparison.Of(before, after, enquiries, cancellationToken);
        var output = console.Profile.Out.Writer;
        await output.WriteLineAsync($"{before.Citation} → {after.Citation}".AsMemory(), cancellationToken);
        foreach (var line in Lines(changed))
            await output.WriteLineAsync(line.AsMemory(), cancellationToken);
        var end = FormattableString.Invariant($"{changed.Count} of {enquiries.Count} answers change.");
        await output.WriteLineAsync(end.AsMemory(), cancellationToken);
        return CommandLine.Done;
    }

    private static IReadOnlyList<Enquiry> Usual(FactLibrary facts, Rulebook before, Rulebook after)
    {
        var lives = before.Lives.Union(after.Lives).Order().ToList();
        return RulebookComparison.UsualEnquiries(
            facts.Components.All,
            [facts.Species.Get("Scots pine"), facts.Species.Get("Norway spruce")],
            lives.Count > 0 ? lives : [15, 30, 60]
        );
    }

    private static IEnumerable<string> Lines(IReadOnlyList<ChangedAnswer> changed)
    {
        foreach (var change in changed.Take(ChangesShown))
            yield return FormattableString.Invariant(
                $"  {change.Index + 1, 6}  {Words(change.Enquiry)}: {change.InWords}"
            );
        if (changed.Count > ChangesShown)
            yield return FormattableString.Invariant($"  and {changed.Count - ChangesShown} more");
    }

    private static string Words(Enquiry enquiry)
    {
        var parts = new[]
        {
            enquiry.Component?.Name,
            enquiry.FormOrFromSection?.ToString().ToLowerInvariant(),
            enquiry.Species?.Name,
            enquiry.UseClasses.Count > 0
                ? $"use class {string.Join(" or ", enquiry.UseClasses.Select(each => each.Label()))}"
                : null,
            enquiry.Life is { } life ? FormattableString.Invariant($"{life.Years} years") : null,
        };
        return string.Join(", ", parts.Where(part => part is not null));
    }
}

/// <summary>A rulebook named on the command line: a file where there is one, else a name.</summary>
internal static class RulebookArgument
{
    public static Rulebook Read(string text, FactLibrary facts) =>
        File.Exists(text)
            ? RulebookFile.Load(text, Path.GetFileNameWithoutExtension(text), facts)
            : facts.Rulebook(text);
}
