using System.Numerics;
using Trundle.Engine.Balance.Why;
using Fault = Trundle.Engine.Tests.Balance.Oracle.Why.SimulatedWheel.Fault;
using Weight = Trundle.Engine.Tests.Balance.Oracle.Why.SimulatedWheel.Weight;

namespace Trundle.Engine.Tests.Balance.Oracle.Why;

/// <summary>How a drawn case departs from what the engine holds.</summary>
internal enum Departure
{
    /// <summary>Not at all: causes and sizes as in the tables.</summary>
    None,

    /// <summary>Every cause as often as any other.</summary>
    EvenCauses,

    /// <summary>The display rounds to whole grams and degrees, and nobody says so.</summary>
    RoundedDisplay,

    /// <summary>The balancer repeats half as well as it is said to.</summary>
    WorseRepeatability,

    /// <summary>Every weight is fitted a little off: 1.5° and 2 % of its mass, each one standard deviation.</summary>
    FittedLoosely,

    /// <summary>Two causes at once.</summary>
    TwoCauses,
}

/// <summary>One invented case: a wheel, its spins, what was fitted, and what is truly wrong.</summary>
/// <param name="Wheel">The wheel and the machine.</param>
/// <param name="Weights">Weights as read.</param>
/// <param name="Displays">What was shown.</param>
/// <param name="Cause">What is wrong.</param>
/// <param name="Size">True size of a setting, turn or mass in mm, degrees or g; null where there is none.</param>
internal sealed record WhyCase(SimulatedWheel Wheel, IReadOnlyList<Weight> Weights, IReadOnlyList<(Complex Inner, Complex Outer)> Displays, string Cause, double? Size)
{
    /// <summary>The second cause where there are two.</summary>
    public string? SecondCause { get; init; }

    /// <summary>True where a cause is at work.</summary>
    public bool IsTrue(string cause) => cause == Cause || cause == SecondCause;

    public WhyProblem Problem => Wheel.Problem(Displays, Weights);

    /// <summary>Draws a case. The technician fits what is shown, to 5 g and whole degrees, at least 5 g.</summary>
    public static WhyCase Draw(int seed, Departure departure)
    {
        var random = new Random(seed);
        var width = 25.4 * (5 + (0.5 * random.Next(10)));
        var first = -(80 + (100 * random.NextDouble()));
        var wheel = new SimulatedWheel
        {
            Distance = 30 + (90 * random.NextDouble()),
            Diameter = 25.4 * (13 + random.Next(9)),
            Width = width,
            FirstTransducer = first,
            SecondTransducer = first - 100 - (100 * random.NextDouble()),
            Deviation = new[] { 0.5, 1, 1.5, 2.5 }[random.Next(4)],
            Spins = new[] { 2, 2, 2, 3, 3, 3, 4 }[random.Next(7)],
            InnerStart = Complex.FromPolarCoordinates(203 * (5 + (45 * random.NextDouble())), 2 * Math.PI * random.NextDouble()),
            OuterStart = Complex.FromPolarCoordinates(203 * (5 + (45 * random.NextDouble())), 2 * Math.PI * random.NextDouble()),
        };

        // Which spins are followed by fitting is settled beforehand: all but the last, or only the first.
        var rounds = wheel.Spins == 2 ? 1 : 1 + random.Next(wheel.Spins - 1);
        var sides = random.Next(10) == 0 ? new[] { random.Next(2) == 1 } : [false, true];
        var cause = departure == Departure.EvenCauses ? WhyPriors.Causes[random.Next(WhyPriors.Causes.Count)].Cause : Pick(random, WhyPriors.Causes.Select(c => (c.Prior, c.Cause)));
        var plan = new WhyPlan(random, wheel, rounds, sides);
        string? second = null;
        var faults = new List<(Fault Fault, Func<IReadOnlyList<Weight>, double?> Size)> { plan.Of(cause) };
        if (departure == Departure.TwoCauses)
        {
            second = Pick(random, WhyPriors.Causes.Where(c => c.Cause != cause && c.Cause != "noise").Select(c => (c.Prior, c.Cause)));
            faults.Add(plan.Of(second));
        }

        var fault = faults.Count == 1 ? faults[0].Fault : WhyPlan.Both(faults[0].Fault, faults[1].Fault);
        if (departure == Departure.FittedLoosely)
        {
            Complex[] off = [.. Enumerable.Range(0, rounds * sides.Length).Select(_ => Normal(random))];
            fault = WhyPlan.Both(fault, new Fault { True = (i, w) => w with { Grams = w.Grams * (1 + (0.02 * off[i].Real)), Angle = w.Angle + (1.5 * off[i].Imaginary * Math.PI / 180) } });
        }

        var deviation = wheel.Deviation * (departure == Departure.WorseRepeatability ? 2 : 1);
        var weights = new List<Weight>();
        var displays = new List<(Complex, Complex)>();
        for (var j = 0; j < wheel.Spins; j++)
        {
            var (inner, outer) = wheel.Display(fault, weights, j);
            (inner, outer) = (inner + Noise(), outer + Noise());
            if (departure == Departure.RoundedDisplay)
            {
                (inner, outer) = (Whole(inner), Whole(outer));
            }

            displays.Add((inner, outer));
            foreach (var side in j < rounds ? sides : [])
            {
                var shown = side ? outer : inner;
                weights.Add(new Weight(j, side, Math.Max(5, 5 * Math.Round(shown.Magnitude / 5)), Math.Round(shown.Phase * 180 / Math.PI) * Math.PI / 180));
            }
        }

        return new WhyCase(wheel, weights, displays, cause, faults[0].Size(weights)) { SecondCause = second };

        Complex Noise() => deviation * Normal(random);
        static Complex Whole(Complex c) => Complex.FromPolarCoordinates(Math.Round(c.Magnitude), Math.Round(c.Phase * 180 / Math.PI) * Math.PI / 180);
    }

    /// <summary>Two independent bells of deviation 1 as one complex number.</summary>
    internal static Complex Normal(Random random) => Complex.FromPolarCoordinates(Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())), 2 * Math.PI * random.NextDouble());

    internal static T Pick<T>(Random random, IEnumerable<(double Weight, T Value)> choices)
    {
        List<(double Weight, T Value)> list = [.. choices];
        var at = random.NextDouble() * list.Sum(c => c.Weight);
        foreach (var (weight, value) in list)
        {
            at -= weight;
            if (at < 0)
            {
                return value;
            }
        }

        return list[^1].Value;
    }
}
