using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Outline;

/// <summary>The closed path around a rim that gathers most: a shortest path in its own polar coordinates.</summary>
internal static class RimPath
{
    /// <summary>The path.</summary>
    /// <param name="stations">Places around the rim.</param>
    /// <param name="steps">Steps across it, from within to without.</param>
    /// <param name="gain">What a step gathers at a place.</param>
    /// <param name="freeSteps">Steps aside from one place to the next that cost nothing.</param>
    /// <param name="costPerStep">What each step beyond costs.</param>
    /// <returns>The step at each place.</returns>
    public static int[] Along(int stations, int steps, Func<int, int, float> gain, int freeSteps, float costPerStep)
    {
        // A depth gathers all evidence above it: each step adds what it gathers more than the one before.
        var evidence = new float[stations * (steps - 1)];
        var reach = new int[stations];
        for (var i = 0; i < stations; i++)
        {
            reach[i] = steps - 1;
            var before = gain(i, 0);
            for (var k = 1; k < steps; k++)
            {
                var here = gain(i, k);
                evidence[(i * (steps - 1)) + k - 1] = here - before;
                before = here;
            }
        }
        return DepthPath.Find(evidence, steps - 1, reach, closed: true, new SlopeCost(freeSteps, costPerStep));
    }
}
