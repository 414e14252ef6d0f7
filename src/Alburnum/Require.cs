using System.Numerics;
using System.Runtime.CompilerServices;
using Alburnum.Facts;

namespace Alburnum;

/// <summary>Checks on a caller's arguments, in one place. Each throws with the unit in its message.</summary>
public static class Require
{
    /// <summary>Refuses a number that is not finite or lies outside a closed range.</summary>
    /// <param name="value">The number.</param>
    /// <param name="low">Lowest value allowed, inclusive.</param>
    /// <param name="high">Highest value allowed, inclusive.</param>
    /// <param name="unit">Unit for the message, for instance "mm".</param>
    /// <param name="name">Name of the argument.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside the range.</exception>
    public static T InRange<T>(
        T value,
        T low,
        T high,
        string unit,
        [CallerArgumentExpression(nameof(value))] string name = ""
    )
        where T : INumber<T>
    {
        // Written so that NaN fails too.
        if (!(value >= low && value <= high))
            throw new ArgumentOutOfRangeException(name, value, $"{name} must be {low} to {high} {unit}.");
        return value;
    }

    /// <summary>Refuses a number outside the range of what a person may write.</summary>
    /// <param name="value">The number.</param>
    /// <param name="range">The range, with its unit.</param>
    /// <param name="name">Name of the argument.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside the range.</exception>
    public static double Within(
        double value,
        NumberRange range,
        [CallerArgumentExpression(nameof(value))] string name = ""
    )
    {
        ArgumentNullException.ThrowIfNull(range);
        return InRange(value, range.Low, range.High, range.Unit, name);
    }

    /// <summary>The same for a share, of which a person writes the per cent.</summary>
    /// <param name="share">The share, 0 to 1.</param>
    /// <param name="percent">The range, in per cent.</param>
    /// <param name="name">Name of the argument.</param>
    /// <exception cref="ArgumentOutOfRangeException">The share lies outside the range.</exception>
    public static double Share(
        double share,
        NumberRange percent,
        [CallerArgumentExpression(nameof(share))] string name = ""
    )
    {
        ArgumentNullException.ThrowIfNull(percent);
        return InRange(share, percent.Low / 100, percent.High / 100, "(share)", name);
    }

    /// <summary>Refuses a number that is not finite and above 0.</summary>
    /// <param name="value">The number.</param>
    /// <param name="unit">Unit for the message.</param>
    /// <param name="name">Name of the argument.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is 0 or less, infinite or not a number.</exception>
    public static double Positive(double value, string unit, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value > 0 && double.IsFinite(value)))
            throw new ArgumentOutOfRangeException(name, value, $"{name} must be above 0 {unit}.");
        return value;
    }
}
