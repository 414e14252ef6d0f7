using System.Globalization;
using System.Text.RegularExpressions;
using Alburnum.Assaying;
using Alburnum.Facts;

namespace Alburnum.Records.Facts;

/// <summary>Reads <c>substances.yaml</c>: atomic masses, other names of substances, and what products hold of them.</summary>
internal static partial class SubstanceFile
{
    private static readonly NumberRange AtomicMass = NumberRange.Within(1, 300, "");

    internal static Substances Read(FactRow root)
    {
        var masses = new Dictionary<string, Fact<double>>(StringComparer.Ordinal);
        foreach (var row in root.Rows("elements"))
            if (!masses.TryAdd(row.Text("symbol"), new(row.Number("mass", AtomicMass), row.Provenance())))
                row.Refuse("symbol", row.Text("symbol"), "a unique symbol");
        var elements = new Substances(masses, new Dictionary<string, string>(StringComparer.Ordinal), []);
        return new(masses, Names(root, elements), [.. root.Rows("products").Select(row => Product(row, elements))]);
    }

    /// <summary>Parts of a product as they are written, such as "CuO 18.5 %"; null where a text is none, or together they are more than the whole.</summary>
    internal static IReadOnlyList<ProductPart>? Parts(IEnumerable<string> texts, Substances substances)
    {
        var parts = new List<ProductPart>();
        foreach (var text in texts)
        {
            var match = Part().Match(text.Trim());
            if (!match.Success || substances.Find(match.Groups["substance"].Value) is not { } compound)
                return null;
            var percent = double.Parse(match.Groups["percent"].Value, CultureInfo.InvariantCulture);
            if (percent <= 0 || parts.Exists(part => part.Compound == compound))
                return null;
            parts.Add(new(compound, percent / 100));
        }
        // A hair above the whole is rounding.
        return parts.Count > 0 && parts.Sum(part => part.Share) <= 1 + 1e-9 ? parts : null;
    }

    private static Dictionary<string, string> Names(FactRow root, Substances elements)
    {
        var names = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        foreach (var row in root.Rows("names"))
        {
            var (name, formula) = (row.Text("name"), row.Text("formula"));
            _ = row.Provenance();
            if (elements.Find(formula) is null)
                row.Refuse("formula", formula, "a formula of elements given above");
            else if (!names.TryAdd(name, formula))
                row.Refuse("name", name, "a unique name");
        }
        return names;
    }

    private static ProductFormula Product(FactRow row, Substances elements)
    {
        var texts = row.Texts("parts");
        var parts = Parts(texts, elements);
        if (parts is null)
            row.Refuse("parts", string.Join(", ", texts), "substances with their shares, such as \"CuO 18.5 %\"");
        return new(row.Text("key"), row.Text("name"), parts ?? [], row.Provenance());
    }

    [GeneratedRegex(
        @"^(?<substance>.{1,60}?)\s+(?<percent>[0-9]{1,3}(\.[0-9]{1,6})?)\s*%$",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Part();
}
