namespace Alburnum.Facts;

/// <summary>Reads fields of the usual kinds. Null is what was left out, and what was refused.</summary>
public static class FieldReading
{
    /// <summary>"yes" or "no".</summary>
    public static bool? YesNo(this IFields fields, AskedField field) =>
        fields.Read<bool>(field, text => text is "yes" or "no" ? text == "yes" : null);

    /// <summary>A number within the field's range.</summary>
    public static double? Number(this IFields fields, AskedField field)
    {
        ArgumentNullException.ThrowIfNull(field);
        return fields.Read(field, field.Range!.Parse);
    }

    /// <summary>A thing by one of its names; a name that nothing, or more than one thing, bears is refused with what may have been meant.</summary>
    /// <param name="fields">The fields.</param>
    /// <param name="field">The field.</param>
    /// <param name="find">Looks a name up.</param>
    public static T? Named<T>(this IFields fields, AskedField field, Func<string, Lookup<T>> find)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(fields);
        ArgumentNullException.ThrowIfNull(find);
        ArgumentNullException.ThrowIfNull(field);
        if (fields.Text(field) is not { } name)
            return null;
        var lookup = find(name);
        if (lookup is Found<T> found)
            return found.Value;
        fields.Refuse(field, name, lookup.Expected(field.Expected));
        return null;
    }

    /// <summary>One of a few things by its short name, in any case of letters; another name is refused with all of theirs.</summary>
    /// <param name="fields">The fields.</param>
    /// <param name="field">The field.</param>
    /// <param name="all">The things.</param>
    /// <param name="key">Short name of a thing.</param>
    public static T? OneOf<T>(this IFields fields, AskedField field, IReadOnlyList<T> all, Func<T, string> key)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(all);
        ArgumentNullException.ThrowIfNull(key);
        return fields.Part(
            field with
            {
                Expected = string.Join(", ", all.Select(key)),
            },
            text => all.FirstOrDefault(each => string.Equals(key(each), text, StringComparison.OrdinalIgnoreCase))
        );
    }

    /// <summary>Anything else that one text gives.</summary>
    /// <param name="fields">The fields.</param>
    /// <param name="field">The field.</param>
    /// <param name="parse">Reads the text; null refuses it.</param>
    public static T? Read<T>(this IFields fields, AskedField field, Func<string, T?> parse)
        where T : struct
    {
        ArgumentNullException.ThrowIfNull(fields);
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(parse);
        if (fields.Text(field) is not { } text)
            return null;
        var value = parse(text);
        if (value is null)
            fields.Refuse(field, text, field.Expected);
        return value;
    }

    /// <summary>As the other, for what is a class.</summary>
    /// <param name="fields">The fields.</param>
    /// <param name="field">The field.</param>
    /// <param name="parse">Reads the text; null refuses it.</param>
    public static T? Part<T>(this IFields fields, AskedField field, Func<string, T?> parse)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(fields);
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(parse);
        if (fields.Text(field) is not { } text)
            return null;
        var value = parse(text);
        if (value is null)
            fields.Refuse(field, text, field.Expected);
        return value;
    }
}
