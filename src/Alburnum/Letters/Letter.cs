namespace Alburnum.Letters;

/// <summary>A question that lay clients ask again and again, with its answer in plain words.</summary>
/// <param name="Key">Short name, such as "red-core".</param>
/// <param name="Asks">What the client writes.</param>
/// <param name="Answer">The answer, one paragraph each.</param>
/// <param name="Points">What codes and books say, each with its source and standing.</param>
/// <param name="Settles">What would settle it in the case at hand.</param>
/// <param name="Cautions">What to mind.</param>
public sealed record Letter(
    string Key,
    string Asks,
    IReadOnlyList<string> Answer,
    IReadOnlyList<Fact<string>> Points,
    IReadOnlyList<string> Settles,
    IReadOnlyList<string> Cautions
);
