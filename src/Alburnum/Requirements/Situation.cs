using System.Runtime.CompilerServices;
using Alburnum.Timber;

namespace Alburnum.Requirements;

/// <summary>An enquiry laid out field by field, as the rows of one rulebook read it.</summary>
internal sealed class Situation
{
    private static readonly Known Sawn = Known.Word("sawn");
    private static readonly Known Round = Known.Word("round");
    private static readonly Known NoneNamed = Known.OneOfThese([]);

    private Fields _known;

    /// <summary>A situation of which nothing is known yet.</summary>
    public Situation() { }

    public Situation(Enquiry enquiry, IReadOnlyList<string>? speciesGroups)
    {
        // A name that no code here speaks of is known all the same: no row of another component may hold.
        _known[(int)Field.Component] = (enquiry.Component?.Name ?? enquiry.CalledAs?.Name) is { } component
            ? Known.Word(component)
            : default;
        _known[(int)Field.Form] = enquiry.FormOrFromSection switch
        {
            TimberForm.Sawn => Sawn,
            TimberForm.Round => Round,
            _ => default,
        };
        _known[(int)Field.SpeciesGroup] = speciesGroups is null ? default : Known.AllOfThese(speciesGroups);
        _known[(int)Field.SapwoodTreatability] = Classes(enquiry.Species?.SapwoodTreatability);
        _known[(int)Field.HeartwoodTreatability] = Classes(enquiry.Species?.HeartwoodTreatability);
        _known[(int)Field.Durability] = Classes(enquiry.Species?.Durability);
        _known[(int)Field.ExposedHeartwood] = Known.YesNo(enquiry.HasExposedHeartwood);
        _known[(int)Field.Incised] = Known.YesNo(enquiry.IsIncised);
        _known[(int)Field.Thickness] = Known.Number(enquiry.Section?.ThicknessMm);
        _known[(int)Field.Moisture] = Known.Number(enquiry.MoisturePercent);
        // A class that nobody stated is not an unknown: the enquiry is then answered from the use.
        _known[(int)Field.StatedClass] = enquiry.StatedClass is { } stated ? Known.Word(stated) : NoneNamed;
        _known[(int)Field.Preservative] = Codes(enquiry);
        _known[(int)Field.Insects] = enquiry.Exposure.Insects is { } insects
            ? Known.AllOfThese([.. insects.Select(insect => insect.Name)])
            : default;
        _known[(int)Field.GroundContact] = Known.YesNo(enquiry.TouchesGround);
        SetUse(enquiry.UseClasses, enquiry.Exposure.IsCoated);
        SetLife(enquiry.Life);
    }

    public Known this[Field field] => _known[(int)field];

    public void Set(Field field, Known value) => _known[(int)field] = value;

    public void SetUse(IReadOnlyList<UseClass> classes, bool? isCoated)
    {
        _known[(int)Field.UseClass] = classes.Count switch
        {
            0 => default,
            1 => Known.Word(classes[0].Label()),
            _ => Known.OneOfThese([.. classes.Select(each => each.Label())]),
        };
        _known[(int)Field.Coated] = Known.YesNo(isCoated);
    }

    public void SetLife(DesiredServiceLife? life) => _known[(int)Field.Life] = Known.Number(life?.Years);

    // A kind that several codes share is one of them, which one is open.
    private static Known Codes(Enquiry enquiry) =>
        enquiry switch
        {
            { Preservative: null, IsOtherPreservative: true } => NoneNamed,
            { Preservative: null } => default,
            { PreservativeKind.Codes: { Count: > 1 } codes }
                when enquiry.Preservative == enquiry.PreservativeKind.Name => Known.OneOfThese(codes),
            _ => Known.Word(enquiry.Preservative),
        };

    private static Known Classes(Fact<ClassRange>? cell) =>
        cell is null ? default : Known.Number(cell.Value.Low, cell.Value.High);

    [InlineArray(17)]
    private struct Fields
    {
        private Known _first;
    }
}
