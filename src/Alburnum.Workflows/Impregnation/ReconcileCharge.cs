using Alburnum.Impregnation.Charging;
using Alburnum.Records.Charges;
using Alburnum.Records.Facts;

namespace Alburnum.Workflows.Impregnation;

/// <summary>A charge that was run, beside what was expected of it.</summary>
/// <param name="Expected">The charge, and what was expected of it.</param>
/// <param name="Account">What it took up.</param>
public sealed record ReconciledCharge(ExpectedCharge Expected, ChargeAccount Account)
{
    /// <summary>Where the product was expected at the strength before: with walls that take nothing, and with what is known of them or bounds. Empty where nobody asked.</summary>
    public IReadOnlyList<ProductInCharge> Product { get; init; } = [];

    /// <summary>The most that walls could add to the product of the solution kept, as a share of that, where more than it is gone from the tank beyond doubt; otherwise null.</summary>
    /// <remarks>Walls that take up all that comes by keep the product of the solution that went in, kept or given back; where nobody read how much went in, what was expected tells.</remarks>
    public double? MostByWalls
    {
        get
        {
            if (Account.SelectiveShare is not { } share || Product.Count == 0)
                return null;
            var expected = Product.Max(product => product.SelectiveShare);
            var net = Account.NetL.Value;
            var most = Account.GrossL is { } gross && net > 0 ? Math.Max(expected, gross.Value / net - 1) : expected;
            return share.Value - 2 * share.StandardUncertainty > most ? most : null;
        }
    }

    /// <summary>Whether more solution was kept than the timber has room for, beyond doubt.</summary>
    public bool IsBeyondRoom =>
        Account.NetLPerM3.Value - 2 * Account.NetLPerM3.StandardUncertainty > Expected.RoomLPerM3;

    /// <summary>Whether the uptake lies within two standard uncertainties of what was expected.</summary>
    public bool IsAsExpected
    {
        get
        {
            var expected = Expected.Question.UptakeLPerM3;
            return Math.Abs(Account.NetLPerM3.Value - expected.Value) <= 2 * expected.StandardUncertainty;
        }
    }
}

/// <summary>Works out from its readings what a charge took up, and holds it against what was expected.</summary>
public static class ReconcileCharge
{
    /// <summary>Reconciles it.</summary>
    /// <param name="order">The charge, with its readings.</param>
    /// <param name="facts">Permeabilities, schedules and incising patterns.</param>
    /// <param name="stop">Stops the work.</param>
    /// <exception cref="InputRefusedException">There are no readings, or nothing can be expected of the charge.</exception>
    public static ReconciledCharge Run(ChargeOrder order, FactLibrary facts, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(order);
        if (order.Readings is not { } readings)
            throw new InputRefusedException(
                new InputProblem(order.Treatment.File, 0, "", "readings", "nothing", "what was read at the vessel")
            );
        var expected = ExpectedCharge.Of(order, facts, stop);
        return new(expected, ChargeAccount.Of(readings))
        {
            Product = expected.Product(readings.StrengthBeforePercent, readings.TankBeforeL, stop),
        };
    }
}
