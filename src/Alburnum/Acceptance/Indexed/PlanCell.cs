using System.Globalization;

namespace Alburnum.Acceptance.Indexed;

/// <summary>One cell of a table of plans: numbers, an arrow to another row, or nothing.</summary>
public abstract record PlanCell
{
    private protected PlanCell() { }

    /// <summary>Reads a cell: "10/11", "v" (plan below), "^" (plan above) or "-" (no plan); null where it is none of these.</summary>
    public static PlanCell? Read(string text) =>
        text switch
        {
            "v" => new PlanBelow(),
            "^" => new PlanAbove(),
            "-" => new NoPlan(),
            _ => ReadNumbers(text.Split('/')),
        };

    private static PlanNumbers? ReadNumbers(string[] parts) =>
        parts.Length == 2
        && int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out var accept)
        && int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out var reject)
        && accept < reject
            ? new(accept, reject)
            : null;
}

/// <summary>Acceptance and rejection number.</summary>
/// <param name="Accept">Greatest number of failures that accepts.</param>
/// <param name="Reject">Least number of failures that rejects; above the acceptance number.</param>
public sealed record PlanNumbers(int Accept, int Reject) : PlanCell;

/// <summary>Use the first plan below: sample size and numbers both.</summary>
public sealed record PlanBelow : PlanCell;

/// <summary>Use the first plan above: sample size and numbers both.</summary>
public sealed record PlanAbove : PlanCell;

/// <summary>The table has no plan here.</summary>
public sealed record NoPlan : PlanCell;
