using Alburnum.Records.Facts;
using Alburnum.Requirements;

namespace Alburnum.Workflows.Requirements;

/// <summary>The cells of a rulebook that are still to be read in the code itself.</summary>
/// <param name="Rulebook">The rulebook.</param>
/// <param name="Enquiries">Number of enquiries put to it.</param>
/// <param name="Cells">The cells, those asked for most first.</param>
public sealed record UnreadCells(Rulebook Rulebook, int Enquiries, IReadOnlyList<WorksheetCell> Cells);

/// <summary>Lists what of a rulebook is still to be read, by how often it is asked for.</summary>
public static class ListUnread
{
    /// <summary>Puts the commonest enquiries to the rulebook and lists the cells that nobody has read.</summary>
    /// <param name="rulebook">A file, or the name of one that ships.</param>
    /// <param name="facts">The rulebooks that ship, and the commonest enquiries.</param>
    /// <exception cref="InputRefusedException">The rulebook cannot be read.</exception>
    public static UnreadCells Run(string rulebook, FactLibrary facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var book = RulebookFile.Named(rulebook, facts);
        return new(book, facts.CommonestEnquiries.Count, Worksheet.Of(book, facts.CommonestEnquiries));
    }
}
