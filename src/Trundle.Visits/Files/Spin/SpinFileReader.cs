using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Engine.Balance;
using Trundle.Engine.Balance.Spin;
using Trundle.Measures;

namespace Trundle.Visits.Files.Spin;

/// <summary>One spin as read.</summary>
/// <param name="Recording">Its signals.</param>
/// <param name="Harmonics">How many harmonics to fit.</param>
/// <param name="Calibration">The machine, or null where it is not calibrated.</param>
/// <param name="Planes">The planes to tell the unbalance in, or null for the calibration's own.</param>
/// <param name="Valve">Where the wheel's valve stands on the shaft, from the calibration's zero.</param>
/// <param name="PerPlane">What may be left in each plane, as a mass at its radius; null where it is not told.</param>
internal sealed record SpinFile(SpinRecording Recording, int Harmonics, SpinCalibration? Calibration, PlanePair? Planes, WheelAngle Valve, Mass? PerPlane);

/// <summary>Spins with known masses as read.</summary>
/// <param name="Planes">Where the masses sit.</param>
/// <param name="Sense">The senses of turning and of phases.</param>
/// <param name="Spins">Each spin: what was added, and its recording or its readings with their speed.</param>
/// <param name="Harmonics">How many harmonics to fit.</param>
internal sealed record CalibrationFile(PlanePair Planes, SpinSense Sense, IReadOnlyList<CalibrationEntry> Spins, int Harmonics);

/// <summary>One spin of a calibration file.</summary>
internal sealed record CalibrationEntry(string Path, UnbalancePair Added, SpinRecording? Recording, RotationalSpeed? Speed, IReadOnlyList<VibrationReading> Points);

/// <summary>Reads the files of <c>balance capture</c> and <c>balance calibrate</c>.</summary>
internal static class SpinFileReader
{
    private const int MostSpins = 100;
    private static readonly (string, RotationSense)[] RotationWords = [("clockwise", RotationSense.Clockwise), ("anticlockwise", RotationSense.Anticlockwise), ("counterclockwise", RotationSense.Anticlockwise)];
    private static readonly (string, PhaseSense)[] PhaseWords = [("lag", PhaseSense.Lag), ("lead", PhaseSense.Lead)];

    /// <summary>What belongs to every recording of a file; a CSV's notes say it where the file does not.</summary>
    private sealed record Settings(RotationSense? Rotation, PhaseSense? Phases, Frequency? SampleRate, IndexEdge? Edge, double? FullScale)
    {
        public SpinSense? Sense => Rotation is { } r && Phases is { } p ? new SpinSense(r, p) : null;

        public Settings Or(Settings other) =>
            new(Rotation ?? other.Rotation, Phases ?? other.Phases, SampleRate ?? other.SampleRate, Edge ?? other.Edge, FullScale ?? other.FullScale);

        public bool Gainsays(Settings other) => (Rotation is not null && other.Rotation is not null && Rotation != other.Rotation) || (Phases is not null && other.Phases is not null && Phases != other.Phases);
    }

    /// <summary>Reads one spin; null where a problem was added.</summary>
    public static SpinFile? Read(FileNode root, List<Problem> problems)
    {
        var o = new FileObject(root, problems);
        var settings = ReadSettings(o);
        var harmonics = o.Whole("harmonics", 1, 10) ?? SpinAnalysis.UsualHarmonics;
        var planes = o.Object("planes") is { } p ? CalibrationReader.ReadPlanes(p) : null;
        var calibration = o.Object("calibration") is { } c ? CalibrationReader.Read(c) : null;
        var valve = o.Quantity<Angle>("valve", "°", Angle.FromDegrees(-360), Angle.FromDegrees(360));
        var perPlane = ReadTolerance(o);
        var recording = ReadRecording(o, settings);
        o.Done();
        if (problems.Count > 0 || recording is null)
        {
            return null;
        }

        if (calibration is not null && calibration.Sense.Rotation != recording.Sense.Rotation)
        {
            o.Wrong("calibration", "other-rotation", "The calibration was made with the wheel turning the other way; it serves this way only when it is made anew.");
            return null;
        }

        return new SpinFile(recording, harmonics, calibration, planes, WheelAngle.FromDegrees(valve?.Degrees ?? 0), perPlane);
    }

    /// <summary>A spin is held against a mass in each plane alone: it knows no mass of the assembly, which a grade would need.</summary>
    private static Mass? ReadTolerance(FileObject o)
    {
        if (o.Object("tolerance") is not { } tolerance)
        {
            return null;
        }

        var mass = tolerance.Require("perPlane", "what may be left in each plane, for example \"5 g\"") ? tolerance.Quantity<Mass>("perPlane", "g", Mass.FromGrams(0.01), Mass.FromKilograms(10)) : null;
        tolerance.Done();
        return mass;
    }

    /// <summary>Reads the spins of a calibration; null where a problem was added.</summary>
    public static CalibrationFile? ReadCalibrationSpins(FileNode root, List<Problem> problems)
    {
        var o = new FileObject(root, problems);
        var settings = ReadSettings(o);
        if (settings.Sense is null && problems.Count == 0)
        {
            AskForSense(o, settings);
        }

        var harmonics = o.Whole("harmonics", 1, 10) ?? SpinAnalysis.UsualHarmonics;
        var planes = o.Require("planes", "say where the masses sit: {\"inner\": {\"radius\": \"200 mm\", \"axial\": \"0 mm\"}, \"outer\": {…}}") && o.Object("planes") is { } p ? CalibrationReader.ReadPlanes(p) : null;
        var radii = new Engine.Balance.Machine.MachineSpins { InnerRadius = planes?.Inner.Radius ?? default, OuterRadius = planes?.Outer.Radius ?? default };
        var spins = new List<CalibrationEntry>();
        if (o.Require("spins", "list the spins: one plain, and at least one with a known mass in each plane"))
        {
            foreach (var spin in o.Objects("spins").Take(MostSpins))
            {
                // The plain spin may say so with an empty list, or with no list at all.
                var added = spin.Items("added").Count > 0 ? MachineFileReader.ReadAdded(spin, radii) ?? default : default;
                SpinRecording? recording = null;
                RotationalSpeed? speed = null;
                List<VibrationReading> points = [];
                if (spin.Has("points"))
                {
                    speed = spin.Require("speed", "readings without a recording need their speed, for example \"180 r/min\"") ? spin.Quantity<RotationalSpeed>("speed", "r/min", RotationalSpeed.FromRevolutionsPerMinute(1), RotationalSpeed.FromRevolutionsPerMinute(10_000)) : null;
                    points = ReadPoints(spin);
                }
                else
                {
                    recording = ReadRecording(spin, settings);
                }

                spin.Done();
                spins.Add(new CalibrationEntry(spin.Path, added, recording, speed, points));
            }
        }

        o.Done();
        return problems.Count == 0 && planes is not null && settings.Sense is { } sense ? new CalibrationFile(planes, sense, spins, harmonics) : null;
    }

    private static List<VibrationReading> ReadPoints(FileObject spin)
    {
        var points = new List<VibrationReading>();
        foreach (var point in spin.Objects("points"))
        {
            var amplitude = point.Require("amplitude", "the once-per-turn reading of this transducer") ? point.Number("amplitude", 0) : null;
            var phase = point.Require("phase", "its phase in degrees, in the file's sense") ? point.Quantity<Angle>("phase", "°", Angle.FromDegrees(-720), Angle.FromDegrees(720)) : null;
            point.Done();
            if (amplitude is { } a && phase is { } p)
            {
                points.Add(new VibrationReading(a, p));
            }
        }

        if (spin.Items("points").Count != 2)
        {
            spin.Wrong("points", "points-differ", "There are two transducers; give two readings, the inner one first.");
        }

        return points;
    }

    private static Settings ReadSettings(FileObject o) => new(
        o.Word("rotation", RotationWords),
        o.Word("phases", PhaseWords),
        o.Quantity<Frequency>("sampleRate", "Hz", Frequency.FromHertz(1), Frequency.FromHertz(10e6)),
        o.Word("indexEdge", ("rising", IndexEdge.Rising), ("falling", IndexEdge.Falling)),
        o.Number("fullScale", 1e-9, 1e9));

    private static void AskForSense(FileObject o, Settings known)
    {
        if (known.Rotation is null)
        {
            o.Require("rotation", "say which way the wheel turns as seen from its outer face: \"clockwise\" or \"anticlockwise\"");
        }

        if (known.Phases is null)
        {
            o.Require("phases", "say whether phases \"lag\" (the crest comes so many degrees behind the index mark) or \"lead\"");
        }
    }

    private static SpinRecording? ReadRecording(FileObject holder, Settings settings)
    {
        if (!holder.Require("recording", "give the samples: {\"first\": […], \"second\": […], \"index\": […]}, {\"csv\": \"…\"} or {\"wav\": \"…\"}") || holder.Object("recording") is not { } o)
        {
            return null;
        }

        var forms = new[] { "file", "csv", "wav", "first" }.Where(o.Has).ToList();
        if (forms.Count != 1)
        {
            o.Problems.Add(new Problem(o.Path, forms.Count == 0 ? "missing" : "recording-twice", "Give the samples in one form: 'first', 'second' and 'index' as lists of numbers, or 'csv', or 'wav' in base 64, or for the command the name of a 'file'."));
            o.Knows("file", "csv", "wav", "first", "second", "index", "name", "columns", "channels");
            return null;
        }

        if (forms[0] == "file")
        {
            o.Wrong("file", "file-not-here", "Only the command reads a file by its name, from beside the file that names it; send its content as 'csv', or as 'wav' in base 64.");
            return null;
        }

        var name = o.Text("name");
        var samples = forms[0] switch
        {
            "csv" => RecordingForms.OfCsv(o, name),
            "wav" => RecordingForms.OfWav(o, name),
            _ => RecordingForms.Inline(o),
        };
        o.Done();
        if (samples is null)
        {
            return null;
        }

        var notes = new FileObject(FileNode.OfObject([.. samples.Notes.Select(n => (n.Key, FileNode.OfText(n.Value)))]), o.Problems);
        var noted = ReadSettings(notes);
        notes.Done();
        if (settings.Gainsays(noted))
        {
            holder.Wrong("recording", "senses-differ", "The recording's own notes name another rotation or sense of phases than is given here; one of them is wrong.");
        }

        var all = settings.Or(noted);
        if (all.Sense is null && o.Problems.Count == 0)
        {
            AskForSense(holder, all);
        }

        return Checked(holder, o, samples, all);
    }

    private static SpinRecording? Checked(FileObject holder, FileObject o, RecordingSamples samples, Settings settings)
    {
        var rate = samples.SampleRate ?? settings.SampleRate;
        if (rate is null)
        {
            holder.Require("sampleRate", "say how many samples there are in a second, for example \"2 kHz\"; a CSV may have a column time_s instead");
        }
        else if (samples.SampleRate is { } told && settings.SampleRate is { } said && Math.Abs((told / said) - 1) > 0.01)
        {
            holder.Wrong("sampleRate", "sample-rate-differs", string.Create(CultureInfo.InvariantCulture, $"{said} is given and the recording itself says {told}; leave one out."));
        }

        if (samples.Index.Length < SpinRecording.LeastSamples)
        {
            o.Problems.Add(new Problem(o.Path, "too-few-samples", string.Create(CultureInfo.InvariantCulture, $"There are {samples.Index.Length} samples; a few turns take some hundreds.")));
        }

        // Whole-number samples are parts of the scale: what its end stands for makes readings of them.
        var scale = samples.FullScale is not null ? settings.FullScale ?? 1 : 1;
        return o.Problems.Count == 0 && rate is { } r && settings.Sense is { } sense
            ? new SpinRecording([Scaled(samples.First, scale), Scaled(samples.Second, scale)], samples.Index, r, sense)
            {
                Edge = settings.Edge ?? IndexEdge.Rising,
                FullScale = samples.FullScale * scale ?? settings.FullScale,
                Gaps = samples.Gaps,
            }
            : null;
    }

    private static double[] Scaled(double[] samples, double scale) => scale == 1 ? samples : [.. samples.Select(v => v * scale)];
}
