using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Pictures;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Frame;

/// <summary>Makes the plan of the visit's vehicle: what is written and judged at each wheel.</summary>
public static class VehicleView
{
    /// <summary>The plan.</summary>
    /// <param name="visit">The visit.</param>
    /// <param name="vehicle">The vehicle as it came, or as it will leave.</param>
    /// <param name="findings">What was found on it.</param>
    /// <param name="href">Where a tap on a wheel leads, or null.</param>
    public static PlanView Of(OpenVisit visit, FittedVehicle vehicle, IReadOnlyList<Finding> findings, Func<Position, string?> href)
    {
        ArgumentNullException.ThrowIfNull(visit);
        ArgumentNullException.ThrowIfNull(vehicle);
        ArgumentNullException.ThrowIfNull(href);
        var axles = vehicle.Vehicle.Axles.Count;
        return new PlanView(
            "The vehicle from above",
            [.. VisitNeeds.Positions(vehicle).Select(p => Wheel(visit, vehicle, findings, p, href(p)))],
            axles,
            Behind(vehicle.Vehicle),
            vehicle.Vehicle.Axles.Select(a => a.Track).Max())
        { SingleTrack = vehicle.Vehicle.SingleTrack };
    }

    /// <summary>Where each axle stands behind the first; empty where one is not known.</summary>
    private static IReadOnlyList<Length> Behind(Vehicle vehicle)
    {
        var behind = vehicle.Axles.Select((a, i) => i == 0 ? Length.FromMillimetres(0) : a.BehindFirst).ToList();
        return behind.All(b => b is not null) && behind.Zip(behind.Skip(1)).All(p => p.First < p.Second) ? [.. behind.Select(b => b!.Value)] : [];
    }

    /// <summary>The depths of a wheel with the limit that its finding names.</summary>
    public static TreadView? Tread(OpenVisit visit, Assembly? assembly, IReadOnlyList<Finding> findings)
    {
        ArgumentNullException.ThrowIfNull(visit);
        ArgumentNullException.ThrowIfNull(findings);
        if (assembly?.Tread is not { } tread || !tread.All.Any())
        {
            return null;
        }

        var at = assembly.Position.ToString();
        var limit = findings.Where(f => f.Position == at && f.Rule.StartsWith("tread.depth", StringComparison.Ordinal)).Select(f => f.Limit).FirstOrDefault(l => l is not null);
        var least = limit is { Amount: { Value: { } value, Unit: "mm" or "in" } amount } ? Quantity.Of<Length>(value, amount.Unit) : (Length?)null;
        return new TreadView(tread, least, least is { } l ? visit.Units.One(l) : "", visit.Units.Number, visit.Units.Depth == "32nds" ? "32nds of an inch" : "mm");
    }

    /// <summary>The gravest finding at a position, or null where nothing was judged there.</summary>
    public static Category? Worst(IReadOnlyList<Finding> findings, Position position)
    {
        var here = findings.Where(f => f.Position == position.ToString()).ToList();
        return here.Count == 0 ? null : FindingSet.Worst(here);
    }

    private static PlanWheel Wheel(OpenVisit visit, FittedVehicle vehicle, IReadOnlyList<Finding> findings, Position position, string? href)
    {
        var assembly = vehicle.At(position);
        var lines = new List<string>();
        if (assembly?.Pressure is { } pressure)
        {
            lines.Add(visit.Units.One(pressure.Value) + (pressure.Hot ? " hot" : ""));
            if (vehicle.Vehicle.PlacardAt(position)?.Cold is { } placard)
            {
                lines.Add($"of {visit.Units.Number(placard)}");
            }
        }
        else if (assembly is not null)
        {
            lines.Add(assembly.Tyre?.Marking?.Size.Text ?? "pressure not entered");
        }
        else
        {
            lines.Add("nothing entered yet");
        }

        return new PlanWheel(position, visit.Reading.Name(position), assembly is not null, lines, Tread(visit, assembly, findings), Worst(findings, position), href);
    }
}
