using Alburnum.Impregnation;

namespace Alburnum.Flow.Equations;

/// <summary>How the liquid's and the air's passage depend on how full the voids are.</summary>
/// <remarks>
/// Power laws of the effective saturation Se = S/(1 − Sgr): liquid Seⁿ, air (1 − Se)ᵐ. With both exponents 1 and air far
/// thinner than the liquid the front is sharp, which is what the closed forms assume.
/// </remarks>
public sealed record RelativePermeability
{
    /// <summary>Checks exponents and the trapped share.</summary>
    /// <param name="liquidExponent">Exponent of the liquid, 1 to 6.</param>
    /// <param name="airExponent">Exponent of the air, 1 to 6.</param>
    /// <param name="trappedAirShare">Share of the voids in which air no longer moves, 0 to 0.5.</param>
    public RelativePermeability(int liquidExponent, int airExponent, double trappedAirShare)
    {
        LiquidExponent = Require.InRange(liquidExponent, 1, 6, "");
        AirExponent = Require.InRange(airExponent, 1, 6, "");
        TrappedAirShare = Require.InRange(trappedAirShare, 0, 0.5, "(share)");
    }

    /// <summary>What predictions use: a front spread over some cells, a twentieth of the voids holding trapped air. Assumed, not measured.</summary>
    public static RelativePermeability Usual { get; } = new(2, 2, AssumedVoids.TrappedAirShare);

    /// <summary>Exponent of the liquid.</summary>
    public int LiquidExponent { get; }

    /// <summary>Exponent of the air.</summary>
    public int AirExponent { get; }

    /// <summary>Share of the voids in which air no longer moves.</summary>
    public double TrappedAirShare { get; }

    /// <summary>Both relative permeabilities, 0 to 1, at a saturation of 0 to 1, and their slopes by saturation.</summary>
    internal (double Liquid, double LiquidSlope, double Air, double AirSlope) At(double saturation)
    {
        var share = 1 / (1 - TrappedAirShare);
        var effective = Effective(saturation);
        // Beyond the trapped share nothing changes any more.
        var slope = effective == 1 && TrappedAirShare > 0 ? 0 : share;
        var liquid = Power(effective, LiquidExponent - 1);
        var air = Power(1 - effective, AirExponent - 1);
        return (liquid * effective, slope * LiquidExponent * liquid, air * (1 - effective), -slope * AirExponent * air);
    }

    private double Effective(double saturation) => Math.Clamp(saturation / (1 - TrappedAirShare), 0, 1);

    private static double Power(double value, int exponent)
    {
        var power = 1.0;
        for (var i = 0; i < exponent; i++)
            power *= value;
        return power;
    }
}
