namespace Alburnum.Requirements;

/// <summary>One field of a grid, and the values at which a subject's rows can tell enquiries apart.</summary>
internal sealed record Axis(Field Field, IReadOnlyList<Known> Values);

/// <summary>Every combination of the values that the rows of one subject can tell apart.</summary>
internal sealed class CaseGrid
{
    /// <summary>More combinations than this are not walked through.</summary>
    public const long CellsMax = 3_000_000;

    private CaseGrid(IReadOnlyList<Axis> axes) => Axes = axes;

    /// <summary>The axes, in the order of the fields.</summary>
    public IReadOnlyList<Axis> Axes { get; }

    /// <summary>Number of combinations.</summary>
    public long Count => Axes.Aggregate(1L, (product, axis) => product * axis.Values.Count);

    /// <summary>The grid of a rulebook's rows on one subject.</summary>
    public static CaseGrid Of(Rulebook rulebook, Subject subject)
    {
        var conditions = rulebook.RowsOf(subject).SelectMany(row => row.When).ToList();
        var fields = conditions.Select(condition => condition.Field).Distinct().Order();
        return new CaseGrid([
            .. fields.Select(field => new Axis(
                field,
                field.IsNumeric()
                    ? Numbers(rulebook, field, conditions.OfType<Between>().Where(each => each.Field == field))
                    : Words(field, conditions.OfType<OneOf>().Where(each => each.Field == field))
            )),
        ]);
    }

    private static List<Known> Words(Field field, IEnumerable<OneOf> conditions)
    {
        IEnumerable<string>? all = field switch
        {
            Field.UseClass => ["1", "2", "3.1", "3.2", "4", "5"],
            Field.Form => ["sawn", "round"],
            Field.ExposedHeartwood or Field.Incised or Field.Coated or Field.GroundContact => ["yes", "no"],
            _ => null,
        };
        var values = (all ?? conditions.SelectMany(each => each.Allowed).Distinct(StringComparer.OrdinalIgnoreCase))
            .Select(Known.Word)
            .ToList();
        if (all is null)
            values.Add(Known.OneOfThese([]));
        return values;
    }

    // Every end, and a point between and beyond the ends: between two neighbours no row can tell numbers apart.
    private static List<Known> Numbers(Rulebook rulebook, Field field, IEnumerable<Between> conditions)
    {
        var (low, high) = Limits(field);
        IEnumerable<double> points;
        if (field == Field.Life && rulebook.Lives.Count > 0)
        {
            points = rulebook.Lives.Select(years => (double)years);
        }
        else if (field is Field.SapwoodTreatability or Field.HeartwoodTreatability)
        {
            points = [1, 2, 3, 4];
        }
        else if (field == Field.Durability)
        {
            points = [1, 2, 3, 4, 5];
        }
        else
        {
            var ends = conditions
                .SelectMany(each => new[] { each.Low, each.High })
                .Where(double.IsFinite)
                .Append(low)
                .Append(high)
                .Distinct()
                .Order()
                .ToList();
            points = ends.Concat(ends.Zip(ends.Skip(1), (a, b) => (a + b) / 2)).Order();
        }
        return [.. points.Select(point => Known.Number(point, point))];
    }

    private static (double Low, double High) Limits(Field field) =>
        field switch
        {
            Field.Moisture => (0, 250),
            Field.Life => (1, 200),
            _ => (1, 2000),
        };

    /// <summary>Walks through every combination; the array of indexes is reused.</summary>
    public IEnumerable<(int[] Indexes, Situation Situation)> Cells()
    {
        var indexes = new int[Axes.Count];
        var situation = new Situation();
        for (var axis = 0; axis < Axes.Count; axis++)
            situation.Set(Axes[axis].Field, Axes[axis].Values[0]);
        while (true)
        {
            yield return (indexes, situation);
            var at = Axes.Count - 1;
            while (at >= 0 && ++indexes[at] == Axes[at].Values.Count)
            {
                indexes[at] = 0;
                situation.Set(Axes[at].Field, Axes[at].Values[0]);
                at--;
            }
            if (at < 0)
                yield break;
            situation.Set(Axes[at].Field, Axes[at].Values[indexes[at]]);
        }
    }
}
