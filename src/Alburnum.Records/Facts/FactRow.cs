using System.Globalization;
using Alburnum.Facts;

namespace Alburnum.Records.Facts;

/// <summary>
/// Reads the fields of one row. Whatever is wrong is noted with its line, row and field, and reading goes on with a value
/// within range, so that one pass finds every problem. When the whole file is read, the fields that nobody asked for are noted too.
/// </summary>
public sealed class FactRow
{
    private readonly FactFile _file;
    private readonly FactFields _fields;
    private readonly HashSet<string> _asked = new(StringComparer.Ordinal);

    internal FactRow(FactFile file, FactFields fields, string key)
    {
        _file = file;
        _fields = fields;
        Key =
            key.Length > 0 ? key
            : (_fields["key"] ?? _fields["name"] ?? _fields["id"]) is FactText text ? text.Text
            : "";
    }

    /// <summary>Name of the row for messages.</summary>
    public string Key { get; }

    /// <summary>Line that the row starts on.</summary>
    public int Line => _fields.Line;

    /// <summary>Names of the fields that are there, in their order.</summary>
    public IEnumerable<string> FieldNames => _fields.Fields.Select(each => each.Name);

    /// <summary>True where the field is there.</summary>
    public bool Has(string field)
    {
        _asked.Add(field);
        return _fields[field] is not null;
    }

    /// <summary>True where the field is there and is a plain text.</summary>
    public bool IsText(string field) => _fields[field] is FactText;

    /// <summary>Notes a problem with a field.</summary>
    public void Refuse(string field, string found, string expected) =>
        _file.Add(new InputProblem(_file.Name, LineOf(field), Key, field, found, expected));

    /// <summary>A text that must be there and not be empty.</summary>
    public string Text(string field)
    {
        var text = OptionalText(field, out var isThere);
        if (text.Length == 0 && (!isThere || _fields[field] is FactText))
            Refuse(field, "nothing", "a text");
        return text;
    }

    /// <summary>A text; empty where the field is left out.</summary>
    public string OptionalText(string field) => OptionalText(field, out _);

    /// <summary>One of some words.</summary>
    /// <param name="field">Name of the field.</param>
    /// <param name="words">Words allowed and what each stands for. Never empty.</param>
    public T Word<T>(string field, IReadOnlyList<(string Word, T Value)> words)
    {
        ArgumentNullException.ThrowIfNull(words);
        var text = OptionalText(field, out var isThere);
        foreach (var (word, value) in words)
        {
            if (string.Equals(word, text, StringComparison.Ordinal))
                return value;
        }
        if (!isThere || _fields[field] is FactText)
            Refuse(field, text.Length == 0 ? "nothing" : text, Either(words.Select(each => each.Word)));
        return words[0].Value;
    }

    /// <summary>A number in a range.</summary>
    /// <param name="field">Name of the field.</param>
    /// <param name="low">Lowest number allowed.</param>
    /// <param name="high">Highest number allowed.</param>
    public double Number(string field, double low, double high)
    {
        var text = OptionalText(field, out _);
        return Number(field, text, low, high, "");
    }

    /// <summary>A number in a range; the least where none was read.</summary>
    public double Number(string field, NumberRange range)
    {
        ArgumentNullException.ThrowIfNull(range);
        return Number(
            field,
            OptionalText(field, out _),
            range.Low,
            range.High,
            range.Unit.Length > 0 ? $" {range.Unit}" : ""
        );
    }

    /// <summary>A whole number in a range.</summary>
    /// <param name="field">Name of the field.</param>
    /// <param name="low">Lowest number allowed.</param>
    /// <param name="high">Highest number allowed.</param>
    public int Whole(string field, int low, int high)
    {
        var text = OptionalText(field, out _);
        if (
            int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var value)
            && value >= low
            && value <= high
        )
            return value;
        Refuse(
            field,
            text.Length == 0 ? "nothing" : text,
            $"a whole number, {InputProblem.Number(low)} to {InputProblem.Number(high)}"
        );
        return low;
    }

    /// <summary>A whole number in a range; the least where none was read.</summary>
    public int Whole(string field, NumberRange range)
    {
        ArgumentNullException.ThrowIfNull(range);
        return Whole(field, (int)range.Low, (int)range.High);
    }

    /// <summary>A number with its unit, in a range given in the first unit of the list.</summary>
    public double Quantity(string field, IReadOnlyList<(string Unit, double InFirst)> units, NumberRange range)
    {
        ArgumentNullException.ThrowIfNull(range);
        return Quantity(field, units, range.Low, range.High);
    }

    /// <summary>A number with its unit, for instance "6 mm" or "0.75 in", turned into the first unit of the list.</summary>
    /// <param name="field">Name of the field.</param>
    /// <param name="units">Units allowed and what one of each is in the first unit.</param>
    /// <param name="low">Lowest value allowed, in the first unit.</param>
    /// <param name="high">Highest value allowed, in the first unit.</param>
    public double Quantity(string field, IReadOnlyList<(string Unit, double InFirst)> units, double low, double high)
    {
        ArgumentNullException.ThrowIfNull(units);
        var text = OptionalText(field, out _);
        var space = text.LastIndexOf(' ');
        var unit = space < 0 ? "" : text[(space + 1)..];
        foreach (var (name, inFirst) in units)
        {
            if (string.Equals(name, unit, StringComparison.Ordinal))
                return Number(field, text[..space], low, high, " " + units[0].Unit, inFirst);
        }
        Refuse(
            field,
            text.Length == 0 ? "nothing" : text,
            $"a number and its unit, {Either(units.Select(each => each.Unit))}"
        );
        return low;
    }

    /// <summary>A list of texts; empty where the field is left out. A single text counts as a list of one.</summary>
    public IReadOnlyList<string> Texts(string field)
    {
        _asked.Add(field);
        switch (_fields[field])
        {
            case null:
                return [];
            case FactText single:
                return [single.Text];
            case FactList list when list.Items.All(item => item is FactText):
                return [.. list.Items.Cast<FactText>().Select(item => item.Text)];
            case { } other:
                Refuse(field, other.Shown, "a list of texts");
                return [];
        }
    }

    /// <summary>A list of rows that must be there.</summary>
    public IReadOnlyList<FactRow> Rows(string field)
    {
        if (!Has(field))
            Refuse(field, "nothing", "a list of rows");
        return OptionalRows(field);
    }

    /// <summary>A list of rows; empty where the field is left out.</summary>
    public IReadOnlyList<FactRow> OptionalRows(string field)
    {
        _asked.Add(field);
        switch (_fields[field])
        {
            case null:
                return [];
            case FactList list:
                var rows = new List<FactRow>();
                foreach (var item in list.Items)
                {
                    if (item is FactFields row)
                        rows.Add(_file.Row(row, ""));
                    else
                        _file.Add(new InputProblem(_file.Name, item.Line, Key, field, item.Shown, "named fields"));
                }
                return rows;
            case { } other:
                Refuse(field, other.Shown, "a list of rows");
                return [];
        }
    }

    /// <summary>Fields within a field; null where the field is left out.</summary>
    public FactRow? OptionalRow(string field)
    {
        _asked.Add(field);
        switch (_fields[field])
        {
            case null:
                return null;
            case FactFields inner:
                return _file.Row(inner, Key);
            case { } other:
                Refuse(field, other.Shown, "named fields");
                return null;
        }
    }

    /// <summary>
    /// The row's <c>source</c> (an id of the file's sources or of the register, or named fields) and <c>standing</c>; for a number that was worked out, also <c>how</c>.
    /// </summary>
    public Provenance Provenance()
    {
        var standing = Word("standing", [.. Enum.GetValues<Standing>().Select(each => (each.Key(), each))]);
        var source = Source();
        if (source is null)
            return new Provenance(standing, "", "", "", "");
        var how = standing == Standing.WorkedOut ? Text("how") : "";
        var note = string.Join("; ", new[] { source.Remark, how, OptionalText("note") }.Where(part => part.Length > 0));
        var place = OptionalText("place") is { Length: > 0 } own ? own : source.Place;
        if (standing == Standing.Published && (source.Edition.Length == 0 || place.Length == 0))
            Refuse("source", "a published row without edition or place", "the edition, and the table, clause or page");
        if (standing is Standing.Published or Standing.WorkedOut && source.IsRemembered)
            Refuse("standing", standing.Key(), $"from memory: nobody has read \"{source.Id}\"");
        return new Provenance(standing, source.Document, source.Edition, place, note);
    }

    /// <summary>Notes every field that nobody asked for.</summary>
    internal void RefuseUnasked()
    {
        var known = Either(_asked.Order(StringComparer.Ordinal));
        foreach (var (name, line, _) in _fields.Fields)
        {
            if (!_asked.Contains(name))
                _file.Add(new InputProblem(_file.Name, line, Key, name, "an unknown field", known));
        }
    }

    private Source? Source()
    {
        _asked.Add("source");
        switch (_fields["source"])
        {
            case FactText id when _file.Source(id.Text) is { } known:
                return known;
            case FactFields inner:
                return _file.SourceIn(_file.Row(inner, Key));
            case { } other:
                Refuse(
                    "source",
                    other.Shown,
                    "an id of data/sources.yaml or of the file's own sources, or document, edition and place"
                );
                return null;
            default:
                Refuse("source", "nothing", "where the fact comes from");
                return null;
        }
    }

    private string OptionalText(string field, out bool isThere)
    {
        _asked.Add(field);
        var node = _fields[field];
        isThere = node is not null;
        if (node is FactText text)
            return text.Text.Trim();
        if (node is not null)
            Refuse(field, node.Shown, "a text");
        return "";
    }

    private double Number(string field, string text, double low, double high, string unit, double scale = 1)
    {
        // Rounded so that 0.75 in is 19.05 mm and not a hair beside it.
        if (
            double.TryParse(
                text,
                NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign,
                CultureInfo.InvariantCulture,
                out var read
            )
            && Math.Round(read * scale, 9) is var value
            && value >= low
            && value <= high
        )
        {
            return value;
        }
        Refuse(
            field,
            text.Length == 0 ? "nothing" : OptionalText(field),
            $"{InputProblem.Number(low)} to {InputProblem.Number(high)}{unit}"
        );
        return low;
    }

    private int LineOf(string field)
    {
        foreach (var (name, line, _) in _fields.Fields)
        {
            if (string.Equals(name, field, StringComparison.Ordinal))
                return line;
        }
        return _fields.Line;
    }

    private static string Either(IEnumerable<string> words)
    {
        var all = words.ToList();
        return all.Count < 2 ? string.Concat(all) : $"{string.Join(", ", all.SkipLast(1))} or {all[^1]}";
    }
}
