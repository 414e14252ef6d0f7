namespace Alburnum.Acceptance.History;

/// <summary>One mark of a run chart: one charge, or some neighbours taken together.</summary>
/// <param name="Charges">Charges taken together.</param>
/// <param name="Mean">Their mean.</param>
/// <param name="Least">Their least value.</param>
/// <param name="Greatest">Their greatest value.</param>
/// <param name="Signalled">How many of them gave a signal.</param>
public readonly record struct RunMark(long Charges, double Mean, double Least, double Greatest, long Signalled)
{
    /// <summary>Two neighbouring marks as one.</summary>
    public RunMark With(RunMark next) =>
        new(
            Charges + next.Charges,
            (Mean * Charges + next.Mean * next.Charges) / (Charges + next.Charges),
            Math.Min(Least, next.Least),
            Math.Max(Greatest, next.Greatest),
            Signalled + next.Signalled
        );
}

/// <summary>Draws any number of charges with a bounded number of marks: whenever there are too many, neighbours are joined.</summary>
/// <remarks>Grows as charges come; the only thing here that changes in place, so that a million charges cost a few hundred marks.</remarks>
public sealed class RunChart
{
    private readonly List<RunMark> _marks = [];
    private readonly int _marksMax;
    private long _chargesPerMark = 1;

    /// <summary>An empty chart.</summary>
    /// <param name="marksMax">Most marks kept, an even number from 2 to 100 000.</param>
    public RunChart(int marksMax = 400) => _marksMax = Require.InRange(marksMax, 2, 100_000, "marks") / 2 * 2;

    /// <summary>The marks, oldest first; the last may hold fewer charges than the others.</summary>
    public IReadOnlyList<RunMark> Marks => _marks;

    /// <summary>Adds one charge.</summary>
    /// <param name="value">Its value.</param>
    /// <param name="isSignalled">True where it gave a signal.</param>
    public void Add(double value, bool isSignalled)
    {
        var mark = new RunMark(1, value, value, value, isSignalled ? 1 : 0);
        if (_marks.Count > 0 && _marks[^1].Charges < _chargesPerMark)
        {
            _marks[^1] = _marks[^1].With(mark);
            return;
        }
        if (_marks.Count == _marksMax)
        {
            for (var i = 0; i < _marksMax / 2; i++)
                _marks[i] = _marks[2 * i].With(_marks[2 * i + 1]);
            _marks.RemoveRange(_marksMax / 2, _marksMax / 2);
            _chargesPerMark *= 2;
        }
        _marks.Add(mark);
    }
}
