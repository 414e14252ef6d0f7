using Alburnum.Records.Facts;
using Alburnum.Requirements;

namespace Alburnum.Cli.Requirements;

/// <summary>The use class of a situation. Fields as in docs/json/use-class.md.</summary>
/// <param name="UseClasses">The class, or those still possible.</param>
/// <param name="IsSettled">True where one class is left.</param>
/// <param name="DecidedBy">The question that decided it so far; absent where none was answered.</param>
/// <param name="AskNext">The question that narrows it down further; absent where the class is settled.</param>
/// <param name="Meaning">What EN 335 says of each class.</param>
/// <param name="Remarks">Traps between editions, and what goes with the class.</param>
internal sealed record UseClassDocument(
    IReadOnlyList<string> UseClasses,
    bool IsSettled,
    string? DecidedBy,
    string? AskNext,
    IReadOnlyList<UseClassMeaning> Meaning,
    IReadOnlyList<string> Remarks
)
{
    public static UseClassDocument From(UseClassAnswer answer, FactLibrary facts) =>
        new(
            [.. answer.Classes.Select(each => each.Label())],
            answer.NextQuestion is null,
            answer.DecidedBy?.InWords(),
            answer.NextQuestion?.InWords(),
            [
                .. facts
                    .UseClasses.Where(row => answer.Classes.Contains(row.UseClass))
                    .Select(row => new UseClassMeaning(
                        row.UseClass.Label(),
                        row.Situation,
                        row.Moisture,
                        row.Agents,
                        row.Provenance.Standing.InWords(),
                        row.Provenance.Citation
                    )),
            ],
            [
                .. facts
                    .UseClassTraps.Where(trap => trap.UseClasses.Intersect(answer.Classes).Any())
                    .Select(trap => $"{trap.Sentence} ({trap.Provenance.Standing.InWords()})"),
                .. answer.Remarks,
            ]
        );
}

/// <summary>What EN 335 says of one class.</summary>
internal sealed record UseClassMeaning(
    string UseClass,
    string Situation,
    string Moisture,
    string Agents,
    string Standing,
    string Source
);
