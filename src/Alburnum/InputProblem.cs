using System.Globalization;
using System.Text;

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
    /// <summary>Whole numbers from here on are written with an exponent.</summary>
    private const double Huge = 1e15;

    /// <summary>Most characters of what was found that are shown: one cell may hold a whole file.</summary>
    private const int MostFound = 300;

    /// <summary>Most characters of a row's or field's name that are shown.</summary>
    private const int MostOfName = 100;

    /// <summary>A number as a problem says it: with the decimals that it has, six at most.</summary>
    public static string Number(double value) =>
        value.ToString(Math.Abs(value) < Huge ? "0.######" : "0.######E+0", CultureInfo.InvariantCulture);

    /// <summary>
    /// A text with signs that would steer a terminal or turn the direction of writing shown as their numbers, for instance "\u001B".
    /// </summary>
    public static string Visible(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (!Enumerable.Range(0, text.Length).Any(i => Steers(text, i)))
            return text;
        var shown = new StringBuilder();
        for (var i = 0; i < text.Length; i++)
            shown = Steers(text, i)
                ? shown.Append(CultureInfo.InvariantCulture, $"\\u{(int)text[i]:X4}")
                : shown.Append(text[i]);
        return shown.ToString();
    }

    /// <summary>The problem as one sentence.</summary>
    public override string ToString()
    {
        var line = Line > 0 ? $", line {Line}" : "";
        var row = Row.Length > 0 ? $", row \"{Short(Row, MostOfName)}\"" : "";
        var field = Field.Length > 0 ? $", field {Short(Field, MostOfName)}" : "";
        var end = Expected.EndsWith('?') ? "" : ".";
        return Visible($"{File}{line}{row}{field}: found {Short(Found, MostFound)}, expected {Expected}{end}");
    }

    private static string Short(string text, int most) => text.Length <= most ? text : $"{text[..most]}…";

    // A sign beyond the first plane is two characters, of which each is told by the pair.
    private static bool Steers(string text, int i) =>
        CharUnicodeInfo.GetUnicodeCategory(text, i > 0 && char.IsSurrogatePair(text, i - 1) ? i - 1 : i)
            is UnicodeCategory.Control
                or UnicodeCategory.Format
                or UnicodeCategory.LineSeparator
                or UnicodeCategory.ParagraphSeparator;
}

/// <summary>A person's input was refused. Carries every problem found, so that all can be mended at once.</summary>
public sealed class InputRefusedException : Exception
{
    /// <summary>Most problems that are told; of the others, how many there are.</summary>
    private const int MostTold = 20;

    /// <summary>Refuses with all the problems found.</summary>
    public InputRefusedException(IReadOnlyList<InputProblem> problems)
        : base(Told(problems)) => Problems = problems;

    /// <summary>Refuses with one problem.</summary>
    public InputRefusedException(InputProblem problem)
        : this([problem]) { }

    /// <summary>What is wrong, in the order found. Never empty.</summary>
    public IReadOnlyList<InputProblem> Problems { get; }

    private static string Told(IReadOnlyList<InputProblem> problems)
    {
        var told = string.Join("\n", problems.Take(MostTold));
        return problems.Count <= MostTold
            ? told
            : string.Create(CultureInfo.InvariantCulture, $"{told}\n… and {problems.Count - MostTold} more.");
    }
}
