using Alburnum.Facts;

namespace Alburnum.Records.Facts;

/// <summary>What was sprayed on a section before it was photographed, each by its short name in any case of letters.</summary>
public static class ReagentFields
{
    /// <summary>Indicator of the preservative.</summary>
    public static AskedField Indicator { get; } =
        new()
        {
            Key = "indicator",
            Help = "The indicator sprayed",
            Examples = "copper-blue, none",
            LeftOut = "detected from the photograph",
        };

    /// <summary>Reagent that colours the heartwood.</summary>
    public static AskedField Heartwood { get; } =
        new()
        {
            Key = "heartwoodReagent",
            Help = "Reagent sprayed to colour the heartwood",
            Examples = "pine, white-oak",
            LeftOut = "its natural colour is looked for",
        };
}
