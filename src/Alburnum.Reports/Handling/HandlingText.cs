using Alburnum.Reports.Words;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Reports.Handling;

/// <summary>Reagents and handling in plain lines.</summary>
public static class HandlingText
{
    /// <summary>A choice of reagents, line by line.</summary>
    public static IEnumerable<string> Lines(ReagentChoiceDocument choice)
    {
        ArgumentNullException.ThrowIfNull(choice);
        yield return choice.Answer;
        if (choice.Preservative is null)
        {
            foreach (var reagent in choice.Reagents)
                yield return $"· {Listed(reagent)}";
            yield break;
        }
        foreach (var reagent in choice.Reagents)
        {
            yield return "";
            yield return Looks(reagent);
            foreach (var (key, texts) in Parts(reagent))
            foreach (var text in texts)
                yield return $"  {key}: {text}";
        }
        yield return "";
        foreach (var statement in choice.Analyses)
            yield return Said("handling.analysis", ("says", Line(statement)));
        foreach (var statement in choice.Always)
            yield return $"· {Line(statement)}";
        foreach (var caution in choice.Cautions)
            yield return $"· {caution}";
    }

    /// <summary>A reagent in one line, where no preservative is named: what it shows decides which is meant.</summary>
    public static string Listed(ReagentDocument reagent)
    {
        ArgumentNullException.ThrowIfNull(reagent);
        return reagent.Shows.Count == 0
            ? Looks(reagent)
            : Said("handling.listed", ("elements", string.Join(", ", reagent.Shows)), ("reagent", Looks(reagent)));
    }

    private static string Looks(ReagentDocument reagent) =>
        Said(
            "handling.reagent",
            ("name", reagent.Name),
            ("treated", reagent.Treated),
            ("untreated", reagent.Untreated)
        );

    /// <summary>An answer about handling, line by line.</summary>
    public static IEnumerable<string> Lines(HandlingDocument answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        yield return answer.Question;
        foreach (var statement in answer.Answers)
            yield return $"  {Line(statement)}";
        foreach (var remark in answer.Remarks)
            yield return $"· {remark}";
    }

    /// <summary>A statement with its standing and source.</summary>
    public static string Line(StatementDocument statement)
    {
        ArgumentNullException.ThrowIfNull(statement);
        return Said(
            "handling.statement",
            ("says", statement.Says),
            ("standing", Wording.Current.Say(statement.Standing)),
            ("source", statement.Source)
        );
    }

    /// <summary>What is said of a reagent, part by part: the part's name and its sentences.</summary>
    public static IEnumerable<(string Name, IReadOnlyList<string> Texts)> Parts(ReagentDocument reagent)
    {
        ArgumentNullException.ThrowIfNull(reagent);
        yield return (Said("handling.part.detection"), [reagent.Detection]);
        yield return (Said("handling.part.cannot-show"), reagent.CannotShow);
        yield return (Said("handling.part.misleads"), reagent.Misleads);
        yield return (Said("handling.part.preparation"), [reagent.Preparation]);
        yield return (Said("handling.part.photograph"), reagent.Photograph);
        if (reagent.Indicator is { } indicator)
            yield return (Said("handling.part.measured-as"), [indicator]);
        yield return (Said("handling.part.cautions"), reagent.Cautions);
        yield return (
            Said("handling.part.source"),
            [
                Said(
                    "handling.reagent-source",
                    ("citation", reagent.Source),
                    ("standing", Wording.Current.Say(reagent.Standing)),
                    ("limitsCitation", reagent.LimitsSource),
                    ("limitsStanding", Wording.Current.Say(reagent.LimitsStanding))
                ),
            ]
        );
    }
}
