using System.Globalization;

namespace Alburnum;

/// <summary>One thing wrong with what a person gave: where it stands, what was found and what was expected.</summary>
/// <param name="File">File (or command option) it was read from.</param>
/// <param name="Line">Line in the file, from 1; 0 where a line has no meaning.</param>
/// <param name="Row">Key of the row or entry, empty where there is none.</param>
/// <param name="Field">Field, column or option, empty where the whole file is meant.</param>
/// <param name="Found">What stands there.</param>
/// <param name="Expected">What should stand there.</param>
public sealed record InputProblem(string File, int Line, string Row, string Field, string Found, string Expected)
{
    /// <summary>A number as a problem says it: with the decimals that it has, six at most.</summary>
    public static string Number(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);

    /// <summary>The problem as one sentence.</summary>
    public override string ToString()
    {
        var line = Line > 0 ? $", line {Line}" : "";
        var row = Row.Length > 0 ? $", row \"{Row}\"" : "";
        var field = Field.Length > 0 ? $", field {Field}" : "";
        var end = Expected.EndsWith('?') ? "" : ".";
        return $"{File}{line}{row}{field}: found {Found}, expected {Expected}{end}";
    }
}

/// <summary>A person's input was refused. Carries every problem found, so that all can be mended at once.</summary>
public sealed class InputRefusedException : Exception
{
    /// <summary>Refuses with all the problems found.</summary>
    public InputRefusedException(IReadOnlyList<InputProblem> problems)
        : base(string.Join("\n", problems)) => Problems = problems;

    /// <summary>Refuses with one problem.</summary>
    public InputRefusedException(InputProblem problem)
        : this([problem]) { }

    /// <summary>What is wrong, in the order found. Never empty.</summary>
    public IReadOnlyList<InputProblem> Problems { get; }
}
