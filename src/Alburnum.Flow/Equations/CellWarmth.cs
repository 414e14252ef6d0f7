namespace Alburnum.Flow.Equations;

/// <summary>What the temperature of a cell does to what flows in it.</summary>
/// <param name="FlowsTimes">How many times as easily liquid flows as at the temperature that its viscosity is given for.</param>
/// <param name="AirTimes">Air that the cell holds, over that which it would hold at the first temperature and the same pressure.</param>
internal readonly record struct CellWarmth(double FlowsTimes, double AirTimes)
{
    /// <summary>Where nothing is warmer or colder than anything else.</summary>
    public static CellWarmth Even => new(1, 1);
}
