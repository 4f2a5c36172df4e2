using System.Globalization;
using Trundle.Engine.Balance;
using Trundle.Measures;
using Trundle.Visits.Files.Spin;

namespace Trundle.Visits.Files;

/// <summary>Trial-mass runs as read.</summary>
/// <param name="Runs">The initial run first.</param>
/// <param name="TrialKeptOn">Each trial stays on for all later runs.</param>
/// <param name="WithPhase">Every reading has a phase; else none has.</param>
/// <param name="Recorded">What was found where a reading is a recording.</param>
/// <param name="Unit">The meter's unit, or empty where nobody said.</param>
/// <param name="Rotor">What tells how large a first trial mass may be; null where nobody asks.</param>
internal sealed record TrialFile(IReadOnlyList<TrialRun> Runs, bool TrialKeptOn, bool WithPhase, IReadOnlyList<RecordedReading> Recorded, string Unit, TrialRotor? Rotor);

/// <summary>What a trial mass goes on.</summary>
/// <param name="Carried">The mass that the bearing beside the plane carries.</param>
/// <param name="Speed">The speed of the runs.</param>
/// <param name="Radius">Where the trial mass sits.</param>
internal sealed record TrialRotor(Mass Carried, RotationalSpeed Speed, Length Radius);

/// <summary>Reads the file of <c>balance trial</c>.</summary>
internal static class BalanceTrialReader
{
    private const int MostRuns = 200;
    private const int MostPoints = 200;
    private const int MostOfAUnit = 12;
    private static readonly Angle LeastAngle = Angle.FromDegrees(-720);
    private static readonly Angle MostAngle = Angle.FromDegrees(720);

    /// <summary>Reads a file's root; null where a problem was added.</summary>
    public static TrialFile? Read(FileNode root, List<Problem> problems)
    {
        var o = new FileObject(root, problems);
        var points = o.Whole("points", 1, MostPoints);
        var keptOn = o.Flag("trialKeptOn") ?? false;
        var unit = o.Text("unit") ?? "";
        if (unit.Length > MostOfAUnit)
        {
            o.Wrong("unit", "too-long", $"The meter's unit has at most {MostOfAUnit.ToString(CultureInfo.InvariantCulture)} characters, for example mm/s.");
        }

        var step = o.Number("displayStep", 0);
        var rotor = o.Object("rotor") is { } r ? ReadRotor(r) : null;
        var runs = new List<TrialRun>();
        var paths = new List<string>();
        var recordings = new TrialRecordings(o);
        if (o.Has("recording"))
        {
            o.Wrong("recording", "runs-needed", "One recording is one run; list the initial run and the trial runs in a JSON file, each reading with its recording.");
            return null;
        }

        // Before the first run only the size of its mass can be asked.
        if (rotor is not null && !o.Has("runs"))
        {
            recordings.Done();
            o.Done();
            return problems.Count > 0 ? null : new TrialFile([], keptOn, false, [], unit, rotor);
        }

        if (o.Require("runs", "list the initial run and then the trial runs"))
        {
            foreach (var run in o.Objects("runs").Take(MostRuns + 1))
            {
                paths.Add(run.Path);
                runs.Add(ReadRun(run, runs.Count, recordings));
            }
        }

        recordings.Done();
        o.Done();
        if (problems.Count == 0 && runs.Count > MostRuns)
        {
            o.Wrong("runs", "too-many", $"More than {MostRuns.ToString(CultureInfo.InvariantCulture)} runs are not read; give those that count.");
        }

        if (problems.Count > 0 || !CountsAgree(o, runs, paths, points))
        {
            return null;
        }

        var phases = PhasesAgree(runs, paths, problems);
        if (phases is not { } withPhase || !(withPhase ? PlanesAreTried(o, runs, paths) : CirclesCanMeet(o, runs, paths, keptOn)))
        {
            return null;
        }

        return new TrialFile(ReadTo(root, runs, step), keptOn, withPhase, recordings.Found, unit, rotor);
    }

    private static TrialRotor? ReadRotor(FileObject o)
    {
        var carried = o.Require("mass", "give the mass that the bearing beside the plane carries, for example \"20 kg\"") ? o.Quantity<Mass>("mass", "kg", Mass.FromGrams(100), Mass.FromKilograms(100_000)) : null;
        var speed = o.Require("speed", "give the speed of the runs, for example \"850 r/min\"") ? o.Quantity<RotationalSpeed>("speed", "r/min", RotationalSpeed.FromRevolutionsPerMinute(10), RotationalSpeed.FromRevolutionsPerMinute(100_000)) : null;
        var radius = o.Require("radius", "say how far from the axis the trial mass sits, for example \"200 mm\"") ? o.Quantity<Length>("radius", "mm", Length.FromMillimetres(5), Length.FromMillimetres(5000)) : null;
        o.Done();
        return carried is { } m && speed is { } s && radius is { } r ? new TrialRotor(m, s, r) : null;
    }

    /// <summary>
    /// Each typed amplitude with the error of a display that rounds to a step, which is even within half of it to either side: the step that is told,
    /// else that of the finest digits typed for the point. A recording's reading has an error of its own.
    /// </summary>
    private static List<TrialRun> ReadTo(FileNode root, List<TrialRun> runs, double? told)
    {
        FileNode?[][] typed = [.. root.Member("runs")!.Items.Select(r => r.Member("vibration")!.Items.Select(v => v.Member("amplitude")).ToArray())];
        double?[] steps = [.. runs[0].Vibration.Select((_, p) => told ?? typed.Min(r => r[p] is { } amplitude ? TypedDigits.NumberStep(amplitude.Text) : null))];
        return [.. runs.Select((run, r) => run with
        {
            Vibration = [.. run.Vibration.Select((v, p) => typed[r][p] is not null && steps[p] is { } step ? v with { ReadTo = step / Math.Sqrt(12) } : v)],
        })];
    }

    private static TrialRun ReadRun(FileObject o, int before, TrialRecordings recordings)
    {
        var first = before == 0;
        PlaneMass? trial = null;
        if (first && o.Has("trial"))
        {
            o.Wrong("trial", "trial-in-initial-run", "The first run is the initial one, with no trial mass on; list it without 'trial'.");
        }
        else if (!first && o.Require("trial", "say which mass this run added, for example {\"plane\": 1, \"mass\": \"10 g\", \"angle\": 0}") && o.Object("trial") is { } t)
        {
            trial = ReadTrial(t);
        }

        var vibration = new List<VibrationReading>();
        if (o.Require("vibration", "list one reading for each measuring point"))
        {
            vibration.AddRange(o.Objects("vibration").Take(MostPoints + 1).Select((v, i) => ReadVibration(v, before + 1, i + 1, recordings)).OfType<VibrationReading>());
        }

        o.Done();
        return new TrialRun(trial, vibration);
    }

    private static PlaneMass? ReadTrial(FileObject o)
    {
        var plane = o.Require("plane", "planes are numbers from 1") ? o.Whole("plane", 1, 20) : null;
        var mass = o.Require("mass", "give the trial mass, for example \"10 g\"")
            ? o.Quantity<Mass>("mass", "g", Mass.FromGrams(0), Mass.FromKilograms(1000))
            : null;
        var angle = o.Require("angle", "give the trial mass's angle in degrees, in the sense of the phases")
            ? o.Quantity<Angle>("angle", "°", LeastAngle, MostAngle)
            : null;
        o.Done();
        if (mass is { Si: 0 })
        {
            o.Wrong("mass", "out-of-range", "A trial mass of nothing tells nothing; give what was put on.");
        }

        return plane is { } p && mass is { } m && angle is { } a ? new PlaneMass(p, m, a) : null;
    }

    private static VibrationReading? ReadVibration(FileObject o, int run, int point, TrialRecordings recordings)
    {
        if (o.Has("recording"))
        {
            var recorded = recordings.Read(o, run, point);
            o.Done();
            return recorded;
        }

        var amplitude = o.Require("amplitude", "give the once-per-turn vibration as a number, or a 'recording'") ? o.Number("amplitude", 0) : null;
        var phase = o.Quantity<Angle>("phase", "°", LeastAngle, MostAngle);
        o.Done();
        return amplitude is { } a ? new VibrationReading(a, phase) : null;
    }

    private static bool CountsAgree(FileObject o, List<TrialRun> runs, List<string> paths, int? points)
    {
        if (runs.Count < 2)
        {
            o.Wrong("runs", "too-few-runs", "There should be an initial run and at least one trial run.");
            return false;
        }

        var expected = points ?? runs[0].Vibration.Count;
        for (var r = 0; r < runs.Count; r++)
        {
            if (runs[r].Vibration.Count != expected || expected == 0)
            {
                o.Problems.Add(new Problem($"{paths[r]}.vibration", "points-differ", string.Create(CultureInfo.InvariantCulture,
                    $"This run has {runs[r].Vibration.Count} readings; there should be one for each of the {Math.Max(expected, 1)} measuring points.")));
                return false;
            }
        }

        return true;
    }

    /// <summary>True where every reading has a phase, false where none has, null where a problem was added.</summary>
    private static bool? PhasesAgree(List<TrialRun> runs, List<string> paths, List<Problem> problems)
    {
        var any = runs.Any(r => r.Vibration.Any(v => v.Phase is not null));
        for (var r = 0; any && r < runs.Count; r++)
        {
            for (var p = 0; p < runs[r].Vibration.Count; p++)
            {
                // A point that stands still has no phase to give.
                if (runs[r].Vibration[p] is { Phase: null, Amplitude: > 0 })
                {
                    problems.Add(new Problem(string.Create(CultureInfo.InvariantCulture, $"{paths[r]}.vibration[{p}].phase"), "missing",
                        "'phase' is missing here while other readings have one; give it in all of them or in none."));
                    return null;
                }
            }
        }

        return any;
    }

    private static bool PlanesAreTried(FileObject o, List<TrialRun> runs, List<string> paths)
    {
        var planes = runs.Max(r => r.Trial?.Plane ?? 0);
        for (var plane = 1; plane <= planes; plane++)
        {
            if (runs.All(r => r.Trial?.Plane != plane))
            {
                o.Wrong("runs", "plane-without-trial", string.Create(CultureInfo.InvariantCulture,
                    $"Plane {plane} has no trial run; each plane from 1 to {planes} needs one. A file with one plane numbers it 1."));
                return false;
            }
        }

        var points = runs[0].Vibration.Count;
        if (points < planes)
        {
            o.Problems.Add(new Problem($"{paths[0]}.vibration", "too-few-points", string.Create(CultureInfo.InvariantCulture,
                $"{planes} planes need at least {planes} measuring points; there {(points == 1 ? "is 1" : $"are {points}")}.")));
            return false;
        }

        return true;
    }

    private static bool CirclesCanMeet(FileObject o, List<TrialRun> runs, List<string> paths, bool keptOn)
    {
        for (var r = 1; r < runs.Count; r++)
        {
            if (runs[r].Trial!.Plane != 1)
            {
                o.Problems.Add(new Problem($"{paths[r]}.trial.plane", "phase-needed", "Without phases only one plane can be balanced, number 1; more planes need the phase in every reading."));
                return false;
            }

            if (Math.Abs((runs[r].Trial!.Mass / runs[1].Trial!.Mass) - 1) > 1e-9)
            {
                o.Problems.Add(new Problem($"{paths[r]}.trial.mass", "trial-masses-differ", "Without phases every trial run uses the same mass, at different angles."));
                return false;
            }
        }

        var places = runs.Skip(1).Select(r => WheelAngle.FromDegrees(r.Trial!.Angle.Degrees)).ToList();
        var different = places.Where((a, i) => places.Take(i).All(b => Math.Abs((a - b).Degrees) > 1e-6)).Count();
        if (different < 3)
        {
            o.Wrong("runs", "too-few-runs", string.Create(CultureInfo.InvariantCulture,
                $"Without phases there should be an initial run and at least three trial runs at different angles; there {(different == 1 ? "is 1" : $"are {different}")}."));
            return false;
        }

        if (keptOn && !StatesDiffer(places))
        {
            o.Wrong("trialKeptOn", "runs-too-alike", "With each trial mass kept on, fewer than three of these runs differ in what was on; without phases take each trial mass off before the next run.");
            return false;
        }

        return true;
    }

    /// <summary>True where masses that gather from run to run make at least three different sums that are not all in one line with none.</summary>
    private static bool StatesDiffer(List<WheelAngle> places)
    {
        var states = new List<(double X, double Y)>();
        var (x, y) = (0.0, 0.0);
        foreach (var place in places)
        {
            (x, y) = (x + Math.Cos(place.Radians), y + Math.Sin(place.Radians));
            if (Math.Sqrt((x * x) + (y * y)) > 1e-6 && states.All(s => Math.Abs(s.X - x) + Math.Abs(s.Y - y) > 1e-6))
            {
                states.Add((x, y));
            }
        }

        return states.Count >= 3 && states.Any(s => Math.Abs((s.X * states[0].Y) - (s.Y * states[0].X)) > 1e-6);
    }
}
