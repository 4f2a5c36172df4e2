using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Replacement;

/// <summary>What is renewed with a tyre.</summary>
/// <param name="What">The part.</param>
/// <param name="Why">Why.</param>
/// <param name="Source">Where that comes from.</param>
public sealed record RenewedPart(string What, string Why, Source Source);

/// <summary>The list of what is renewed with a tyre (<c>renewed-with-tyre.csv</c>).</summary>
public static class RenewedParts
{
    private static readonly IReadOnlyList<(string When, RenewedPart Part)> All = Load();

    /// <summary>What is renewed on this vehicle.</summary>
    /// <param name="subject">The vehicle before.</param>
    /// <param name="places">The places where a tyre is changed.</param>
    /// <param name="otherSize">Another size than the placard's is fitted.</param>
    /// <source>each row names its own</source>
    public static IReadOnlyList<RenewedPart> For(FittedVehicle subject, IReadOnlyCollection<Position> places, bool otherSize)
    {
        ArgumentNullException.ThrowIfNull(subject);
        ArgumentNullException.ThrowIfNull(places);
        var touched = subject.Fitted.Where(a => places.Contains(a.Position)).ToList();
        var sensor = touched.Exists(a => a.Sensor is SensorState.Working or SensorState.NotWorking);
        var plain = touched.Count == 0 || touched.Exists(a => a.Sensor is not (SensorState.Working or SensorState.NotWorking));
        var tube = touched.Exists(a => a.Tyre is { } tyre && tyre.Marks.Concat(tyre.Marking?.Words ?? []).Any(w => SidewallWords.Of(w)?.Word is "TT" or "TUBE TYPE"));
        var fast = IsFast(subject);
        return [.. All.Where(r => r.When switch
        {
            "always" => true,
            "sensor" => sensor,
            "no-sensor" => plain,
            "tube" => tube,
            "fast" => fast && plain,
            "other-size" => otherSize,
            _ => throw new InvalidOperationException($"renewed-with-tyre.csv: '{r.When}' is not a known word."),
        }).Select(r => r.Part)];
    }

    /// <summary>The kind of valve that goes in with a new tyre at a place: of metal where the vehicle is fast, else as it was; null where that is not known, and where a sensor's own stem is the valve.</summary>
    /// <param name="subject">The vehicle before.</param>
    /// <param name="place">Where the tyre is changed.</param>
    /// <source>the row <c>metal-valve</c> of <c>renewed-with-tyre.csv</c></source>
    public static ValveKind? ValveAt(FittedVehicle subject, Position place)
    {
        ArgumentNullException.ThrowIfNull(subject);
        var assembly = subject.At(place);
        return assembly?.Sensor is SensorState.Working or SensorState.NotWorking ? null : IsFast(subject) ? ValveKind.ClampIn : assembly?.Valve?.Kind;
    }

    private static bool IsFast(FittedVehicle subject) => subject.Vehicle.TopSpeed is { } top && top > Figures.Of("replacement.valve-speed").As<Speed>();

    private static IReadOnlyList<(string, RenewedPart)> Load()
    {
        var table = CsvTable.Embedded("renewed-with-tyre.csv");
        return [.. table.Rows.Select(row => (table.Cell(row, "when"), new RenewedPart(
            table.Cell(row, "what"), table.Cell(row, "why"), new Source(table.Cell(row, "source"), Source.StatusOf(table.Cell(row, "status"))!.Value))))];
    }
}
