using Alburnum.Facts;
using Alburnum.Impregnation.Fixing;
using Alburnum.Records.Facts;
using Alburnum.Requirements;

namespace Alburnum.Workflows.Handling;

/// <summary>When a preservative has fixed.</summary>
public sealed record FixationRequest
{
    /// <summary>What the timber is treated with.</summary>
    public required Preservative Preservative { get; init; }

    /// <summary>Strength of the solution, % by mass; null for each strength that was measured.</summary>
    public double? StrengthPercent { get; init; }

    /// <summary>Temperature of the wood while it fixes, °C.</summary>
    public required double Celsius { get; init; }

    /// <summary>Hours since treatment; null where only the hours to shares are asked for.</summary>
    public double? Hours { get; init; }
}

/// <summary>How fixation goes at one strength.</summary>
/// <param name="StrengthPercent">Strength of the solution, % by mass.</param>
/// <param name="HoursTo">Hours until each of <see cref="Fixation.Shares"/> has fixed, in their order.</param>
/// <param name="ShareAfter">Share fixed after the hours asked for, 0 to 1; null while the first zone lasts, and where no hours were asked for.</param>
public sealed record FixationAtStrength(double StrengthPercent, IReadOnlyList<double> HoursTo, double? ShareAfter);

/// <summary>When a preservative has fixed, and what else is known of it.</summary>
/// <param name="Asked">What was asked.</param>
/// <param name="Law">The law that answered; null where no rate is known of the preservative.</param>
/// <param name="Strengths">How it goes, strength by strength; empty where there is no law.</param>
/// <param name="Known">What else is known of its fixation.</param>
public sealed record Fixation(
    FixationRequest Asked,
    FixationLaw? Law,
    IReadOnlyList<FixationAtStrength> Strengths,
    HandlingAnswer Known
)
{
    /// <summary>Shares that hours are given to.</summary>
    public static IReadOnlyList<double> Shares { get; } = [0.9, 0.95, 0.99];
}

/// <summary>Tells when a preservative has fixed, by strength and temperature.</summary>
public static class AskFixation
{
    private const string Subject = "fixation";

    /// <summary>Answers.</summary>
    /// <param name="request">What is asked.</param>
    /// <param name="facts">Laws of fixation, and what else is known.</param>
    /// <exception cref="InputRefusedException">Strength or temperature lies outside what was measured.</exception>
    public static Fixation Run(FixationRequest request, FactLibrary facts)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(facts);
        var known = AskHandling.Run(
            new(facts.Handling.Subjects.Single(subject => subject.Key == Subject), request.Preservative, [], ""),
            facts
        );
        if (facts.Fixation.FirstOrDefault(each => each.Preservative == request.Preservative.Key) is not { } law)
            return new(request, null, [], known);
        Measured(FixationFields.Strength, request.StrengthPercent, law.StrengthPercent);
        Measured(FixationFields.Temperature, request.Celsius, law.Celsius);
        IEnumerable<double> strengths = request.StrengthPercent is { } given
            ? [given]
            : law.Rates.Select(rate => rate.StrengthPercent);
        return new(
            request,
            law,
            [
                .. strengths.Select(strength => new FixationAtStrength(
                    strength,
                    [.. Fixation.Shares.Select(share => law.HoursTo(strength, request.Celsius, share))],
                    request.Hours is { } hours ? law.ShareAfter(strength, request.Celsius, hours) : null
                )),
            ],
            known
        );
    }

    private static void Measured(AskedField field, double? asked, NumberRange measured)
    {
        if (asked is { } given && !measured.Holds(given))
            throw field.Refused(
                file: null,
                InputProblem.Number(given),
                $"{measured.InWords}, where fixation was measured"
            );
    }
}
