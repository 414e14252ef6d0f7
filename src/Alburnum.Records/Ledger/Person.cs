namespace Alburnum.Records.Ledger;

/// <summary>Who did something.</summary>
/// <param name="Name">The name.</param>
/// <param name="KnownBy">How it is known.</param>
public sealed record Person(string Name, PersonKnownBy KnownBy)
{
    /// <summary>The user of the operating system under whom the program runs.</summary>
    public static Person OfSystem { get; } = new(Environment.UserName, PersonKnownBy.System);
}

/// <summary>How a name is known. None of these proves who sat at the machine.</summary>
public enum PersonKnownBy
{
    /// <summary>The name was given with the command.</summary>
    Command,

    /// <summary>The name was set for all commands.</summary>
    Setting,

    /// <summary>It is the name of the operating system's user.</summary>
    System,
}

/// <summary>How it is kept by what a person is known.</summary>
public static class PersonKnownByKeys
{
    /// <summary>"command", "setting" or "system".</summary>
    public static string Key(this PersonKnownBy by) =>
        by switch
        {
            PersonKnownBy.Command => "command",
            PersonKnownBy.Setting => "setting",
            PersonKnownBy.System => "system",
            _ => throw new ArgumentOutOfRangeException(nameof(by), by, "Not a way to know a person."),
        };
}
