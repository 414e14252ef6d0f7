using Alburnum.Requirements;
using CsCheck;

namespace Alburnum.Tests.Requirements;

public sealed class ExposureTests
{
    private static readonly Gen<bool?> Answers = Gen.Int[0, 2]
        .Select(index => new bool?[] { null, true, false }[index]);

    private static readonly Gen<Exposure> Exposures = Answers.Array[5].Select(each => Exposed(each));

    [Fact]
    public void The_possible_classes_are_those_of_every_way_to_answer_the_open_questions() =>
        Exposures.Sample(exposure =>
        {
            var answer = exposure.UseClass();
            var expected = Completions(exposure).SelectMany(each => each.UseClass().Classes).Distinct().Order();
            return answer.Classes.SequenceEqual(expected)
                && (answer.NextQuestion is null) == (answer.Classes.Count == 1 && !IsOpenYet(exposure));
        });

    [Fact]
    public void With_every_question_answered_there_is_one_class_and_the_question_that_decided_it() =>
        Gen
            .Bool.Array[5]
            .Sample(each =>
            {
                var answer = Exposed([.. each.Select(value => (bool?)value)]).UseClass();
                return answer is { Classes.Count: 1, DecidedBy: not null, NextQuestion: null };
            });

    [Fact]
    public void The_first_open_question_is_asked_next()
    {
        var answer = new Exposure { IsInSaltWater = false, TouchesGroundOrFreshWater = false }.UseClass();
        Assert.Equal(ExposureQuestion.Weather, answer.NextQuestion);
        Assert.Equal(ExposureQuestion.GroundOrFreshWater, answer.DecidedBy);
    }

    [Fact]
    public void What_touches_no_water_and_stands_out_of_the_weather_is_not_asked_after_the_sea()
    {
        var answer = new Exposure { TouchesGroundOrFreshWater = false, IsExposedToWeather = false }.UseClass();
        Assert.Equal(ExposureQuestion.Damp, answer.NextQuestion);
        Assert.Equal([UseClass.One, UseClass.Two], answer.Classes);
    }

    [Fact]
    public void People_at_risk_bring_in_an_engineer()
    {
        var answer = new Exposure { CouldHurtPeople = true }.UseClass();
        Assert.Contains(UseClassRemark.EngineerDecides, answer.Remarks);
    }

    // A question may stay open although only one class is left, when both of its answers lead there.
    private static bool IsOpenYet(Exposure exposure) =>
        Completions(exposure).Select(each => each.UseClass().Classes[0]).Distinct().Count() == 1
        && exposure.UseClass().NextQuestion is not null;

    private static IEnumerable<Exposure> Completions(Exposure exposure)
    {
        bool?[] answers =
        [
            exposure.IsInSaltWater,
            exposure.TouchesGroundOrFreshWater,
            exposure.IsExposedToWeather,
            exposure.LetsWaterStay,
            exposure.MayGetDamp,
        ];
        var open = Enumerable.Range(0, 5).Where(index => answers[index] is null).ToList();
        for (var bits = 0; bits < 1 << open.Count; bits++)
        {
            var full = (bool?[])answers.Clone();
            for (var at = 0; at < open.Count; at++)
                full[open[at]] = (bits & (1 << at)) != 0;
            // What touches no water and stands out of the weather does not stand in the sea, unless somebody says so.
            var isInSeaByDefault =
                exposure is { IsInSaltWater: null, TouchesGroundOrFreshWater: false, IsExposedToWeather: false }
                && full[0] == true;
            if (!isInSeaByDefault)
                yield return Exposed(full);
        }
    }

    private static Exposure Exposed(bool?[] answers) =>
        new()
        {
            IsInSaltWater = answers[0],
            TouchesGroundOrFreshWater = answers[1],
            IsExposedToWeather = answers[2],
            LetsWaterStay = answers[3],
            MayGetDamp = answers[4],
        };
}
