namespace Alburnum.DrawnSections;

/// <summary>Drawing lots from a seeded generator.</summary>
internal static class Draw
{
    public static double Between(this Random random, double low, double high) =>
        low + (high - low) * random.NextDouble();

    public static double Angle(this Random random) => random.Between(0, 2 * Math.PI);

    public static bool Chance(this Random random, double share) => random.NextDouble() < share;

    public static T OneOf<T>(this Random random, IReadOnlyList<T> choices) => choices[random.Next(choices.Count)];
}
