namespace Alburnum.Facts;

/// <summary>What a person wrote, field by field: the options of a command, a row of a table, the fields of a file, a form.</summary>
/// <remarks>Whoever reads from it need not know which; whoever stands behind it knows its own names, and where a problem lies.</remarks>
public interface IFields
{
    /// <summary>What was written; null where the field was left out, or where what stands there was refused already.</summary>
    string? Text(AskedField field);

    /// <summary>Notes a problem with a field; reading goes on, so that all problems are found at once.</summary>
    /// <param name="field">The field.</param>
    /// <param name="found">What stands there.</param>
    /// <param name="expected">What should stand there.</param>
    void Refuse(AskedField field, string found, string expected);
}
