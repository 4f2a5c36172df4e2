using System.Globalization;
using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Wear;

/// <summary>What else is known at a wheel: its axle, its pressure against the placard, and the tyre at the other side of the axle.</summary>
internal sealed class WearContext
{
    private enum Air
    {
        Low,
        Right,
        High,
    }

    private readonly bool _singleTrack;
    private readonly Axle? _axle;
    private readonly bool _driven;
    private readonly Air? _air;
    private readonly IReadOnlyDictionary<WearForm, double>? _partner;

    /// <param name="subject">The vehicle.</param>
    /// <param name="assembly">The wheel.</param>
    /// <param name="partner">How likely each form is at the other side of the axle by its depths alone, or null where it was not measured.</param>
    public WearContext(FittedVehicle subject, Assembly assembly, IReadOnlyDictionary<WearForm, double>? partner)
    {
        _singleTrack = subject.Vehicle.SingleTrack;
        _axle = subject.Vehicle.AxleAt(assembly.Position);
        _driven = _axle is { } axle && (axle.Driven || subject.Vehicle.Drive == Drive.All);
        _partner = partner;
        var words = new List<string>();
        if (_axle is not null)
        {
            words.Add($"{(_axle.Steered ? "steered" : "not steered")}, {(_driven ? "driven" : "not driven")}{(_axle.Dual ? ", dual wheels" : "")}");
        }

        if (assembly.Pressure is { Hot: false } found && subject.Vehicle.PlacardOf(assembly) is { Cold: { } cold } placard && cold.Kilopascals > 0)
        {
            var low = Figures.Of("wear.pressure-low").Value / 100;
            var high = Figures.Of("wear.pressure-high").Value / 100;
            var most = placard.Laden is { } laden && laden > cold ? laden : cold;
            _air = found.Value.Kilopascals < low * cold.Kilopascals ? Air.Low : found.Value.Kilopascals > high * most.Kilopascals ? Air.High : Air.Right;
            words.Add(string.Create(CultureInfo.InvariantCulture, $"found at {found.Value.Kilopascals:0} kPa cold where the placard asks for {cold.Kilopascals:0} kPa"));
        }

        if (partner is not null)
        {
            words.Add($"the tyre at the other side of the axle, by its depths alone: {partner.GroupBy(p => p.Key.Pattern).Select(g => (g.Key, Sum: g.Sum(p => p.Value))).MaxBy(g => g.Sum) switch { var (pattern, sum) => string.Create(CultureInfo.InvariantCulture, $"{pattern.Word()}, {100 * sum:0} %") }}");
        }

        Words = words;
    }

    /// <summary>What was weighed, in words.</summary>
    public IReadOnlyList<string> Words { get; }

    /// <summary>How likely all of this is where a form comes of a cause, in parts of what it is for any tyre.</summary>
    public double Likelihood(WearForm form, CauseRow cause)
    {
        if (_singleTrack && WearTables.NotOnSingleTrack.Contains(cause.Cause))
        {
            return 0;
        }

        var likely = 1.0;
        if (_axle is not null)
        {
            likely *= _axle.Steered ? cause.Steered : 1 - cause.Steered;
            likely *= _driven ? cause.Driven : 1 - cause.Driven;
            likely *= _axle.Dual ? cause.Dual : 1 - cause.Dual;
        }

        likely *= _air switch
        {
            Air.Low => cause.Low,
            Air.Right => cause.Right,
            Air.High => cause.High,
            null => 1,
        };

        // A cause that works on both sides wears the other tyre alike so often; else the other is as any tyre.
        return _partner is null ? likely : likely * ((cause.Alike * _partner[form] / form.Prior) + (1 - cause.Alike));
    }
}
