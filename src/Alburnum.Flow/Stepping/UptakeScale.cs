using Alburnum.Impregnation;

namespace Alburnum.Flow.Stepping;

/// <summary>How much uptake there will be, against which the error of a step is weighed: a share of the voids.</summary>
/// <remarks>
/// A front goes in as the root of pressure times time under liquid, which the schedule tells: the errors of its first moments are forgotten as it
/// goes on. A guess, good enough to share out the steps; never below a thousandth of the voids.
/// </remarks>
internal sealed class UptakeScale
{
    private const double LeastShare = 1e-3;
    private readonly double _whole;
    private double _before;
    private double _most;

    /// <summary>Weighs by a schedule.</summary>
    public UptakeScale(Schedule schedule) =>
        _whole = schedule.Stages.Sum(stage => PressureTime(stage, 60 * stage.Minutes));

    /// <summary>What the uptake will come to, as a share of the voids.</summary>
    /// <param name="stage">The stage.</param>
    /// <param name="seconds">How far into it, s.</param>
    /// <param name="gained">What has come in so far, as a share of the voids.</param>
    public double Share(Stage stage, double seconds, double gained)
    {
        _most = Math.Max(_most, gained);
        var passed = _before + PressureTime(stage, seconds);
        var growth = stage.Contact == Contact.Liquid && passed > 0 ? Math.Sqrt(_whole / passed) : 1;
        return Math.Clamp(_most * growth, LeastShare, 1);
    }

    /// <summary>Puts a stage behind.</summary>
    public void Pass(Stage stage) => _before += PressureTime(stage, 60 * stage.Minutes);

    private static double PressureTime(Stage stage, double seconds) =>
        stage.Contact == Contact.Liquid ? seconds * (stage.FromKPa + stage.KPaAt(seconds / 60)) / 2 : 0;
}
