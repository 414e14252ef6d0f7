using System.Text.Json;
using Alburnum.Facts;
using Alburnum.Timber;

namespace Alburnum.Records.Tables;

/// <summary>A place on a measured section at which a depth was read.</summary>
/// <param name="Face">Face number from 1.</param>
/// <param name="AlongMm">Distance from the start of the face, mm.</param>
/// <param name="DepthMm">Depth, mm; as deep as the sapwood where it cannot be told from that.</param>
/// <param name="SapwoodMm">Depth at which heartwood begins, mm; 0 where it reaches the face, null where not known.</param>
internal sealed record SectionPlace(int Face, double AlongMm, double DepthMm, double? SapwoodMm);

/// <summary>A section as <c>measure</c> read it.</summary>
/// <param name="Piece">Name of the piece in a case's report, otherwise of the photograph.</param>
/// <param name="Section">Its nominal section.</param>
/// <param name="Places">Each place that was not left out. One or more.</param>
internal sealed record MeasuredSection(string Piece, Section Section, IReadOnlyList<SectionPlace> Places);

/// <summary>Reads sections back from the JSON that <c>measure</c> prints, and writes as <c>readings.json</c>, or from a case's <c>report.json</c>.</summary>
internal static class MeasuredSections
{
    /// <summary>What the file should be, for messages.</summary>
    public const string Expected = "sections as measure writes them to readings.json, or a case to report.json";

    /// <summary>Each section on which a depth was read; those without are passed over.</summary>
    /// <param name="name">Name of the file for messages.</param>
    /// <param name="bytes">Its bytes.</param>
    /// <exception cref="InputRefusedException">It is nothing that <c>measure</c> wrote, or no depth was read on any section.</exception>
    public static IReadOnlyList<MeasuredSection> Read(string name, ReadOnlyMemory<byte> bytes)
    {
        try
        {
            using var document = JsonDocument.Parse(bytes);
            var root = document.RootElement;
            List<MeasuredSection> sections = [.. Readings(root).SelectMany(each => Of(each.Piece, each.Reading))];
            return sections.Count > 0 ? sections : throw Refused(name, 0, "no section on which a depth was read");
        }
        catch (JsonException broken)
        {
            throw Refused(name, (int)(broken.LineNumber ?? 0) + 1, "something that is not JSON");
        }
        // A field is missing, of another kind, or out of range.
        catch (Exception other)
            when (other is KeyNotFoundException or InvalidOperationException or FormatException or ArgumentException)
        {
            throw Refused(name, 0, "JSON of something else");
        }
    }

    // An array of readings, or the report of a case with a reading for each piece.
    private static IEnumerable<(string? Piece, JsonElement Reading)> Readings(JsonElement root) =>
        root.ValueKind == JsonValueKind.Array
            ? root.EnumerateArray().Select(reading => ((string?)null, reading))
            : root.GetProperty("pieces")
                .EnumerateArray()
                .Select(piece => (piece.GetProperty("piece").GetString(), piece.GetProperty("reading")));

    private static IEnumerable<MeasuredSection> Of(string? piece, JsonElement reading)
    {
        var section = SectionOf(reading);
        var border =
            reading.TryGetProperty("heartwood", out var heartwood)
            && heartwood.ValueKind == JsonValueKind.Object
            && heartwood.GetProperty("border_u_mm") is { ValueKind: JsonValueKind.Number } u
                ? u.GetDouble()
                : 0;
        var places = reading.GetProperty("faces").EnumerateArray().SelectMany(face => Places(face, border)).ToList();
        if (places.Count > 0)
            yield return new(piece ?? Path.GetFileName(reading.GetProperty("file").GetString()!), section, places);
    }

    private static IEnumerable<SectionPlace> Places(JsonElement face, double borderUMm)
    {
        var number = face.GetProperty("number").GetInt32();
        var sapwood = face.GetProperty("sapwood_mm");
        double[] positions = Numbers("positions_mm"),
            depths = Numbers("depth_mm");
        bool[] excluded = [.. face.GetProperty("excluded").EnumerateArray().Select(each => each.GetBoolean())];
        if (positions.Length != depths.Length || positions.Length != excluded.Length)
            throw new FormatException("Lists of different lengths.");
        for (var i = 0; i < positions.Length; i++)
        {
            if (excluded[i])
                continue;
            double? border =
                sapwood.ValueKind == JsonValueKind.Array && sapwood[i].ValueKind == JsonValueKind.Number
                    ? sapwood[i].GetDouble()
                    : null;
            // As far as the border can be told, the sapwood is filled; what lies beyond speaks of other wood.
            var depth = border is > 0 && depths[i] >= border - borderUMm ? border.Value : depths[i];
            if (!Ranges.MeasuredDepthMm.Holds(depth) || !Ranges.PositionMm.Holds(positions[i]))
                throw new FormatException("A depth or a place that no section has.");
            yield return new(number, positions[i], depth, border);
        }

        double[] Numbers(string field) =>
            [
                .. face.GetProperty(field)
                    .EnumerateArray()
                    .Select(each => each.ValueKind == JsonValueKind.Number ? each.GetDouble() : 0),
            ];
    }

    private static Section SectionOf(JsonElement reading)
    {
        double[] sizes = [.. reading.GetProperty("section_mm").EnumerateArray().Select(each => each.GetDouble())];
        return (reading.GetProperty("shape").GetString(), sizes) switch
        {
            ("rectangle", [var width, var height]) => new RectangularSection(width, height),
            ("round", [var diameter]) => new RoundSection(diameter),
            ("half-round", [var diameter]) => new HalfRoundSection(diameter),
            _ => throw new FormatException("A section without faces of its own."),
        };
    }

    private static InputRefusedException Refused(string name, int line, string found) =>
        new(new InputProblem(name, line, "", "", found, Expected));
}
