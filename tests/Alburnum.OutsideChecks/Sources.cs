using System.Reflection;
using Xunit.v3;

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

/// <summary>What a check holds against what. Every check has one kind; it is counted under that.</summary>
public enum CheckKind
{
    /// <summary>Something that the program works out, against a published or an independently worked-out result.</summary>
    Computed,

    /// <summary>
    /// A fact that ships, against a publication with an authority of its own: neither the one it was taken from nor another
    /// copy of the standard that it repeats.
    /// </summary>
    SecondSource,

    /// <summary>A row that ships, against its own source or another copy of the standard that it repeats: that it was copied right.</summary>
    Transcription,

    /// <summary>A model against the very facts that its numbers were chosen by. It shows consistency and confirms nothing.</summary>
    Calibration,
}

/// <summary>Says of which kind a check is; a method's own word goes before its class's.</summary>
[AttributeUsage(AttributeTargets.Method | AttributeTargets.Class)]
public abstract class CheckKindAttribute(CheckKind kind) : Attribute
{
    public CheckKind Kind { get; } = kind;
}

/// <summary>See <see cref="CheckKind.Computed"/>.</summary>
public sealed class ComputedAttribute() : CheckKindAttribute(CheckKind.Computed);

/// <summary>See <see cref="CheckKind.SecondSource"/>. A check that does not show it by <see cref="SecondSource.IsAnother"/> fails.</summary>
public sealed class SecondSourceAttribute() : CheckKindAttribute(CheckKind.SecondSource), IBeforeAfterTestAttribute
{
    void IBeforeAfterTestAttribute.Before(MethodInfo methodUnderTest, IXunitTest test) { }

    void IBeforeAfterTestAttribute.After(MethodInfo methodUnderTest, IXunitTest test)
    {
        if ((methodUnderTest.GetCustomAttribute<CheckKindAttribute>() ?? this) is SecondSourceAttribute)
            Assert.True(SecondSource.WasShown(test), "Nothing shows that the second source is another than the first.");
    }
}

/// <summary>See <see cref="CheckKind.Transcription"/>.</summary>
public sealed class TranscriptionAttribute() : CheckKindAttribute(CheckKind.Transcription);

/// <summary>See <see cref="CheckKind.Calibration"/>.</summary>
public sealed class CalibrationAttribute() : CheckKindAttribute(CheckKind.Calibration);
