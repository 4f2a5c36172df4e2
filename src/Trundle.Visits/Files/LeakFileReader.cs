using System.Globalization;
using Trundle.Engine.Pressure;
using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Visits.Files;

/// <summary>What a file says for <c>leak</c>.</summary>
/// <param name="Subject">The one tyre, with its last reading as the pressure found.</param>
/// <param name="Readings">The readings in the file's order.</param>
/// <param name="Accuracy">How well they are known.</param>
/// <param name="Reference">The temperature to bring them to.</param>
/// <param name="Expected">The coldest temperature that is expected, or null.</param>
/// <param name="Warning">The vehicle's own warning pressure, or null.</param>
/// <param name="Cautions">What was left out and what was taken for it.</param>
public sealed record LeakFile(FittedVehicle Subject, IReadOnlyList<DatedPressure> Readings, ReadingAccuracy Accuracy, Temperature Reference, Temperature? Expected, GaugePressure? Warning, IReadOnlyList<string> Cautions);

/// <summary>Reads the file of <c>leak</c>: one tyre as in the small form of <c>pressure</c>, and its readings.</summary>
public static class LeakFileReader
{
    private const int MostReadings = 1000;

    private static readonly GaugePressure Least = GaugePressure.FromKilopascals(10);

    private static readonly string[] TimeForms = ["yyyy-MM-dd HH:mm", "yyyy-MM-dd'T'HH:mm", "yyyy-MM-dd HH:mm:ss", "yyyy-MM-dd'T'HH:mm:ss"];

    /// <summary>Reads a file's root.</summary>
    /// <param name="root">The root object.</param>
    /// <param name="problems">Gathers every problem.</param>
    /// <returns>The file, or null where a problem was found.</returns>
    public static LeakFile? Read(FileNode root, List<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(root);
        ArgumentNullException.ThrowIfNull(problems);
        var file = new FileObject(root, problems);
        var cautions = new List<string>();
        var (vehicle, assembly, rules) = PressureFileReader.ReadTyre(file);
        var (greatest, repeatability) = Gauge(file);
        var thermometer = file.Quantity<TemperatureDifference>("thermometer", "K", TemperatureDifference.FromKelvins(0), TemperatureDifference.FromKelvins(20));
        var reference = Degrees(file, "referenceTemperature", 70);
        var expected = Degrees(file, "expected", 70);
        var warning = file.Quantity<GaugePressure>("warning", "kPa", GaugePressure.FromKilopascals(10), GaugePressure.FromKilopascals(1400));
        file.Require("readings", "list at least two, each with 'at', 'pressure' and 'temperature'");
        var items = file.Objects("readings");
        if (items.Count > MostReadings)
        {
            file.Wrong("readings", "too-many", string.Create(CultureInfo.InvariantCulture, $"There are {items.Count} readings; at most {MostReadings} are read."));
            return null;
        }

        var lines = items.Select(ReadOne).ToList();
        file.Done();
        if (problems.Count == 0 && lines.Count < 2)
        {
            file.Wrong("readings", "too-few", "A loss needs at least two readings.");
        }

        Altitudes(items, lines, problems);
        AfterFlat(items, lines, problems);
        if (problems.Count > 0)
        {
            return null;
        }

        var readings = lines.Select(l => new DatedPressure(l!.At, l.Pressure, l.Temperature, l.Air ?? (l.Altitude is { } height ? AirLaw.At(height) : AirLaw.SeaLevel), l.Air is not null, l.Filled)).ToList();
        Say(lines!, greatest, thermometer, cautions);
        var last = lines[^1]!;
        var subject = new FittedVehicle(vehicle, [assembly with { Pressure = new PressureReading(last.Pressure, last.Temperature, last.Hot) }], rules, null) { Ambient = last.Hot ? null : last.Temperature };
        return new LeakFile(
            subject,
            readings,
            ReadingAccuracy.Of(readings.Max(r => r.Value), greatest, repeatability, thermometer),
            reference ?? Figures.Of("leak.reference-temperature").As<Temperature>(),
            expected,
            warning,
            cautions);
    }

    private sealed record Line(DateTime At, bool DayOnly, GaugePressure Pressure, Temperature Temperature, Length? Altitude, AbsolutePressure? Air, bool Hot, bool Filled);

    private static (GaugePressure? Greatest, GaugePressure? Repeatability) Gauge(FileObject file)
    {
        if (file.Object("gauge") is not { } gauge)
        {
            return (null, null);
        }

        var greatest = gauge.Quantity<GaugePressure>("accuracy", "kPa", GaugePressure.FromKilopascals(0.01), GaugePressure.FromKilopascals(100));
        var repeatability = gauge.Quantity<GaugePressure>("repeatability", "kPa", GaugePressure.FromKilopascals(0.01), GaugePressure.FromKilopascals(100));
        if (greatest is { } g && repeatability is { } r && r > g)
        {
            gauge.Wrong("repeatability", "more-than-accuracy", $"The repeatability of {r.Text("kPa", 2)} is more than the gauge's greatest error of {g.Text("kPa", 2)}: one of the two is wrong.");
        }

        gauge.Done();
        return (greatest, repeatability);
    }

    private static Temperature? Degrees(FileObject file, string key, double most) =>
        file.Quantity<Temperature>(key, "°C", Temperature.FromDegreesCelsius(-60), Temperature.FromDegreesCelsius(most));

    private static Line? ReadOne(FileObject o)
    {
        var at = o.Require("at", "say when it was read, for example \"2026-03-14 08:30\"") ? o.Value("at", Time) : null;
        var pressure = o.Require("pressure", "say what the gauge showed, for example \"225 kPa\"")
            ? o.Quantity<GaugePressure>("pressure", "kPa", GaugePressure.FromKilopascals(0), GaugePressure.FromKilopascals(1400))
            : null;

        // Nothing at all is a flat tyre; a little more than nothing is bar read as kilopascals.
        if (pressure is { Pascals: > 0 } little && little < Least)
        {
            o.Wrong("pressure", "out-of-range", $"Less than {Least.Text("kPa", 0)} and yet not nothing is more likely another unit: give the unit, for example \"2.3 bar\", or 0 for a flat tyre.");
        }

        var temperature = o.Require("temperature", "without the temperature of the air in the tyre (of the air around it where it has stood for hours) a fall of temperature cannot be told from a loss of air") ? Degrees(o, "temperature", 150) : null;
        var altitude = o.Quantity<Length>("altitude", "m", Length.FromMetres(-450), Length.FromMetres(6000));
        var air = o.Quantity<AbsolutePressure>("air", "kPa", AbsolutePressure.FromKilopascals(40), AbsolutePressure.FromKilopascals(110));
        var hot = o.Flag("hot") ?? false;
        var filled = o.Flag("filled") ?? false;
        o.Done();
        return at is var (time, dayOnly) && pressure is { } p && temperature is { } t ? new Line(time, dayOnly, p, t, altitude, air, hot, filled) : null;
    }

    private static Reading<(DateTime At, bool DayOnly)> Time(string text)
    {
        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
        {
            return Reading<(DateTime, bool)>.Of((day.ToDateTime(new TimeOnly(12, 0)), true));
        }

        return DateTime.TryParseExact(text, TimeForms, CultureInfo.InvariantCulture, DateTimeStyles.None, out var time)
            ? Reading<(DateTime, bool)>.Of((time, false))
            : Reading<(DateTime, bool)>.Failed("time-unreadable", $"'{NumberText.Shown(text)}' is not a time; write year-month-day and the clock, for example 2026-03-14 08:30.");
    }

    /// <summary>The air's pressure is known for every reading or for none: of some alone, a difference in height would be read as a leak.</summary>
    private static void Altitudes(IReadOnlyList<FileObject> items, List<Line?> lines, List<Problem> problems)
    {
        var told = lines.Select(l => l is null || l.Altitude is not null || l.Air is not null).ToList();
        if (lines.Any(l => l is { } line && (line.Altitude is not null || line.Air is not null)) && told.IndexOf(false) is >= 0 and var missing)
        {
            problems.Add(new Problem(items[missing].PathOf("altitude"), "missing", "Other readings have an altitude or a barometer's reading and this one has none: give it for every reading, or for none where all were taken at one place."));
        }
    }

    /// <summary>A flat tyre loses nothing more: a reading after it holds a loss only where air was let in.</summary>
    private static void AfterFlat(IReadOnlyList<FileObject> items, List<Line?> lines, List<Problem> problems)
    {
        for (var i = 1; i < lines.Count; i++)
        {
            if (lines[i - 1] is { Pressure.Pascals: <= 0 } && lines[i] is { Filled: false })
            {
                problems.Add(new Problem(items[i].PathOf("filled"), "after-flat", "The tyre was flat at the reading before and has no more to lose: say 'filled': true where air was let in since, or leave this reading out."));
                return;
            }
        }
    }

    private static void Say(List<Line> lines, GaugePressure? gauge, TemperatureDifference? thermometer, List<string> cautions)
    {
        if (gauge is null)
        {
            cautions.Add("The gauge's greatest error was not given: what the law lets a tyre gauge have is taken. Read it off the gauge's calibration record.");
        }

        if (thermometer is null)
        {
            cautions.Add($"How well the temperatures are known was not given: {Figures.Of("leak.thermometer").As<TemperatureDifference>().Text("K", 0)} either way is taken.");
        }

        if (lines.All(l => l.Altitude is null && l.Air is null))
        {
            cautions.Add("No altitude was given: all readings are taken to be of one place.");
        }

        if (lines.Any(l => l.DayOnly))
        {
            cautions.Add("A reading without a time of day is taken as of noon.");
        }

        if (lines.Any(l => l.Hot))
        {
            cautions.Add("A reading was taken hot. The temperature inside a running tyre is seldom well known: take the readings cold.");
        }
    }
}
