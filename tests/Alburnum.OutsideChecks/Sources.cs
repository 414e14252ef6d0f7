namespace Alburnum.OutsideChecks;

/// <summary>Says where an expected value comes from. Every test in this project carries one.</summary>
[AttributeUsage(AttributeTargets.Method | AttributeTargets.Class, AllowMultiple = true)]
public abstract class OutsideSourceAttribute(string document, string place) : Attribute
{
    public string Document { get; } = document;

    public string Place { get; } = place;

    public abstract string Standing { get; }
}

/// <summary>The value was read in a published document; say "at second hand" in the place where it was a quotation.</summary>
public sealed class PublishedAttribute(string document, string place) : OutsideSourceAttribute(document, place)
{
    public override string Standing => "published";
}

/// <summary>Known in the trade, with no source.</summary>
public sealed class CommonPracticeAttribute(string what = "") : OutsideSourceAttribute("common practice", what)
{
    public override string Standing => "common practice";
}

/// <summary>Remembered from a document that was not at hand.</summary>
public sealed class FromMemoryAttribute(string document, string place = "") : OutsideSourceAttribute(document, place)
{
    public override string Standing => "from memory";
}

/// <summary>Follows from algebra, geometry or a definition; anyone can work it out again.</summary>
public sealed class WorkedOutAttribute(string how) : OutsideSourceAttribute("worked out", how)
{
    public override string Standing => "worked out";
}

/// <summary>Computed by an independent program whose script and version are kept in the reference folder.</summary>
public sealed class IndependentProgramAttribute(string program, string script) : OutsideSourceAttribute(program, script)
{
    public override string Standing => "independent program";
}
