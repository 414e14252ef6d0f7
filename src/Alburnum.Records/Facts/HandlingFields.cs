using Alburnum.Facts;
using Alburnum.Requirements;

namespace Alburnum.Records.Facts;

/// <summary>What a question about treated timber beside its treatment may say.</summary>
public static class HandlingFields
{
    /// <summary>What it is treated with.</summary>
    public static AskedField Preservative { get; } =
        new()
        {
            Key = "preservative",
            Help = "What it is, or may be, treated with: a kind of preservative, by name or code",
            Examples = "copper azole, CCA, creosote",
            Expected = "a kind of preservative",
        };

    /// <summary>Where it stands.</summary>
    public static AskedField UseClass { get; } =
        EnquiryFields.UseClass with
        {
            Help = "Use class of the place where it stands",
            Examples = "1, 2, 3, 3.1, 3.2, 4, 5",
            Expected = "1, 2, 3, 3.1, 3.2, 4 or 5",
            Default = "",
            LeftOut = "said for all",
        };

    /// <summary>Whose law governs.</summary>
    public static AskedField Place { get; } =
        new()
        {
            Key = "place",
            Help = "Whose law governs",
            Examples = "Britain, Germany, United States",
            LeftOut = "said for all places that are known",
        };

    /// <summary>The question that some fields ask; what is wrong is noted with them.</summary>
    /// <param name="fields">The fields.</param>
    /// <param name="subject">What is asked about.</param>
    /// <param name="facts">Preservatives and places.</param>
    public static HandlingQuestion Read(IFields fields, HandlingSubject subject, FactLibrary facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var place = fields.OneOf(Place, facts.Handling.Places, each => each) ?? "";
        return new(
            subject,
            fields.Named(Preservative, facts.Preservatives.Find),
            fields.Part(UseClass, text => UseClassWords.Parse(text) is { Count: > 0 } classes ? classes : null) ?? [],
            place
        )
        {
            WiderPlace = facts.Handling.Around(place),
        };
    }
}
