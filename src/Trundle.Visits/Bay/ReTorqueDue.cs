using Trundle.Engine.Fixings;
using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Visits.Bay;

/// <summary>The re-torque that a visit leaves due: of which wheels, within which distance, when the workshop asks, and whether it was done.</summary>
/// <param name="Wheels">The wheels that were off, where they are now.</param>
/// <param name="After">The distance, with its source: of several axles the shortest.</param>
/// <param name="Odometer">What it counts from, or null where the odometer was not entered.</param>
/// <param name="AskOn">The day from which the workshop asks, or null where the visit has no date.</param>
/// <param name="Done">What was recorded of it, or null.</param>
public sealed record ReTorqueDue(IReadOnlyList<Position> Wheels, ReTorque After, Length? Odometer, DateOnly? AskOn, ReTorqueRecord? Done)
{
    /// <summary>Not before this reading of the odometer.</summary>
    public Length? From => Odometer + After.From;

    /// <summary>Not after this reading.</summary>
    public Length? To => Odometer + After.To;

    /// <summary>True while somebody has to see to it: nothing was recorded, or a fixing turned, and then it is checked again.</summary>
    public bool IsOpen => Done is null || Done.Turned;

    /// <summary>The re-torque of a visit, or null where no wheel came off.</summary>
    public static ReTorqueDue? Of(VisitState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        var wheels = state.On(Leg.Prove).Steps.Where(s => s.Step.Id == "final-torque").Select(s => Position.Read(s.At)).Where(p => p.IsRead).Select(p => p.Value).ToList();
        if (wheels.Count == 0)
        {
            return null;
        }

        var vehicle = state.Arrived.Vehicle;
        var after = wheels.Select(w => vehicle.AxleAt(w)?.Fixings?.ReTorque).OfType<ReTorque>().OrderBy(r => r.To.Metres).FirstOrDefault()
            ?? ReTorque.Customary(Operations.FixingsOperation.IsHeavy(vehicle.VehicleClass));
        var done = state.Work.ReTorque;
        var (odometer, day) = done is { Turned: true } ? (done.Odometer, (DateOnly?)done.On) : (vehicle.Odometer, state.Arrived.Date);
        return new ReTorqueDue(wheels, after, odometer, day?.AddDays((int)Figures.Of("fixings.retorque.ask-after").Value), done);
    }

    /// <summary>How it stands on a day, in a few words.</summary>
    public string Standing(DateOnly today) =>
        Done is { Turned: false } ? $"done on {Instruments.Instrument.Day(Done.On)}"
        : Done is { } again ? $"checked on {Instruments.Instrument.Day(again.On)}, and a fixing turned: due again"
        : AskOn <= today ? "not recorded: ask" : "due";
}
