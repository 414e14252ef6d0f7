using System.Text.Json;
using System.Text.Json.Nodes;
using Alburnum.Imaging.Reading;

namespace Alburnum.Reports.Documents;

/// <summary>Why no depth could be read, as data: an object with its <c>kind</c> and the figures of that kind, described in docs/json/measure.md.</summary>
internal static class FaultMapping
{
    public static JsonObject Of(ReadingFault fault)
    {
        JsonObject document = new() { ["kind"] = JsonNamingPolicy.SnakeCaseLower.ConvertName(fault.GetType().Name) };
        if (fault is OtherIndicator(var named, var seen))
        {
            document.Add("named", named.Key);
            document.Add("seen", seen.Key);
        }
        if (fault is NoFront noFront)
        {
            document.Add("is_treated", noFront.IsTreated);
            document.Add("named", noFront.Named?.Key);
        }
        return document;
    }
}
