namespace Alburnum.Records.Ledger;

/// <summary>What was done, as an entry of the ledger says it.</summary>
public enum LedgerAct
{
    /// <summary>The ledger of a store begins.</summary>
    LedgerBegun,

    /// <summary>A run that was in the store before the ledger began: it is hashed as it was found.</summary>
    RunFound,

    /// <summary>A case got its reference, title and client, or others than before.</summary>
    CaseNamed,

    /// <summary>A photograph was taken into a case.</summary>
    PhotographTakenIn,

    /// <summary>Corners, places or lengths were pointed out on a photograph, moved or taken away.</summary>
    MarksPlaced,

    /// <summary>A photograph was left out of the verdict, for a reason; or is no longer left out.</summary>
    PhotographLeftOut,

    /// <summary>A code of practice was chosen to judge a case by.</summary>
    RulebookChosen,

    /// <summary>What a run is worked out with: the program, the facts, the rulebook.</summary>
    InputsUsed,

    /// <summary>A case was run.</summary>
    CaseRun,

    /// <summary>A verdict was given.</summary>
    VerdictGiven,

    /// <summary>Report files were written.</summary>
    ReportsIssued,

    /// <summary>An earlier entry is corrected in words; it stays as it is.</summary>
    Corrected,

    /// <summary>Personal data were removed; the hashes over them stay.</summary>
    Redacted,

    /// <summary>The contents of a case were deleted; its entries stay without their values.</summary>
    CaseDeleted,
}

/// <summary>How an act is kept.</summary>
public static class LedgerActKeys
{
    /// <summary>The act as entries spell it.</summary>
    public static string Key(this LedgerAct act) =>
        act switch
        {
            LedgerAct.LedgerBegun => "ledger begun",
            LedgerAct.RunFound => "run found",
            LedgerAct.CaseNamed => "case named",
            LedgerAct.PhotographTakenIn => "photograph taken in",
            LedgerAct.MarksPlaced => "marks placed",
            LedgerAct.PhotographLeftOut => "photograph left out",
            LedgerAct.RulebookChosen => "rulebook chosen",
            LedgerAct.InputsUsed => "inputs used",
            LedgerAct.CaseRun => "case run",
            LedgerAct.VerdictGiven => "verdict given",
            LedgerAct.ReportsIssued => "reports issued",
            LedgerAct.Corrected => "correction",
            LedgerAct.Redacted => "redaction",
            LedgerAct.CaseDeleted => "case deleted",
            _ => throw new ArgumentOutOfRangeException(nameof(act), act, "Not an act."),
        };

    /// <summary>The act of a key.</summary>
    /// <exception cref="FormatException">No act has it.</exception>
    internal static LedgerAct Read(string key)
    {
        foreach (var act in Enum.GetValues<LedgerAct>())
            if (act.Key() == key)
                return act;
        throw new FormatException($"\"{key}\" is not an act.");
    }
}
