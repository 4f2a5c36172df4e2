using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Uniformity;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Visits.Files;

/// <summary>Dial readings with the tyre at one turn on its wheel.</summary>
/// <param name="Turn">Turn of the tyre since the first mounting.</param>
/// <param name="Readings">The readings.</param>
/// <param name="Path">Where they stand in the file.</param>
public sealed record MountedTrace(Angle Turn, IReadOnlyList<DialReading> Readings, string Path);

/// <summary>One way of looking at a part: radial or lateral.</summary>
/// <param name="Direction">Which way the dial looks.</param>
/// <param name="Mountings">One, or more where the tyre was turned in between; the last is how it stands now.</param>
/// <param name="Orders">How many orders, or null.</param>
/// <param name="GaugeStep">The dial's step, or null.</param>
/// <param name="Repeatability">How far its repeats lie apart, or null.</param>
/// <param name="MakerLimit">The maker's own limit, or null.</param>
public sealed record RunoutTrace(RunoutDirection Direction, IReadOnlyList<MountedTrace> Mountings, int? Orders, Length? GaugeStep, Length? Repeatability, Limit? MakerLimit);

/// <summary>A file of dial readings.</summary>
/// <param name="Part">What was measured.</param>
/// <param name="Mounted">Where it turned, or null.</param>
/// <param name="Material">The wheel's material, or null.</param>
/// <param name="Traces">Radial, lateral or both.</param>
/// <param name="Tyre">What is known of the tyre, or null.</param>
/// <param name="Wheel">What is known of the wheel, or null.</param>
public sealed record RunoutFile(RunoutPart Part, RunoutMounting? Mounted, WheelMaterial? Material, IReadOnlyList<RunoutTrace> Traces, FittedTyre? Tyre, Wheel? Wheel);

/// <summary>Reads the file of <c>runout</c>: one direction at the root, or <c>radial</c> and <c>lateral</c> as objects.</summary>
public static class RunoutFileReader
{
    private const int MostReadings = 1000;
    private const int MostMountings = 36;
    private static readonly (string, RunoutDirection)[] DirectionWords = [("radial", RunoutDirection.Radial), ("lateral", RunoutDirection.Lateral)];
    private static readonly Length Most = Length.FromMillimetres(200);

    /// <summary>Reads a file's root; null where a problem was added.</summary>
    public static RunoutFile? Read(FileNode root, List<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(root);
        ArgumentNullException.ThrowIfNull(problems);
        var o = new FileObject(root, problems);
        var part = o.Require("part", "say what was measured: assembly, tyre or wheel")
            ? o.Word("part", ("assembly", RunoutPart.Assembly), ("tyre", RunoutPart.Tyre), ("wheel", RunoutPart.Wheel))
            : null;
        var mounted = o.Word("mounted", ("onVehicle", RunoutMounting.OnVehicle), ("offVehicle", RunoutMounting.OffVehicle));
        var material = o.Word("material", ("steel", WheelMaterial.Steel), ("alloy", WheelMaterial.Alloy));
        var tyre = o.Object("tyre") is { } t ? VisitFileReader.ReadTyre(t) : null;
        var wheel = o.Object("wheel") is { } w ? VisitFileReader.ReadWheel(w) : null;
        var traces = new List<RunoutTrace>();
        if (o.Has("radial") || o.Has("lateral"))
        {
            foreach (var (key, direction) in DirectionWords)
            {
                if (o.Object(key) is { } trace)
                {
                    traces.Add(ReadTrace(trace, direction));
                    trace.Done();
                }
            }
        }
        else
        {
            var direction = o.Require("direction", "say which way the dial looked, radial or lateral; or give the readings in objects 'radial' and 'lateral'")
                ? o.Word("direction", DirectionWords)
                : null;
            traces.Add(ReadTrace(o, direction ?? RunoutDirection.Radial));
        }

        o.Done();
        if (part is { } p && p != RunoutPart.Assembly && traces.Any(r => r.Mountings.Count > 1))
        {
            o.Wrong("part", "mountings-of-a-part", "With more than one mounting the assembly is measured: write part \"assembly\".");
        }

        return problems.Count == 0 && part is { } known ? new RunoutFile(known, mounted, material ?? wheel?.Material, traces, tyre, wheel) : null;
    }

    private static RunoutTrace ReadTrace(FileObject o, RunoutDirection direction)
    {
        var mountings = new List<MountedTrace>();
        if (o.Has("mountings"))
        {
            if (o.Has("readings"))
            {
                o.Wrong("readings", "readings-twice", "Give 'readings', or 'mountings' with the readings of each, not both.");
            }

            foreach (var m in o.Objects("mountings").Take(MostMountings))
            {
                var turn = m.Require("turn", "say how far the tyre stands turned on the wheel since the first mounting, clockwise as seen from outside, in degrees; 0 for the first") ? Place(m, "turn") : null;
                FirstIsZero(m, turn, mountings.Count);
                mountings.Add(new MountedTrace(Angle.FromDegrees(turn?.Degrees ?? 0), ReadReadings(m), m.Path));
                m.Done();
            }

            if (mountings.Count < 2)
            {
                o.Wrong("mountings", "too-few-mountings", "Parting tyre and wheel takes at least two mountings with the tyre turned in between.");
            }
        }
        else
        {
            mountings.Add(new MountedTrace(Angle.FromDegrees(0), ReadReadings(o), o.Path));
        }

        return new RunoutTrace(
            direction,
            mountings,
            o.Whole("orders", 1, 40),
            Positive(o, "gaugeStep"),
            Positive(o, "repeatability"),
            MakerLimit(o));
    }

    private static Limit? MakerLimit(FileObject o)
    {
        var limit = Positive(o, "makerLimit");
        var source = o.Text("makerLimitSource");
        if (limit is null && source is not null)
        {
            o.Wrong("makerLimit", "missing", "'makerLimit' is missing while its source is named: give the maker's limit, peak-to-peak, for example \"0.8 mm\".");
        }

        return limit is { } l ? new Limit(Amount.Of(l, "mm", 2), Source.Entered(source ?? "the maker's own limit, as entered")) : null;
    }

    private static Length? Positive(FileObject o, string key)
    {
        var value = o.Quantity<Length>(key, "mm", Length.FromMillimetres(0), Length.FromMillimetres(50));
        if (value is { Si: 0 })
        {
            o.Wrong(key, "out-of-range", "Nothing is not a size here; leave the key out where it is not known.");
            return null;
        }

        return value;
    }

    private static List<DialReading> ReadReadings(FileObject o)
    {
        var first = Place(o, "first");
        var backwards = o.Word("sense", ("clockwise", false), ("anticlockwise", true)) ?? false;
        if (!o.Require("readings", "list what the dial showed, evenly around from the valve, or each with its angle: {\"angle\": 40, \"value\": \"0.35 mm\"}"))
        {
            return [];
        }

        var items = o.Items("readings");
        if (items.Count > MostReadings)
        {
            o.Wrong("readings", "too-many", string.Create(CultureInfo.InvariantCulture, $"{items.Count} readings are more than {MostReadings}; give one in a few."));
            return [];
        }

        if (items.Any(i => i.Kind == NodeKind.Object))
        {
            if (first is not null || o.Has("sense"))
            {
                o.Wrong(first is not null ? "first" : "sense", "readings-have-angles", "Each reading has its own angle here; 'first' and 'sense' belong to readings without.");
            }

            return ReadPlaced(o);
        }

        var values = o.Quantities<Length>("readings", "mm", -1 * Most, Most);
        if (items.Count < 3)
        {
            o.Wrong("readings", "too-few-places", string.Create(CultureInfo.InvariantCulture, $"There should be at least three readings around, better eight or more; there {(items.Count == 1 ? "is 1" : $"are {items.Count}")}."));
            return [];
        }

        var step = (backwards ? -360.0 : 360.0) / values.Count;
        return [.. values.Select((value, i) => new DialReading(WheelAngle.FromDegrees((first?.Degrees ?? 0) + (i * step)), value))];
    }

    private static List<DialReading> ReadPlaced(FileObject o)
    {
        var readings = new List<DialReading>();
        foreach (var r in o.Objects("readings"))
        {
            var angle = r.Require("angle", "degrees from the valve, clockwise as seen from the outer face") ? Place(r, "angle") : null;
            var value = r.Require("value", "what the dial showed, for example \"0.35 mm\"") ? r.Quantity("value", "mm", (Length?)(-1 * Most), Most) : null;
            r.Done();
            if (angle is { } a && value is { } v)
            {
                readings.Add(new DialReading(a, v));
            }
        }

        return readings;
    }

    /// <summary>Turns count from the first mounting: its own is nothing.</summary>
    internal static void FirstIsZero(FileObject mounting, WheelAngle? turn, int before)
    {
        if (before == 0 && turn is { } t && Math.Abs((t - default(WheelAngle)).Degrees) > 1e-9)
        {
            mounting.Wrong("turn", "first-mounting-turned", $"{Quantity.Number(t.Degrees, 1)}° is the turn of the first mounting, and turns count from it: write 0 here, and in each other one how far the tyre stands turned from the first.");
        }
    }

    internal static WheelAngle? Place(FileObject o, string key) =>
        o.Quantity<Angle>(key, "°", Angle.FromDegrees(-720), Angle.FromDegrees(720)) is { } angle ? WheelAngle.FromDegrees(angle.Degrees) : null;
}
