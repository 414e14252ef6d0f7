using MathNet.Numerics.LinearAlgebra;

namespace Alburnum.Acceptance.Indexed;

/// <summary>How a scheme of switched plans behaves in the long run at one quality.</summary>
public sealed record SchemePoint
{
    /// <summary>True share of failing pieces, or defects per piece where the plan counts those.</summary>
    public required double FailingShare { get; init; }

    /// <summary>Share of lots that are accepted.</summary>
    public required double Acceptance { get; init; }

    /// <summary>The same on normal inspection alone, as if nothing were ever switched.</summary>
    public required double NormalAlone { get; init; }

    /// <summary>Pieces cut from a lot on average.</summary>
    public required double MeanPiecesCut { get; init; }

    /// <summary>Share of lots under normal inspection.</summary>
    public required double Normal { get; init; }

    /// <summary>Share of lots under tightened inspection.</summary>
    public required double Tightened { get; init; }

    /// <summary>Share of lots under reduced inspection.</summary>
    public required double Reduced { get; init; }

    /// <summary>Lots on average, from the first on normal inspection, until acceptance stops; null beyond a thousand million.</summary>
    public required double? LotsToStop { get; init; }
}

/// <summary>The characteristic of a whole scheme: plans and the rules that switch between them.</summary>
/// <remarks>
/// A Markov chain whose states are where a plant may stand and whose steps are the switching rules themselves, with the chance of each
/// outcome at a steady quality. Where acceptance stops it begins again on tightened inspection, and the quality is as before: the share is
/// that of all lots submitted, a stop costing none.
/// </remarks>
public static class SchemeCharacteristic
{
    private const double LongestRun = 1e9;

    /// <summary>The characteristic at stated qualities.</summary>
    /// <param name="sequence">Tables, switching rules, level and AQL.</param>
    /// <param name="pieces">Pieces in each lot.</param>
    /// <param name="isReductionAgreed">Whether reduced inspection is agreed to whenever the run of accepted lots allows it.</param>
    /// <param name="shares">Failing shares, 0 to 1.</param>
    public static IReadOnlyList<SchemePoint> Curve(
        LotSequence sequence,
        int pieces,
        bool isReductionAgreed,
        IReadOnlyList<double> shares
    )
    {
        ArgumentNullException.ThrowIfNull(sequence);
        var chain = new Chain(sequence, pieces, isReductionAgreed);
        return [.. shares.Select(chain.At)];
    }

    private sealed class Chain
    {
        private static readonly LotOutcome[] Outcomes = Enum.GetValues<LotOutcome>();
        private readonly List<SwitchingState> _states = [SwitchingState.Beginning];

        // After each outcome: the state that follows, and whether acceptance stopped on the way.
        private readonly List<(int State, bool IsStop)[]> _next = [];
        private readonly IndexedPlan[] _plans;

        public Chain(LotSequence sequence, int pieces, bool isReductionAgreed)
        {
            var rules = sequence.Rules;
            _plans =
            [
                .. Enum.GetValues<Severity>()
                    .Select(severity => sequence.Plan(SwitchingState.Beginning with { Severity = severity }, pieces)),
            ];
            for (var i = 0; i < _states.Count; i++)
                _next.Add([.. Outcomes.Select(outcome => After(_states[i], outcome))]);

            (int, bool) After(SwitchingState before, LotOutcome outcome)
            {
                var after = Switching.After(before, new(outcome, isReductionAgreed), rules);
                var state = Needed(after.IsStopped ? Switching.BeginAgain : after, rules);
                var at = _states.IndexOf(state);
                if (at < 0)
                {
                    at = _states.Count;
                    _states.Add(state);
                }
                return (at, after.IsStopped);
            }
        }

        public SchemePoint At(double share)
        {
            var chances = _plans.Select(plan => Chances(plan, share)).ToArray();
            var count = _states.Count;
            var steps = Matrix<double>.Build.Dense(count, count);
            var going = Matrix<double>.Build.Dense(count, count);
            for (var i = 0; i < count; i++)
            for (var outcome = 0; outcome < Outcomes.Length; outcome++)
            {
                var (next, isStop) = _next[i][outcome];
                var chance = chances[(int)_states[i].Severity][outcome];
                steps[i, next] += chance;
                if (!isStop)
                    going[i, next] += chance;
            }
            var stay = Stationary(steps);
            double Over(Func<int, double> of) => Enumerable.Range(0, count).Sum(i => stay[i] * of(i));
            double In(Severity severity) => Over(i => _states[i].Severity == severity ? 1 : 0);
            return new()
            {
                FailingShare = share,
                Acceptance = Over(i => 1 - chances[(int)_states[i].Severity][(int)LotOutcome.Rejected]),
                NormalAlone = 1 - chances[(int)Severity.Normal][(int)LotOutcome.Rejected],
                MeanPiecesCut = Over(i => _plans[(int)_states[i].Severity].Plan.SampleSize),
                Normal = In(Severity.Normal),
                Tightened = In(Severity.Tightened),
                Reduced = In(Severity.Reduced),
                LotsToStop = ToStop(going),
            };
        }

        // The long run: what flows into a state flows out of it.
        private static Vector<double> Stationary(Matrix<double> steps)
        {
            var count = steps.RowCount;
            var balance = (Matrix<double>.Build.DenseIdentity(count) - steps).Transpose();
            balance.SetRow(count - 1, Vector<double>.Build.Dense(count, 1));
            var right = Vector<double>.Build.Dense(count);
            right[count - 1] = 1;
            // Of what is hardly ever reached, round-off may leave a hair less than nothing.
            return balance.Solve(right).PointwiseMaximum(0);
        }

        private static double? ToStop(Matrix<double> going)
        {
            var lots = (Matrix<double>.Build.DenseIdentity(going.RowCount) - going).Solve(
                Vector<double>.Build.Dense(going.RowCount, 1)
            )[0];
            return lots is > 0 and < LongestRun ? lots : null;
        }

        private static double[] Chances(IndexedPlan plan, double share)
        {
            var (single, supply) = (plan.Plan, plan.StandardSupply);
            var accepted = supply.AtMost(single.AcceptanceNumber, single.SampleSize, share);
            var within = single.Acceptance(share, supply);
            var chances = new double[Outcomes.Length];
            chances[(int)LotOutcome.Accepted] = accepted;
            chances[(int)LotOutcome.AcceptedInGap] = within - accepted;
            chances[(int)LotOutcome.Rejected] = 1 - within;
            return chances;
        }

        // Of what lies behind, only what the rules may still ask for: otherwise there would be states without end.
        private static SwitchingState Needed(SwitchingState state, SwitchingRules rules)
        {
            var run = state.Recent.Reverse().TakeWhile(accepted => accepted).Count();
            var isTightened = state.Severity == Severity.Tightened;
            return state with
            {
                Recent =
                [
                    .. state.Recent.TakeLast(
                        state.Severity switch
                        {
                            Severity.Normal => Math.Max(
                                Math.Min(run, rules.AcceptedToReduce),
                                rules.WatchedToTighten - 1
                            ),
                            Severity.Tightened => Math.Min(run, rules.AcceptedToRelax),
                            _ => 0,
                        }
                    ),
                ],
                LotsAtSeverity = isTightened && rules.TightenedToStop is not null ? state.LotsAtSeverity : 0,
                RejectedAtSeverity = isTightened && rules.RejectedToStop is not null ? state.RejectedAtSeverity : 0,
                Reason = null,
            };
        }
    }
}
