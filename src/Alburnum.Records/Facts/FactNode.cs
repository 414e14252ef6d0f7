namespace Alburnum.Records.Facts;

/// <summary>A piece of a fact file, with the line it starts on.</summary>
/// <param name="Line">Line in the file, from 1.</param>
public abstract record FactNode(int Line)
{
    /// <summary>What stands there, shortened, for a message.</summary>
    public abstract string Shown { get; }
}

/// <summary>A single word, number or sentence.</summary>
/// <param name="Text">As written, quotes removed.</param>
/// <param name="Line">Line in the file, from 1.</param>
public sealed record FactText(string Text, int Line) : FactNode(Line)
{
    private const int ShownMax = 60;

    /// <inheritdoc/>
    public override string Shown =>
        Text.Length switch
        {
            0 => "nothing",
            <= ShownMax => Text,
            _ => string.Concat(Text.AsSpan(0, ShownMax), "…"),
        };
}

/// <summary>A list.</summary>
/// <param name="Items">The items.</param>
/// <param name="Line">Line in the file, from 1.</param>
public sealed record FactList(IReadOnlyList<FactNode> Items, int Line) : FactNode(Line)
{
    /// <inheritdoc/>
    public override string Shown => "a list";
}

/// <summary>Named fields.</summary>
/// <param name="Fields">The fields, in the order of the file.</param>
/// <param name="Line">Line in the file, from 1.</param>
public sealed record FactFields(IReadOnlyList<(string Name, int Line, FactNode Value)> Fields, int Line)
    : FactNode(Line)
{
    /// <inheritdoc/>
    public override string Shown => "named fields";

    /// <summary>The field of that name; null where there is none.</summary>
    public FactNode? this[string name]
    {
        get
        {
            foreach (var entry in Fields)
            {
                if (string.Equals(entry.Name, name, StringComparison.Ordinal))
                    return entry.Value;
            }
            return null;
        }
    }
}
