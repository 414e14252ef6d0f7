namespace Alburnum.Requirements;

/// <summary>A set of like cases: for each field, the values that it may have.</summary>
/// <param name="Fields">Fields with the values of each; a field whose every value is meant is left out.</param>
public sealed record CaseBox(IReadOnlyList<(Field Field, IReadOnlyList<Known> Values)> Fields)
{
    /// <summary>Gathers single combinations into as few boxes as a pass along each axis finds.</summary>
    internal static IReadOnlyList<CaseBox> Gather(IReadOnlyList<Axis> axes, IEnumerable<int[]> cells)
    {
        var boxes = cells.Select(cell => cell.Select(index => 1UL << index).ToArray()).ToList();
        for (var axis = 0; axis < axes.Count; axis++)
        {
            var along = axis;
            boxes =
            [
                .. boxes
                    .GroupBy(box => string.Join(',', box.Where((_, each) => each != along)), StringComparer.Ordinal)
                    .Select(group =>
                    {
                        var merged = group.First();
                        merged[along] = group.Aggregate(0UL, (bits, box) => bits | box[along]);
                        return merged;
                    }),
            ];
        }
        return [.. boxes.Select(box => Of(axes, box))];
    }

    private static CaseBox Of(IReadOnlyList<Axis> axes, ulong[] box)
    {
        var fields = new List<(Field, IReadOnlyList<Known>)>();
        for (var axis = 0; axis < axes.Count; axis++)
        {
            var values = axes[axis].Values.Where((_, index) => (box[axis] & (1UL << index)) != 0).ToList();
            if (values.Count < axes[axis].Values.Count)
                fields.Add((axes[axis].Field, values));
        }
        return new CaseBox(fields);
    }
}
