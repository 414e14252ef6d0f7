namespace Alburnum.Records.Facts;

/// <summary>Reads <c>timber/density.yaml</c>: how much the density of one timber differs from tree to tree.</summary>
internal static class DensityFile
{
    private const string Field = "withinSpecies";

    internal static Fact<double> Read(FactRow root)
    {
        if (root.OptionalRow(Field) is { } row)
            return new(row.Number("coefficientOfVariation", 0.001, 1), row.Provenance());
        root.Refuse(Field, "nothing", "coefficientOfVariation, source and standing");
        return new(1, new(Standing.FromMemory, "", "", "", ""));
    }
}
