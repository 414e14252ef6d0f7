namespace Alburnum.Workflows.Acceptance;

/// <summary>What is said of a batch that is to be judged and may have to be refused. What each is called is known where it was written.</summary>
public enum JudgingField
{
    /// <summary>Pieces in the batch.</summary>
    Lot,

    /// <summary>Pieces cut.</summary>
    Cut,

    /// <summary>Share of the pieces cut that must pass.</summary>
    MustPass,

    /// <summary>AQL that indexes a plan.</summary>
    Aql,

    /// <summary>Required depth.</summary>
    LeastDepth,

    /// <summary>Required retention.</summary>
    Required,
}
