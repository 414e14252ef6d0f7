using Alburnum.Acceptance;
using Alburnum.Acceptance.History;
using MathNet.Numerics.Distributions;

namespace Alburnum.Impregnation.Prediction;

/// <summary>What was foretold of one charge from the charges before it, and what was measured.</summary>
/// <param name="Charge">The charge.</param>
/// <param name="Measured">Mean of what was measured of it, in the unit of the record.</param>
/// <param name="Foretold">A twentieth of forecasts below, half below, a twentieth above.</param>
/// <param name="Deviation">How far the measured mean lies from what was foretold, as standard deviations of a normal distribution.</param>
public sealed record ChargeForecast(string Charge, double Measured, Spread Foretold, double Deviation)
{
    /// <summary>True where the measured mean lies within the interval stated.</summary>
    public bool Held => Measured >= Foretold.Low - Tiny && Measured <= Foretold.High + Tiny;

    private const double Tiny = 1e-9;

    /// <summary>Holds what was measured against what was drawn.</summary>
    /// <param name="charge">The charge.</param>
    /// <param name="measured">Mean of what was measured.</param>
    /// <param name="drawn">Means drawn from the forecast; sorted here. Nineteen or more.</param>
    internal static ChargeForecast Of(string charge, double measured, double[] drawn)
    {
        Array.Sort(drawn);
        // Of n draws and the truth each rank is as likely: the interval between these two holds nine of ten.
        var tail = (int)Math.Round((1 - ForecastRecord.Stated) / 2 * (drawn.Length + 1));
        int below = 0,
            same = 0;
        foreach (var value in drawn)
            if (Math.Abs(value - measured) <= Tiny)
                same++;
            else if (value < measured)
                below++;
        return new(
            charge,
            measured,
            new(drawn[tail - 1], drawn[drawn.Length / 2], drawn[drawn.Length - tail]),
            Normal.InvCDF(0, 1, (below + same / 2.0 + 0.5) / (drawn.Length + 1))
        );
    }
}

/// <summary>From which charge on a plant's charges lie apart from what those before them foretell.</summary>
/// <param name="From">The charge with which it seems to have begun.</param>
/// <param name="SignalledAt">The charge at which the cumulative sum passed its interval.</param>
/// <param name="IsUp">True where more was measured than foretold.</param>
public sealed record Drift(string From, string SignalledAt, bool IsUp);

/// <summary>How a plant's charges came out beside what was foretold of each from those before it alone.</summary>
/// <param name="Charges">Each charge but the first, oldest first.</param>
public sealed record ForecastRecord(IReadOnlyList<ChargeForecast> Charges)
{
    /// <summary>Share of forecasts whose interval should hold.</summary>
    public const double Stated = 0.9;

    /// <summary>Confidence of <see cref="HeldShare"/>.</summary>
    public const double Confidence = 0.95;

    /// <summary>The chart of the deviations.</summary>
    public static CusumChart Chart => CusumChart.Usual;

    /// <summary>Forecasts whose interval held.</summary>
    public int Held => Charges.Count(charge => charge.Held);

    /// <summary>Between what the share of forecasts that hold lies in the long run, from the count alone (Clopper and Pearson 1934).</summary>
    public (double Low, double High) HeldShare
    {
        get
        {
            var (tail, count) = ((1 + Confidence) / 2, Charges.Count);
            return (ClopperPearson.Lower(Held, count, tail), 1 - ClopperPearson.Lower(count - Held, count, tail));
        }
    }

    /// <summary>True where the count cannot be told from what is stated.</summary>
    public bool IsAsStated => HeldShare is var (low, high) && low <= Stated && high >= Stated;

    /// <summary>Each drift, oldest first. The chart begins again after one; what it then signals to the same side is the same drift, not yet learned.</summary>
    public IReadOnlyList<Drift> Drifts
    {
        get
        {
            List<Drift> drifts = [];
            double up = 0,
                down = 0;
            string fromUp = "",
                fromDown = "";
            foreach (var charge in Charges)
            {
                if (up <= 0)
                    fromUp = charge.Charge;
                if (down <= 0)
                    fromDown = charge.Charge;
                (up, down) = Chart.Next(up, down, charge.Deviation);
                if (Math.Max(up, down) <= Chart.Interval)
                    continue;
                var isUp = up > down;
                if (drifts.Count == 0 || drifts[^1].IsUp != isUp)
                    drifts.Add(new(isUp ? fromUp : fromDown, charge.Charge, isUp));
                (up, down) = (0, 0);
            }
            return drifts;
        }
    }
}
