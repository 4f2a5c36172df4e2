using System.Globalization;
using System.Numerics;
using Trundle.Engine.Balance;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Pictures;

namespace Trundle.Visits.Operations;

/// <summary>The drawings that belong to the answer of <c>balance trial</c>: the circles of runs without phase, else each point's vectors.</summary>
public static class TrialDrawing
{
    /// <summary>One drawing a measuring point; none where the file cannot be answered.</summary>
    public static IReadOnlyList<Drawing> Of(FileNode body)
    {
        ArgumentNullException.ThrowIfNull(body);
        var problems = new List<Problem>();
        if (BalanceTrialReader.Read(body, problems) is not { } file || problems.Count > 0 || file.Runs.Count == 0)
        {
            return [];
        }

        var solution = BalanceTrialOperation.Solve(file);
        return [.. Enumerable.Range(0, file.Runs[0].Vibration.Count).Select(point =>
        {
            var name = string.Create(CultureInfo.InvariantCulture, $"point {point + 1}");
            return file.WithPhase
                ? new Drawing(name, VectorPolar.Draw($"trial-{point}", Vectors(file, solution, point, name)))
                : Circles(file, solution, point) is { } circles ? new Drawing(name, TrialCircles.Draw($"trial-{point}", circles)) : null;
        }).OfType<Drawing>()];
    }

    private static VectorView Vectors(TrialFile file, TrialSolution solution, int point, string name) => new(
        $"Vibration at {name}",
        "0°",
        file.Unit,
        [
            .. file.Runs.Select((run, i) => new NumberVector(
                string.Create(CultureInfo.InvariantCulture, $"run {i + 1}"), run.Vibration[point].Amplitude, run.Vibration[point].Phase ?? default, i == 0 ? VectorLook.First : VectorLook.Between)
            {
                Mark = (i + 1).ToString(CultureInfo.InvariantCulture),
            }),
            new NumberVector("left by the correction", solution.ResidualVibration[point].Amplitude, solution.ResidualVibration[point].Phase ?? default, VectorLook.Left),
        ]);

    /// <summary>
    /// All in amplitudes of the initial run: a trial of mass m at an angle has its centre there, at the initial amplitude; one whose masses gathered to
    /// another mass is brought to m by that ratio. The circles meet as far out as m's own effect, in the correction's direction.
    /// </summary>
    private static TrialView? Circles(TrialFile file, TrialSolution solution, int point)
    {
        var initial = file.Runs[0].Vibration[point].Amplitude;
        var correction = solution.Corrections[0];
        if (!(initial > 0) || correction.Mass.Si <= 0 || solution.Circles is not { } check)
        {
            return null;
        }

        var mass = file.Runs[1].Trial!.Mass.Grams;
        var circles = new List<TrialCircle>();
        var on = Complex.Zero;
        for (var r = 1; r < file.Runs.Count; r++)
        {
            var added = Complex.FromPolarCoordinates(file.Runs[r].Trial!.Mass.Grams, file.Runs[r].Trial!.Angle.Radians);
            on = file.TrialKeptOn ? on + added : added;
            if (on.Magnitude > mass * 1e-6)
            {
                var ratio = mass / on.Magnitude;
                circles.Add(new TrialCircle(r + 1, Angle.FromRadians(on.Phase), initial * ratio, file.Runs[r].Vibration[point].Amplitude * ratio, check.Run == r + 1));
            }
        }

        var meet = initial * mass / correction.Mass.Grams;
        return new TrialView(
            string.Create(CultureInfo.InvariantCulture, $"Circles of the trial runs at point {point + 1}"),
            initial, circles, (meet, correction.Angle), $"{correction.Mass.Text("g", 1)} at {VectorPolar.Degrees(correction.Angle)}", file.Unit)
        {
            Error = check.Error is { Turn: { } angle } error ? (meet * (error.Along / correction.Mass), meet * angle.Radians) : null,
        };
    }
}
