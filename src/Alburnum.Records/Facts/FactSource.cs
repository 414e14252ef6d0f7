using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Alburnum.Records.Facts;

/// <summary>Reads the plain part of YAML that fact files use: fields, lists and text, each with its line.</summary>
/// <remarks>
/// Anchors, aliases and tags are refused, so that no small file can unfold into a large one; size, depth and number of
/// nodes are bounded.
/// </remarks>
public static class FactSource
{
    private const int CharactersMax = 4_000_000;
    private const int DepthMax = 24;
    private const int NodesMax = 400_000;

    /// <summary>Reads one document.</summary>
    /// <param name="text">The file's text.</param>
    /// <param name="file">Name of the file for messages.</param>
    /// <param name="problems">Gains what is wrong with the file's form, if anything.</param>
    /// <returns>The outermost fields; null where the form is broken.</returns>
    public static FactFields? Read(string text, string file, ICollection<InputProblem> problems)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(problems);
        if (text.Length > CharactersMax)
        {
            problems.Add(new InputProblem(file, 0, "", "", "a file of over 4 million characters", "a smaller file"));
            return null;
        }
        using var reader = new StringReader(text);
        var parser = new Parser(reader);
        try
        {
            return Document(parser, file, problems);
        }
        catch (Refused refused)
        {
            problems.Add(new InputProblem(file, refused.Line, "", "", refused.Found, refused.Expected));
        }
        catch (YamlException broken)
        {
            var line = (int)broken.Start.Line;
            problems.Add(
                TabAtOrAfter(text, line) is { } tab
                    ? new InputProblem(file, tab, "", "", "a tab before the text", "spaces")
                    : new InputProblem(file, line, "", "", broken.Message, "well-formed YAML")
            );
        }
        catch (Exception odd) when (odd is InvalidOperationException or ArgumentException)
        {
            // The scanner's ways of saying that a plain value starts with a sign that it must not start with, or that a tag is none.
            problems.Add(
                new InputProblem(file, LineReached(parser), "", "", "a character out of place", "well-formed YAML")
            );
        }
        return null;
    }

    private static FactFields Document(Parser parser, string file, ICollection<InputProblem> problems)
    {
        parser.Consume<StreamStart>();
        if (parser.Accept<StreamEnd>(out _))
            throw new Refused(1, "an empty file", "named fields");
        parser.Consume<DocumentStart>();
        var count = 0;
        var root = Node(parser, file, problems, 0, ref count);
        parser.Consume<DocumentEnd>();
        if (!parser.Accept<StreamEnd>(out _))
            throw new Refused(Line(parser.Current!), "a second document", "one document per file");
        return root as FactFields ?? throw new Refused(root.Line, root.Shown, "named fields");
    }

    // The parser names the line where the value began that the tab breaks off.
    private static int? TabAtOrAfter(string text, int line)
    {
        var number = 0;
        foreach (var each in text.EnumerateLines())
        {
            number++;
            if (number >= line && each[..^each.TrimStart().Length].Contains('\t'))
                return number;
        }
        return null;
    }

    private static int LineReached(Parser parser) => parser.Current is { } reached ? (int)reached.End.Line : 1;

    private static FactNode Node(
        Parser parser,
        string file,
        ICollection<InputProblem> problems,
        int depth,
        ref int count
    )
    {
        if (++count > NodesMax)
            throw new Refused(Line(parser.Current!), "too many entries", "a smaller file");
        if (depth > DepthMax)
            throw new Refused(Line(parser.Current!), "entries nested too deeply", "a flatter file");
        if (parser.Accept<AnchorAlias>(out var alias))
            throw new Refused(Line(alias), $"the alias *{alias.Value}", "the value itself: fact files use no aliases");
        if (parser.Accept<NodeEvent>(out var node) && (!node.Anchor.IsEmpty || !node.Tag.IsEmpty))
            throw new Refused(Line(node), "an anchor or a tag", "plain values: fact files use neither");

        if (parser.TryConsume<Scalar>(out var scalar))
            return new FactText(scalar.Value, Line(scalar));
        if (parser.TryConsume<SequenceStart>(out var list))
        {
            var items = new List<FactNode>();
            while (!parser.TryConsume<SequenceEnd>(out _))
                items.Add(Node(parser, file, problems, depth + 1, ref count));
            return new FactList(items, Line(list));
        }
        var start = parser.Consume<MappingStart>();
        var fields = new List<(string Name, int Line, FactNode Value)>();
        var names = new HashSet<string>(StringComparer.Ordinal);
        while (!parser.TryConsume<MappingEnd>(out _))
        {
            if (!parser.TryConsume<Scalar>(out var name))
                throw new Refused(Line(parser.Current!), "a field without a plain name", "a name");
            var value = Node(parser, file, problems, depth + 1, ref count);
            if (names.Add(name.Value))
                fields.Add((name.Value, Line(name), value));
            else
                problems.Add(new InputProblem(file, Line(name), "", name.Value, "the field twice", "each field once"));
        }
        return new FactFields(fields, Line(start));
    }

    private static int Line(ParsingEvent place) => (int)place.Start.Line;

    private sealed class Refused(int line, string found, string expected) : Exception
    {
        public int Line { get; } = line;

        public string Found { get; } = found;

        public string Expected { get; } = expected;
    }
}
