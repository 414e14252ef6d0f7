namespace Alburnum.Requirements;

/// <summary>A question about where a piece stands.</summary>
public enum ExposureQuestion
{
    /// <summary>Does it stand in salt water?</summary>
    SaltWater,

    /// <summary>Does it touch the ground or fresh water?</summary>
    GroundOrFreshWater,

    /// <summary>Is it exposed to the weather?</summary>
    Weather,

    /// <summary>Can water stay on it, in joints or on end grain?</summary>
    WaterStays,

    /// <summary>Can it get damp now and then, by leaks, spray or condensation?</summary>
    Damp,
}

/// <summary>Where a piece stands, in everyday words; null where not known.</summary>
public sealed record Exposure
{
    /// <summary>It stands in salt or brackish water.</summary>
    public bool? IsInSaltWater { get; init; }

    /// <summary>It touches the ground or fresh water.</summary>
    public bool? TouchesGroundOrFreshWater { get; init; }

    /// <summary>It is outdoors and the weather reaches it.</summary>
    public bool? IsExposedToWeather { get; init; }

    /// <summary>Water can stay on it, in its joints or on its end grain.</summary>
    public bool? LetsWaterStay { get; init; }

    /// <summary>Indoors or under a roof, it can get damp now and then.</summary>
    public bool? MayGetDamp { get; init; }

    /// <summary>A coating is applied and kept up.</summary>
    public bool? IsCoated { get; init; }

    /// <summary>It is hard to reach or replace.</summary>
    public bool? IsHardToReach { get; init; }

    /// <summary>People could be hurt if it fails.</summary>
    public bool? CouldHurtPeople { get; init; }

    /// <summary>Insects that attack dry timber and live where it stands; empty where none does, null where that is not known.</summary>
    public IReadOnlyList<Insect>? Insects { get; init; }

    /// <summary>True where one of the questions that decide the use class is answered.</summary>
    public bool SaysWhere =>
        IsInSaltWater is not null
        || TouchesGroundOrFreshWater is not null
        || IsExposedToWeather is not null
        || LetsWaterStay is not null
        || MayGetDamp is not null;

    /// <summary>The same, with what decides the use class taken from another exposure where this one does not say.</summary>
    public Exposure Or(Exposure? other) =>
        other is null
            ? this
            : this with
            {
                IsInSaltWater = IsInSaltWater ?? other.IsInSaltWater,
                TouchesGroundOrFreshWater = TouchesGroundOrFreshWater ?? other.TouchesGroundOrFreshWater,
                IsExposedToWeather = IsExposedToWeather ?? other.IsExposedToWeather,
                LetsWaterStay = LetsWaterStay ?? other.LetsWaterStay,
                MayGetDamp = MayGetDamp ?? other.MayGetDamp,
            };
}

/// <summary>The use class of a situation.</summary>
/// <param name="Classes">The class, or those still possible.</param>
/// <param name="DecidedBy">The question that decided it, or the last one answered; null where none was.</param>
/// <param name="NextQuestion">The question that narrows it down further; null where the class is settled.</param>
/// <param name="Remarks">What goes with the class: coating, reach, consequence.</param>
public sealed record UseClassAnswer(
    IReadOnlyList<UseClass> Classes,
    ExposureQuestion? DecidedBy,
    ExposureQuestion? NextQuestion,
    IReadOnlyList<UseClassRemark> Remarks
);

/// <summary>What goes with a use class without changing it.</summary>
public enum UseClassRemark
{
    /// <summary>The coating leaves the class of EN 335:2013 as it is; British practice calls it 3c.</summary>
    CoatingKeepsClass,

    /// <summary>Hard to reach or replace: the longer service life is the choice.</summary>
    ChooseLongerLife,

    /// <summary>People could be hurt: a structural engineer sets class, life and inspection.</summary>
    EngineerDecides,
}

/// <summary>From everyday questions to a use class, in the order in which EN 335 draws its lines: the wettest first.</summary>
public static class ExposureReading
{
    /// <summary>The use class, the question that decided it and what to ask next. EN 335:2013.</summary>
    public static UseClassAnswer UseClass(this Exposure exposure)
    {
        ArgumentNullException.ThrowIfNull(exposure);
        var (classes, decidedBy, next) = Classes(exposure);
        return new UseClassAnswer(classes, decidedBy, next, [.. Remarks(exposure, classes)]);
    }

    // What touches no water and stands out of the weather does not stand in the sea.
    private static bool? IsInSaltWater(Exposure exposure) =>
        exposure.IsInSaltWater
        ?? (exposure is { TouchesGroundOrFreshWater: false, IsExposedToWeather: false } ? false : null);

    private static (IReadOnlyList<UseClass> Classes, ExposureQuestion? DecidedBy, ExposureQuestion? Next) Classes(
        Exposure exposure
    )
    {
        ExposureQuestion? answered = null;
        ExposureQuestion? open = null;
        var possible = new List<UseClass>();

        // Each step: yes settles the class, no leads on, "not known" keeps the class possible and leads on.
        bool Settles(ExposureQuestion question, bool? answer, UseClass yes)
        {
            if (answer is null)
                open ??= question;
            else if (open is null)
                answered = question;
            if (answer != false)
                possible.Add(yes);
            return answer == true;
        }

        var isSettled =
            Settles(ExposureQuestion.SaltWater, IsInSaltWater(exposure), Requirements.UseClass.Five)
            || Settles(
                ExposureQuestion.GroundOrFreshWater,
                exposure.TouchesGroundOrFreshWater,
                Requirements.UseClass.Four
            );
        if (!isSettled)
        {
            if (exposure.IsExposedToWeather is null)
                open ??= ExposureQuestion.Weather;
            else if (open is null)
                answered = ExposureQuestion.Weather;
            if (exposure.IsExposedToWeather != false)
                Either(
                    ExposureQuestion.WaterStays,
                    exposure.LetsWaterStay,
                    Requirements.UseClass.ThreeTwo,
                    Requirements.UseClass.ThreeOne
                );
            if (exposure.IsExposedToWeather != true)
                Either(
                    ExposureQuestion.Damp,
                    exposure.MayGetDamp,
                    Requirements.UseClass.Two,
                    Requirements.UseClass.One
                );
        }
        possible.Sort();
        return (possible, answered, open);

        void Either(ExposureQuestion question, bool? answer, UseClass yes, UseClass no)
        {
            if (!Settles(question, answer, yes))
                possible.Add(no);
        }
    }

    private static IEnumerable<UseClassRemark> Remarks(Exposure exposure, IReadOnlyList<UseClass> classes)
    {
        var isOutdoors = classes.Any(each => each is Requirements.UseClass.ThreeOne or Requirements.UseClass.ThreeTwo);
        if (isOutdoors && exposure.IsCoated == true)
            yield return UseClassRemark.CoatingKeepsClass;
        if (exposure.IsHardToReach == true)
            yield return UseClassRemark.ChooseLongerLife;
        if (exposure.CouldHurtPeople == true)
            yield return UseClassRemark.EngineerDecides;
    }
}
