using Alburnum.Requirements;

namespace Alburnum.Records.Facts;

/// <summary>Reads <c>commonest-enquiries.yaml</c>.</summary>
internal static class EnquiryFile
{
    /// <summary>All of them, in the order of the file.</summary>
    internal static IReadOnlyList<Enquiry> Read(FactRow root, FactLibrary facts)
    {
        _ = root.Provenance();
        return [.. root.Rows("enquiries").Select(row => EnquiryReader.Read(new RowFields(row), facts))];
    }
}
