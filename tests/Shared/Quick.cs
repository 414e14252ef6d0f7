namespace Alburnum.Tests.Shared;

/// <summary>Whether fewer samples are taken of what is drawn at random: <c>./test --quick</c>.</summary>
internal static class Quick
{
    public static bool IsAsked { get; } = Environment.GetEnvironmentVariable("ALBURNUM_QUICK") is not null;
}
