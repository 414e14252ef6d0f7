using Alburnum.Penetration;

namespace Alburnum.Acceptance.Variables;

/// <summary>What the verdict on a batch judged by variables rests on. Values stand in the demand's unit.</summary>
public abstract record VariablesReason : Reason
{
    private protected VariablesReason() { }
}

/// <summary>What was asked.</summary>
/// <param name="Demand">The demand.</param>
public sealed record DemandUsed(VariablesDemand Demand) : VariablesReason;

/// <summary>What was read.</summary>
/// <param name="Demand">The demand.</param>
/// <param name="Pieces">Pieces measured.</param>
/// <param name="Values">Least and greatest value read; null where every reading is cut off.</param>
/// <param name="BelowDetection">Readings below detection, by their limit, rising.</param>
/// <param name="CutOffAbove">Readings of pieces that reach at least as far as could be read, rising.</param>
public sealed record ValuesRead(
    VariablesDemand Demand,
    int Pieces,
    (double Least, double Greatest)? Values,
    IReadOnlyList<CutOffReadings> BelowDetection,
    IReadOnlyList<CutOffReadings> CutOffAbove
) : VariablesReason
{
    /// <inheritdoc/>
    public bool Equals(ValuesRead? other) =>
        other is not null
        && Demand == other.Demand
        && Pieces == other.Pieces
        && Values == other.Values
        && BelowDetection.SequenceEqual(other.BelowDetection)
        && CutOffAbove.SequenceEqual(other.CutOffAbove);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Demand, Pieces, Values);
}

/// <summary>Readings that are cut off at one value.</summary>
/// <param name="Limit">Where they are cut off, in the demand's unit.</param>
/// <param name="Pieces">How many.</param>
public sealed record CutOffReadings(double Limit, int Pieces);

/// <summary>One measure was judged, and nothing else of the pieces.</summary>
public sealed record OnlyMeasureJudged : VariablesReason;

/// <summary>Tolerance limits: what the required share exceeds.</summary>
/// <param name="Demand">The demand, with share and confidence.</param>
/// <param name="Lower">It exceeds at least this.</param>
/// <param name="Upper">It exceeds at most this, with the same confidence.</param>
/// <param name="IsExact">False where readings are cut off and the limits approximate.</param>
public sealed record ToleranceLimits(VariablesDemand Demand, double Lower, double Upper, bool IsExact)
    : VariablesReason;

/// <summary>Bounds on the share of all pieces that reach the limit.</summary>
/// <param name="Demand">The demand, with limit and confidence.</param>
/// <param name="LowerShare">Lower bound, 0 to 1.</param>
/// <param name="UpperShare">Upper bound with the same confidence, 0 to 1.</param>
public sealed record ShareBounds(VariablesDemand Demand, double LowerShare, double UpperShare) : VariablesReason;

/// <summary>Fewer than two different values were read: nothing fixes the spread, and the count decides.</summary>
public sealed record SpreadNotFixed : VariablesReason;

/// <summary>What may be said by counting alone, whatever shape the measure has.</summary>
/// <param name="Demand">The demand, with its confidence.</param>
/// <param name="Reaching">Pieces that surely reach the limit.</param>
/// <param name="Pieces">Of so many measured.</param>
/// <param name="ShareLowerBound">Lower bound on the share of all pieces that reach it, 0 to 1.</param>
/// <param name="LotSize">Pieces in the batch; null where not known.</param>
public sealed record CountedAlone(
    VariablesDemand Demand,
    int Reaching,
    int Pieces,
    double ShareLowerBound,
    int? LotSize
) : VariablesReason;

/// <summary>Every piece of the lot was measured: nothing is inferred.</summary>
/// <param name="Reaching">Pieces that surely reach the limit.</param>
/// <param name="Failing">Pieces that surely do not.</param>
/// <param name="Pieces">All of them.</param>
public sealed record LotMeasured(int Reaching, int Failing, int Pieces) : VariablesReason;

/// <summary>The shape that is taken for granted.</summary>
/// <param name="Population">The shape.</param>
public sealed record PopulationAssumed(Population Population) : VariablesReason;

/// <summary>Values and count point different ways, so the shape is doubted and nothing is decided.</summary>
/// <param name="Population">The shape.</param>
public sealed record PopulationDoubted(Population Population) : VariablesReason;
