using System.Text;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Alburnum.Records.CaseFolders;

/// <summary>The text of a <c>case.yaml</c> with one value exchanged; the rest stays to the letter.</summary>
public static class CaseText
{
    private const string RulebookField = "rulebook";

    /// <summary>The text with another rulebook.</summary>
    /// <param name="bytes">A case.yaml that was read before.</param>
    /// <param name="rulebook">Name of a rulebook, or of a file within the case.</param>
    public static ReadOnlyMemory<byte> UnderRulebook(ReadOnlyMemory<byte> bytes, string rulebook)
    {
        using var reader = new StreamReader(new MemoryStream(bytes.ToArray(), writable: false), Encoding.UTF8);
        var text = reader.ReadToEnd();
        var (start, end) = ValueOf(RulebookField, text);
        return Encoding.UTF8.GetBytes($"{text[..start]}{YamlText.Quoted(rulebook)}{text[end..]}");
    }

    private static (int Start, int End) ValueOf(string field, string text)
    {
        using var reader = new StringReader(text);
        var parser = new Parser(reader);
        parser.Consume<StreamStart>();
        parser.Consume<DocumentStart>();
        parser.Consume<MappingStart>();
        while (parser.Consume<Scalar>().Value != field)
            parser.SkipThisAndNestedEvents();
        var value = parser.Consume<Scalar>();
        return ((int)value.Start.Index, (int)value.End.Index);
    }
}
