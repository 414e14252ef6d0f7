using System.Text.Json.Serialization;
using Alburnum.Reports.Documents;

namespace Alburnum.Reports.Letters;

/// <summary>Letters of lay clients, answered. Every field is described in docs/json/explain.md.</summary>
public sealed record LettersDocument
{
    /// <summary>Name of the format.</summary>
    public required string Format { get; init; }

    /// <summary>Version of the format.</summary>
    public required int Version { get; init; }

    /// <summary>Each letter.</summary>
    public required IReadOnlyList<LetterDocument> Letters { get; init; }
}

/// <summary>One letter, answered.</summary>
public sealed record LetterDocument
{
    /// <summary>Its key.</summary>
    public required string Key { get; init; }

    /// <summary>What the client writes.</summary>
    public required string Asks { get; init; }

    /// <summary>The answer, one paragraph each.</summary>
    public required IReadOnlyList<string> Answer { get; init; }

    /// <summary>What codes and books say.</summary>
    public required IReadOnlyList<LetterPointDocument> Points { get; init; }

    /// <summary>What would settle it.</summary>
    public required IReadOnlyList<string> Settles { get; init; }

    /// <summary>What to mind.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }
}

/// <summary>What a code or a book says.</summary>
public sealed record LetterPointDocument
{
    /// <summary>What it says.</summary>
    public required string Says { get; init; }

    /// <summary>Its standing.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing Standing { get; init; }

    /// <summary>Its source.</summary>
    public required string Source { get; init; }
}
