using Alburnum.Facts;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Charging;
using Alburnum.Impregnation.Sorbing;
using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Timber;
using Fields = Alburnum.Records.Charges.ChargeFields;

namespace Alburnum.Records.Charges;

/// <summary>Reads how timber is to be treated, from a charge file or from the blocks <c>prediction</c> and <c>charge</c> of a case.</summary>
/// <param name="file">Name of the file for messages.</param>
/// <param name="facts">Species, schedules and incising patterns that it may name.</param>
/// <param name="problems">Gains what is wrong.</param>
/// <param name="known">What the case says already; null for a charge file.</param>
internal sealed class ChargeReader(
    string file,
    FactLibrary facts,
    List<InputProblem> problems,
    CaseTimber? known = null
)
{
    /// <summary>A charge file; null where its timber cannot be read.</summary>
    public ChargeOrder? OfFile(FactRow root)
    {
        var fields = FieldsOf(root, Fields.OfCharge);
        var order = Charge(root, fields, Treatment(fields, SpeciesOf(fields), line: 0));
        return order.Treatment.Species is null ? null : order;
    }

    /// <summary>The two blocks of a case, each null where it is left out. With both, how the timber is treated stands under <c>prediction</c>.</summary>
    public (TreatmentOrder? Prediction, ChargeOrder? Charge) OfCase(FactRow root)
    {
        var prediction = root.OptionalRow("prediction");
        var predicted = prediction is null
            ? null
            : Treatment(FieldsOf(prediction, Fields.OfPrediction), known!.Case.Enquiry.Species, prediction.Line);
        if (root.OptionalRow("charge") is not { } charge)
            return (predicted, null);
        var fields = FieldsOf(charge, [.. Fields.OfCharge.Except(predicted is null ? [] : Fields.OfPrediction)]);
        var species = SpeciesOf(fields);
        if (prediction is not null)
            RefuseOtherwise(fields, prediction);
        var order = Charge(charge, fields, predicted ?? Treatment(fields, species, charge.Line));
        return (predicted, order);
    }

    private ChargeOrder Charge(FactRow root, RowFields fields, TreatmentOrder treatment)
    {
        var rows = root.Rows("pieces");
        if (rows.Count == 0 && root.Has("pieces"))
            root.Refuse("pieces", "no row", "one size of piece or more");
        var order = new ChargeOrder
        {
            Name = fields.Text(Fields.Name) ?? known?.Case.Title ?? "",
            Treatment = treatment with
            {
                DepthMm = DepthOf(fields),
                ZoneDepthMm = Agreed(fields, TreatmentFields.ZoneDepth, known?.ZoneDepthMm),
            },
            Pieces = [.. rows.Select(row => PiecesOf(row, isOnlyRow: rows.Count == 1)).OfType<ChargePieces>()],
            MoistureLimitPercent = fields.Number(Fields.MoistureLimit),
            DryingCelsius = fields.Number(Fields.DryingTemperature) ?? Fields.DryingTemperature.DefaultNumber,
            DryingHumidity = (fields.Number(Fields.DryingHumidity) ?? Fields.DryingHumidity.DefaultNumber) / 100,
            RetentionKgPerM3 = Needed(fields, TreatmentFields.Retention, known?.Required?.RequiredKgPerM3),
            SolutionDensityKgPerM3 = Needed(fields, Fields.SolutionDensity),
            StrengthMostPercent = fields.Number(Fields.StrengthMost),
            Sorption = SorptionOf(fields),
            TankL = fields.Number(Fields.Tank),
        };
        return root.OptionalRow("readings") is { } row ? order with { Readings = ReadingsOf(row, order) } : order;
    }

    private TreatmentOrder Treatment(RowFields fields, Species? species, int line)
    {
        var library = facts.Impregnation;
        return new()
        {
            File = file,
            Line = line,
            Species = species!,
            HeartwoodRadiusMm = fields.Number(TreatmentFields.HeartwoodRadius),
            SapwoodMm = Agreed(fields, TreatmentFields.Sapwood, known?.SapwoodMm),
            Position = fields.Read(TreatmentFields.Position, TreatedWoodText.Position),
            All = fields.Read(TreatmentFields.All, TreatedWoodText.Throughout),
            DensityKgPerM3 = fields.Number(TreatmentFields.Density),
            MoisturePercent = Needed(fields, TreatmentFields.Moisture, known?.Case.Enquiry.MoisturePercent),
            Schedule =
                fields.OneOf(
                    TreatmentFields.Schedule,
                    [.. library.Schedules.Select(row => row.Value.Name)],
                    name => name
                ) ?? TreatmentFields.Schedule.Default,
            Incising = IncisingOf(fields, [.. library.Patterns.Select(row => row.Name)]),
            Demand = known?.Demand,
            ZoneDepthMm = known?.ZoneDepthMm,
        };
    }

    private static Sorption? SorptionOf(RowFields fields) =>
        Sorption.Known(fields.Number(TreatmentFields.Sorption), fields.Number(TreatmentFields.SorptionMost));

    private Species? SpeciesOf(RowFields fields)
    {
        var written = fields.Named(TreatmentFields.Species, facts.Species.Find);
        if (known?.Case.Enquiry.Species is not { } species)
            return written;
        if (written is not null && written.Name != species.Name)
            Contradiction(fields, TreatmentFields.Species, species.Name);
        return species;
    }

    // A case is incised or not: the pattern says how, and nothing else.
    private string? IncisingOf(RowFields fields, IReadOnlyList<string> patterns)
    {
        var name = fields.OneOf(TreatmentFields.Incising, patterns, name => name);
        if (known is null)
            return name;
        var isIncised = known.Case.Enquiry.IsIncised == true;
        if (isIncised && fields.Text(TreatmentFields.Incising) is null)
            fields.Refuse(
                TreatmentFields.Incising,
                "nothing",
                $"{string.Join(", ", patterns)}: the case says that it is incised"
            );
        if (!isIncised && name is not null)
            fields.Refuse(TreatmentFields.Incising, name, "nothing, or incised: yes in the case");
        return name;
    }

    // The code's demand stands in place of a depth; the same depth may be written again.
    private double? DepthOf(RowFields fields)
    {
        var written = fields.Number(TreatmentFields.Depth);
        if (known?.Demand is not { } demand)
            return written;
        if (written is { } depth && (demand is not LeastDepth least || !IsSame(least.DepthMm, depth)))
            fields.Refuse(
                TreatmentFields.Depth,
                fields.Text(TreatmentFields.Depth)!,
                demand is LeastDepth one
                    ? As(TreatmentFields.Depth, one.DepthMm)
                    : "nothing: the code requires more than one depth"
            );
        return null;
    }

    private ChargePieces? PiecesOf(FactRow row, bool isOnlyRow)
    {
        var isBatch = known is not null && isOnlyRow;
        var fields = FieldsOf(row, [.. Fields.OfPieces.Where(field => !(isBatch && field == Fields.Count))]);
        var section = fields.Part(
            TreatmentFields.Section,
            text => SectionText.TryParse(text, out var section) ? section : null
        );
        if (known?.Case.Enquiry.Section is { } ofCase)
        {
            if (section is not null && section != ofCase)
                Contradiction(fields, TreatmentFields.Section, ofCase.Label);
            section = ofCase;
        }
        var lengthMm = Needed(fields, Fields.Length);
        var count = isBatch ? fields.Number(Fields.Count) ?? known!.Case.BatchSize : Needed(fields, Fields.Count);
        return section is null ? null : new(section, lengthMm, (int)count);
    }

    private ChargeReadings ReadingsOf(FactRow row, ChargeOrder order)
    {
        var fields = FieldsOf(row, Fields.OfReadings);
        var readings = new ChargeReadings
        {
            VolumeM3 = order.VolumeM3,
            TankBeforeL = Needed(fields, Fields.TankBefore),
            TankAtPeakL = fields.Number(Fields.TankAtPeak),
            VesselFreeL = fields.Number(Fields.VesselFree),
            TankAfterL = Needed(fields, Fields.TankAfter),
            TankStandardUncertaintyL = fields.Number(Fields.TankUncertainty) ?? Fields.TankUncertainty.DefaultNumber,
            WeightBeforeKg = fields.Number(Fields.WeightBefore),
            WeightAfterKg = fields.Number(Fields.WeightAfter),
            WeightStandardUncertaintyKg =
                fields.Number(Fields.WeightUncertainty) ?? Fields.WeightUncertainty.DefaultNumber,
            StrengthBeforePercent = Needed(fields, Fields.StrengthBefore),
            StrengthAfterPercent = fields.Number(Fields.StrengthAfter),
            StrengthStandardUncertaintyPercent =
                fields.Number(Fields.StrengthUncertainty) ?? Fields.StrengthUncertainty.DefaultNumber,
            SolutionDensityKgPerM3 = order.SolutionDensityKgPerM3,
            SolutionDensityStandardUncertaintyKgPerM3 =
                fields.Number(Fields.SolutionDensityUncertainty) ?? Fields.SolutionDensityUncertainty.DefaultNumber,
            VolumeStandardUncertaintyShare =
                (fields.Number(Fields.VolumeUncertainty) ?? Fields.VolumeUncertainty.DefaultNumber) / 100,
        };
        // Readings are held against each other and the timber's volume once all of it can be read.
        if (problems.Count == 0 && order.Pieces.Count > 0)
            foreach (var fault in ChargeAccount.Faults(readings))
                row.Refuse(fault);
        return readings;
    }

    // With both blocks, what the prediction says may be said again under the charge, in the same words.
    private static void RefuseOtherwise(RowFields charge, FactRow prediction)
    {
        foreach (var field in Fields.OfPrediction)
        {
            if (charge.Text(field) is not { } written)
                continue;
            var said = prediction.IsText(field.Key) ? prediction.OptionalText(field.Key) : "";
            if (!string.Equals(said, written, StringComparison.OrdinalIgnoreCase))
                charge.Refuse(
                    field,
                    written,
                    said.Length > 0
                        ? $"{said}, as under prediction, or nothing"
                        : "nothing: with both blocks it stands under prediction"
                );
        }
    }

    private RowFields FieldsOf(FactRow row, IReadOnlyList<AskedField> fields) =>
        new(row, [.. fields.Where(field => field.LeftOut == AskedField.MustBeThere && known?.Says(field) != true)]);

    // The lowest number allowed stands in for one that was refused, so that all problems are found at once.
    private static double Needed(RowFields fields, AskedField field, double? known = null) =>
        Agreed(fields, field, known) ?? field.Range!.Low;

    // One name, one value.
    private static double? Agreed(RowFields fields, AskedField field, double? known)
    {
        var written = fields.Number(field);
        if (written is { } one && known is { } other && !IsSame(one, other))
            fields.Refuse(field, fields.Text(field)!, As(field, other));
        return known ?? written;
    }

    private static void Contradiction(RowFields fields, AskedField field, string ofCase) =>
        fields.Refuse(field, fields.Text(field)!, $"{ofCase}, as the case says, or nothing");

    private static string As(AskedField field, double value) =>
        $"{InputProblem.Number(value)} {field.Range!.Unit}, as in the case, or nothing";

    private static bool IsSame(double one, double other) => Math.Abs(one - other) < 1e-9;
}
