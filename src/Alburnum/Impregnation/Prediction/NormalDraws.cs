namespace Alburnum.Impregnation.Prediction;

/// <summary>Standard normal numbers from a seed (polar method of Marsaglia), so that an answer can be had again.</summary>
internal sealed class NormalDraws(int seed)
{
    private readonly Random _random = new(seed);
    private double _spare;
    private bool _hasSpare;

    public double Next()
    {
        if (_hasSpare)
        {
            _hasSpare = false;
            return _spare;
        }
        double x,
            y,
            s;
        do
        {
            x = 2 * _random.NextDouble() - 1;
            y = 2 * _random.NextDouble() - 1;
            s = x * x + y * y;
        } while (s is >= 1 or 0);
        var scale = Math.Sqrt(-2 * Math.Log(s) / s);
        _spare = y * scale;
        _hasSpare = true;
        return x * scale;
    }
}
