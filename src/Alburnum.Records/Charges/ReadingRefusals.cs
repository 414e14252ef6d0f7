using Alburnum.Impregnation.Charging;
using Alburnum.Records.Facts;

namespace Alburnum.Records.Charges;

/// <summary>Refuses readings of a charge that contradict each other, by the names of their fields.</summary>
internal static class ReadingRefusals
{
    /// <summary>Refuses one contradiction.</summary>
    /// <param name="row">The readings, as they are written.</param>
    /// <param name="fault">The contradiction.</param>
    public static void Refuse(this FactRow row, ChargeFault fault)
    {
        var (peak, free) = (ChargeFields.TankAtPeak.Key, ChargeFields.VesselFree.Key);
        var (before, after) = (ChargeFields.WeightBefore.Key, ChargeFields.WeightAfter.Key);
        var (field, found, expected) = fault switch
        {
            TankGained tank => (
                ChargeFields.TankAfter.Key,
                InputProblem.Number(tank.AfterL),
                FormattableString.Invariant(
                    $"at most the {tank.BeforeL:0.#} L before: timber does not give solution to the tank"
                )
            ),
            TankRoseToPeak tank => (peak, InputProblem.Number(tank.PeakL), "at most what was in the tank before"),
            VesselGained tank => (
                peak,
                InputProblem.Number(tank.PeakL),
                FormattableString.Invariant(
                    $"at most {tank.MostL:0.#} L: the rest of what was in the tank before fills the vessel, and the timber gives none while it is pressed in"
                )
            ),
            TimberTooLight timber => (
                before,
                InputProblem.Number(timber.BeforeKg),
                FormattableString.Invariant(
                    $"at least the {timber.LeastKg:0} kg that so much of the lightest wood weighs"
                )
            ),
            TankGainedProduct product => (
                ChargeFields.StrengthAfter.Key,
                InputProblem.Number(product.AfterPercent),
                FormattableString.Invariant(
                    $"at most {product.MostPercent:0.###} %, which it would be if the timber had taken up water alone: it gives no product to the tank"
                )
            ),
            TookMoreThanTimber took => (
                took.Read switch
                {
                    UptakeReading.TankAfter => ChargeFields.TankAfter.Key,
                    UptakeReading.TankAtPeak => peak,
                    UptakeReading.WeightAfter => after,
                    _ => throw new ArgumentOutOfRangeException(nameof(fault), took.Read, "Not a reading."),
                },
                FormattableString.Invariant($"{took.Litres:0} L taken up"),
                FormattableString.Invariant($"less than the {1000 * took.VolumeM3:0} L that the timber itself fills")
            ),
            GrossHalfRead half => (
                half.IsPeakMissing ? peak : free,
                "nothing",
                $"{peak} and {free}, or neither: only both give the gross uptake"
            ),
            WeighedOnce once => (
                once.IsBeforeMissing ? before : after,
                "nothing",
                $"{before} and {after}, or neither: only both give the uptake"
            ),
            TimberLost timber => (
                after,
                InputProblem.Number(timber.AfterKg),
                FormattableString.Invariant($"at least the {timber.BeforeKg:0.#} kg before")
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(fault), fault, "Not a fault of readings."),
        };
        row.Refuse(field, found, expected);
    }
}
