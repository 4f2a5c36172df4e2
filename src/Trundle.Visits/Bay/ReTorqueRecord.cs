using System.Globalization;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Bay;

/// <summary>That the tightening was checked again after the first kilometres, and what was found.</summary>
/// <param name="On">The day.</param>
/// <param name="Turned">True where a fixing turned before the wrench clicked: then it is checked again after the same distance.</param>
public sealed record ReTorqueRecord(DateOnly On, bool Turned)
{
    /// <summary>The words of what was found: no fixing turned before the click, or some did.</summary>
    public static IReadOnlyList<string> Results { get; } = ["none turned", "some turned"];

    /// <summary>The path of the record.</summary>
    public const string Field = "work.reTorque";

    /// <summary>The odometer then, or null.</summary>
    public Length? Odometer { get; init; }

    /// <summary>The wrench, or null.</summary>
    public string? Wrench { get; init; }

    /// <summary>Anything else, or null.</summary>
    public string? Note { get; init; }

    /// <summary>Who recorded it, or null where the file does not say.</summary>
    public string? By { get; init; }

    /// <summary>The torque that was found at each fixing, by wheel; empty where none was recorded.</summary>
    public IReadOnlyDictionary<Position, IReadOnlyDictionary<int, Torque>> Torques { get; init; } = new Dictionary<Position, IReadOnlyDictionary<int, Torque>>();

    /// <summary>What was found, in a few words.</summary>
    public string Words => Turned ? "a fixing turned before the click" : "no fixing turned before the click";

    /// <summary>The field of the torque found at a fixing.</summary>
    public static string TorqueAt(string position, int fixing) => string.Create(CultureInfo.InvariantCulture, $"{Field}.torques.{position}.{fixing}");

    /// <summary>Reads the record; null where a problem was added.</summary>
    internal static ReTorqueRecord? Read(FileObject o)
    {
        var on = o.Require("on", "say on which day the tightening was checked again, as 2026-03-20") ? o.Date("on") : null;
        var turned = o.Require("result", "say what was found: none turned or some turned") ? o.Word("result", (Results[0], false), (Results[1], true)) : null;
        var torques = new Dictionary<Position, IReadOnlyDictionary<int, Torque>>();
        if (o.Node("torques") is { } node && o.Object("torques") is { } wheels)
        {
            foreach (var (name, _) in node.Members)
            {
                if (Position.Read(name) is not { IsRead: true } position)
                {
                    continue;
                }

                if (wheels.Object(name) is { } wheel)
                {
                    torques[position.Value] = Enumerable.Range(1, 20)
                        .Select(n => (n, Torque: wheel.Quantity<Torque>(n.ToString(CultureInfo.InvariantCulture), "N·m", Torque.FromNewtonMetres(1), Torque.FromNewtonMetres(2000))))
                        .Where(t => t.Torque is not null).ToDictionary(t => t.n, t => t.Torque!.Value);
                    wheel.Done();
                }
            }

            wheels.Done();
        }

        var record = new ReTorqueRecord(on ?? default, turned ?? false)
        {
            Odometer = o.Quantity<Length>("odometer", "km", Length.FromKilometres(0), Length.FromKilometres(10_000_000)),
            Wrench = o.Text("wrench"),
            Note = o.Text("note"),
            By = o.Text("by"),
            Torques = torques,
        };
        o.Done();
        return on is null || turned is null ? null : record;
    }
}
