using Alburnum.Flow.Pieces;
using Alburnum.Flow.Stepping;
using Alburnum.Timber;

namespace Alburnum.Flow.Tests.Pieces;

/// <summary>What is printed as the error of cells and steps, against what it is.</summary>
public class SectionErrorTests
{
    private static readonly StepControl Fine = new(growth: 2, cellTolerance: 1e-6, uptakeError: 5e-6);

    [Theory]
    [InlineData(1.7e-19, 200)]
    [InlineData(2e-17, 80)]
    [InlineData(2e-16, 60)]
    public void The_error_of_the_steps_is_not_above_what_is_said_of_it(double lateralM2, double sizeMm)
    {
        var question = Questions.Of(Flows.FullCell) with
        {
            Section = new RectangularSection(sizeMm, sizeMm),
            Sapwood = Questions.Even(lateralM2),
            Heartwood = Questions.Even(lateralM2),
        };
        var found = SectionRun.WithCoarser(question, 24, cancellation: TestContext.Current.CancellationToken);
        var problem = found.Mesh.Problem;
        var truth = new SectionRun(found.Mesh, Flows.Run(problem, Flows.FullCell, Fine));

        // To the digits that are printed, rounded up.
        Below(100, run => run.MeanDepthMm());
        Below(10, run => run.NetLPerM3);

        void Below(double perUnit, Func<SectionRun, double> number) =>
            Assert.InRange(
                Math.Abs(number(found) - number(truth)),
                0,
                Math.Max(1, Math.Ceiling(perUnit * found.StepError(number)!.Value)) / perUnit
            );
    }
}
