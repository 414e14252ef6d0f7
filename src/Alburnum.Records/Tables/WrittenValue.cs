using System.Globalization;
using System.Text.RegularExpressions;
using Alburnum.Acceptance;
using Alburnum.Acceptance.Variables;
using Alburnum.Facts;
using Alburnum.Records.Assays;

namespace Alburnum.Records.Tables;

/// <summary>
/// A measured value as a laboratory writes it, in an option or a table: "14.2", "14.2 ± 0.4 (k=2)", "&lt; 0.5" below a detection limit,
/// "&gt; 25" or "&gt;= 25" as far as could be read.
/// </summary>
public sealed partial record WrittenValue
{
    /// <summary>How an assay is written, for messages.</summary>
    public const string ExpectedAssay =
        "kg/m³ with its uncertainty and the coverage factor k that the laboratory states, such as \"14.2 ± 0.4 (k=2)\" (k=1 where ± is the standard uncertainty), or \"< 0.5\" below detection";

    private WrittenValue(double value, Censoring censoring, double? standardUncertainty) =>
        (Value, Censoring, StandardUncertainty) = (value, censoring, standardUncertainty);

    /// <summary>The value, or where it is cut off.</summary>
    public double Value { get; }

    /// <summary>Whether it is cut off.</summary>
    public Censoring Censoring { get; }

    /// <summary>Its standard uncertainty; null where none is written.</summary>
    public double? StandardUncertainty { get; }

    /// <summary>Reads a value; null where the text is none.</summary>
    public static WrittenValue? Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var match = Written().Match(text.Trim());
        if (!match.Success || StatedUncertainty.Fault(match) is not null)
            return null;
        var censoring = match.Groups["cut"].Value switch
        {
            "" => Censoring.Exact,
            "<" => Censoring.AtMost,
            _ => Censoring.AtLeast,
        };
        var value = Number(match.Groups["value"]);
        var uncertainty = StatedUncertainty.Of(match, value);
        return censoring == Censoring.Exact || uncertainty is null ? new(value, censoring, uncertainty) : null;
    }

    /// <summary>Reads an assay: a value from 0 with its standard uncertainty, or a detection limit; null where the text is neither.</summary>
    /// <param name="text">As written, kg/m³.</param>
    /// <param name="sample">Number of the sample; empty where none is given.</param>
    public static Assay? ReadAssay(string text, string sample = "") =>
        Read(text) switch
        {
            { } written
                when Math.Max(written.Value, written.StandardUncertainty ?? 0) > Ranges.MeasuredRetentionKgPerM3.High =>
                null,
            { Censoring: Censoring.Exact, StandardUncertainty: { } u, Value: var value } => new MeasuredAssay(
                new(value, u),
                sample
            ),
            { Censoring: Censoring.AtMost, Value: > 0 and var limit } => new BelowDetection(limit, sample),
            _ => null,
        };

    private static double Number(Group digits) => double.Parse(digits.Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(
        @"^(?<cut><|>=?)?\s*(?<value>[0-9]{1,9}(\.[0-9]{1,17})?)" + StatedUncertainty.Pattern + @"(\s*kg/m(3|³))?$",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Written();
}
