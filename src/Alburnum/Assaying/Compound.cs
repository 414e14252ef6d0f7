using System.Globalization;
using System.Text.RegularExpressions;

namespace Alburnum.Assaying;

/// <summary>
/// A substance by its chemical formula, such as Cu, H3BO3 or Na2B8O13·4H2O; groups with a symbol of their own may stand in it like elements. Or a mixture without
/// one, which counts only as itself.
/// </summary>
public sealed partial record Compound
{
    private Compound(string formula) => (Formula, Name) = (formula, formula);

    /// <summary>The formula as it was written; the name of a mixture without one.</summary>
    public string Formula { get; }

    /// <summary>Whether it has no formula.</summary>
    public bool IsMixture { get; private init; }

    /// <summary>The name that it was asked by; the formula where it was asked by that. Two names of one formula are one substance.</summary>
    public string Name { get; private init; }

    /// <summary>How many atoms of each element it holds; none of a mixture.</summary>
    internal IReadOnlyDictionary<string, int> Atoms
    {
        get
        {
            var atoms = new Dictionary<string, int>(StringComparer.Ordinal);
            if (IsMixture)
                return atoms;
            foreach (Capture part in Parts().Match(Formula).Groups["part"].Captures)
            {
                var times = Times().Match(part.Value).Value;
                foreach (Match element in Elements().Matches(part.Value))
                    atoms[element.Groups["name"].Value] =
                        atoms.GetValueOrDefault(element.Groups["name"].Value)
                        + Count(times) * Count(element.Groups["count"].Value);
            }
            return atoms;
        }
    }

    /// <summary>Reads a formula without brackets; water of crystallisation stands behind a dot. Null where the text is none.</summary>
    /// <param name="formula">The formula.</param>
    internal static Compound? Parse(string formula) => Parts().IsMatch(formula) ? new(formula) : null;

    /// <summary>A mixture without a formula, by its name.</summary>
    internal static Compound Mixture(string name) => new(name) { IsMixture = true };

    /// <summary>The same substance by a name.</summary>
    internal Compound Called(string name) => this with { Name = name };

    /// <summary>Whether the formula is the same.</summary>
    public bool Equals(Compound? other) => other is not null && Formula == other.Formula;

    /// <inheritdoc/>
    public override int GetHashCode() => StringComparer.Ordinal.GetHashCode(Formula);

    private static int Count(string digits) =>
        digits.Length == 0 ? 1 : int.Parse(digits, NumberStyles.None, CultureInfo.InvariantCulture);

    [GeneratedRegex(
        @"^(?<part>([A-Z][a-z]{0,2}[0-9]{0,3})+)([·.](?<part>[0-9]{0,3}([A-Z][a-z]{0,2}[0-9]{0,3})+))*$",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Parts();

    [GeneratedRegex(@"^[0-9]*", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Times();

    [GeneratedRegex(
        @"(?<name>[A-Z][a-z]{0,2})(?<count>[0-9]*)",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Elements();
}
