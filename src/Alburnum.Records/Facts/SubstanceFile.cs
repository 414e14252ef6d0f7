using System.Globalization;
using System.Text.RegularExpressions;
using Alburnum.Assaying;
using Alburnum.Facts;

namespace Alburnum.Records.Facts;

/// <summary>Reads <c>substances.yaml</c>: atomic masses, substances by their names, and what products hold of them.</summary>
internal static partial class SubstanceFile
{
    private const string Number = @"[0-9]{1,3}(\.[0-9]{1,6})?";

    private static readonly NumberRange AtomicMass = NumberRange.Within(1, 300, "");

    internal static Substances Read(FactRow root)
    {
        var masses = new Dictionary<string, Fact<double>>(StringComparer.Ordinal);
        foreach (var row in root.Rows("elements"))
            Add(masses, row, row.Number("mass", AtomicMass));
        var elements = new Substances(masses, [], [], []);
        foreach (var row in root.Rows("groups"))
            if (Known(row, elements) is { } compound)
                Add(masses, row, elements.MolarMass(compound)!.Value);
        var taken = new HashSet<string>(StringComparer.Ordinal);
        List<NamedSubstance> named = [.. root.Rows("substances").Select(row => Named(row, elements, taken))];
        named.RemoveAll(each => each.Names.Count == 0);
        var openRows = root.Rows("openNames");
        List<OpenSubstanceName> open = [.. openRows.Select(row => Open(row, taken))];
        var substances = new Substances(masses, named, open, []);
        foreach (var row in openRows)
        foreach (var name in row.Texts("mayBe").Where(name => substances.Find(name) is null))
            row.Refuse("mayBe", name, "substances given above");
        return new(masses, named, open, [.. root.Rows("products").Select(row => Product(row, substances))]);
    }

    /// <summary>Parts of a product as they are written, such as "CuO 18.5 %", or with limits "CuO 66.7 % (62 to 71 %)"; null where a text is none, or together they are more than the whole.</summary>
    internal static IReadOnlyList<ProductPart>? Parts(IEnumerable<string> texts, Substances substances)
    {
        var parts = new List<ProductPart>();
        foreach (var text in texts)
        {
            var match = Part().Match(text.Trim());
            if (!match.Success || substances.Find(match.Groups["substance"].Value) is not { } compound)
                return null;
            var share = Share(match.Groups["percent"]);
            if (share <= 0 || parts.Exists(part => part.Compound == compound))
                return null;
            parts.Add(
                match.Groups["least"].Success
                    ? new(compound, share) { Least = Share(match.Groups["least"]), Most = Share(match.Groups["most"]) }
                    : new(compound, share)
            );
        }
        // A hair above the whole is rounding.
        return
            parts.Count > 0
            && parts.Sum(part => part.Share) <= 1 + 1e-9
            && parts.TrueForAll(part => part.Least <= part.Share && part.Share <= part.Most)
            ? parts
            : null;
    }

    private static double Share(Capture percent) => double.Parse(percent.Value, CultureInfo.InvariantCulture) / 100;

    private static void Add(Dictionary<string, Fact<double>> masses, FactRow row, double mass)
    {
        if (!masses.TryAdd(row.Text("symbol"), new(mass, row.Provenance())))
            row.Refuse("symbol", row.Text("symbol"), "a unique symbol");
    }

    private static Compound? Known(FactRow row, Substances elements)
    {
        var formula = row.Text("formula");
        var compound = elements.Find(formula);
        if (compound is null)
            row.Refuse("formula", formula, "a formula of elements and groups given above");
        return compound;
    }

    private static NamedSubstance Named(FactRow row, Substances elements, HashSet<string> taken)
    {
        _ = row.Provenance();
        var names = Names(row, taken);
        return new(names, row.Has("formula") ? Known(row, elements)?.Formula : null);
    }

    private static OpenSubstanceName Open(FactRow row, HashSet<string> taken) =>
        new(Names(row, taken), row.Texts("mayBe"), row.Text("decides"));

    private static IReadOnlyList<string> Names(FactRow row, HashSet<string> taken)
    {
        var names = new List<string>();
        foreach (var name in row.Texts("alsoCalled").Prepend(row.Text("name")))
            if (taken.Add(NameKey.Of(name)))
                names.Add(name);
            else
                row.Refuse("name", name, "a unique name, however it is written");
        return names;
    }

    private static ProductFormula Product(FactRow row, Substances substances)
    {
        var texts = row.Texts("parts");
        var parts = Parts(texts, substances);
        if (parts is null)
            row.Refuse("parts", string.Join(", ", texts), "substances with their shares, such as \"CuO 18.5 %\"");
        if (row.Has("alsoFrom"))
            foreach (var other in row.Rows("alsoFrom"))
                _ = other.Provenance();
        return new(row.Text("key"), row.Text("name"), parts ?? [], row.Provenance());
    }

    [GeneratedRegex(
        @"^(?<substance>.{1,60}?)\s+(?<percent>"
            + Number
            + @")\s*%(\s*\((?<least>"
            + Number
            + @")\s+to\s+(?<most>"
            + Number
            + @")\s*%\))?$",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Part();
}
