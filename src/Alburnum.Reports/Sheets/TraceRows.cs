using Alburnum.Reports.Documents;

namespace Alburnum.Reports.Sheets;

/// <summary>Rows of the trace as a sheet shows them: first those that apply and the nearest others, the rest when they are asked for.</summary>
/// <param name="Near">Rows shown at once.</param>
/// <param name="Far">Rows that nearly applied, beyond those.</param>
public sealed record TraceRows(IReadOnlyList<TraceRowDocument> Near, IReadOnlyList<TraceRowDocument> Far)
{
    private const int NearMisses = 2;

    /// <summary>Divides the rows of a trace.</summary>
    public static TraceRows Of(IReadOnlyList<TraceRowDocument> trace)
    {
        var missed = trace.Where(row => !row.Applies).ToList();
        return new([.. trace.Where(row => row.Applies), .. missed.Take(NearMisses)], [.. missed.Skip(NearMisses)]);
    }
}
