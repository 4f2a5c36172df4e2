using System.Numerics;
using Fault = Trundle.Engine.Tests.Balance.Oracle.Why.SimulatedWheel.Fault;
using Weight = Trundle.Engine.Tests.Balance.Oracle.Why.SimulatedWheel.Weight;

namespace Trundle.Engine.Tests.Balance.Oracle.Why;

/// <summary>Draws a fault of a cause by the tables: its form, then its size.</summary>
internal sealed class WhyPlan(Random random, SimulatedWheel wheel, int rounds, bool[] sides)
{
    private int Weights => rounds * sides.Length;

    private int RoundOf(int weight) => weight / sides.Length;

    private static Func<IReadOnlyList<Weight>, double?> NoSize => _ => null;

    /// <summary>A fault and its true size once the weights are known.</summary>
    public (Fault Fault, Func<IReadOnlyList<Weight>, double?> Size) Of(string cause)
    {
        switch (cause)
        {
            case "rim-distance":
            {
                var error = Bell(cause, "error");
                return (new Fault { Distance = error }, _ => wheel.Distance + error);
            }

            case "rim-diameter":
            {
                var error = Bell(cause, "error");
                return (new Fault { Diameter = error }, _ => wheel.Diameter + error);
            }

            case "rim-width":
            {
                var error = Bell(cause, "error");
                return (new Fault { Width = error }, _ => wheel.Width + error);
            }

            case "weight-angle":
            {
                var chosen = Form(cause, ("one", true), ("all", Weights > 1), ("round", rounds > 1 && sides.Length > 1)) switch
                {
                    "one" => One(),
                    "all" => _ => true,
                    _ => InOneRound(),
                };
                var turn = Turn();
                return (new Fault { True = (i, w) => chosen(i) ? w with { Angle = w.Angle + turn } : w }, _ => turn * 180 / Math.PI);
            }

            case "weight-mass":
            {
                var at = random.Next(Weights);
                var (part, number) = (random.NextDouble(), WhyCase.Normal(random).Real);
                return (new Fault { True = (i, w) => i == at ? w with { Grams = w.Grams + MassError(w.Grams, part, number) } : w },
                    weights => weights[at].Grams + MassError(weights[at].Grams, part, number));
            }

            case "weights-swapped":
                return (Swap(Form(cause, ("round", true), ("all", rounds > 1), ("masses", sides.Length == 2))), NoSize);
            case "weight-place":
            {
                var (inner, outer) = (sides.Contains(false), sides.Contains(true));
                var form = Form(cause, ("inner", inner), ("outer", outer), ("both", inner && outer), ("one", rounds > 1));
                var one = One();
                var places = new[] { Place("inner", 1), Place("outer", -1) };
                return (new Fault
                {
                    Place = (i, w) => form == "both" || (form == "one" ? one(i) : w.Outer == (form == "outer")) ? places[w.Outer ? 1 : 0] : (1, 0),
                }, NoSize);
            }

            case "weight-lost":
            {
                var at = random.Next(Weights);
                var first = RoundOf(at) + 1;
                if (Form(cause, ("before", true), ("later", Enumerable.Range(0, Weights).Any(i => RoundOf(i) + 2 < wheel.Spins))) == "later")
                {
                    (at, first) = Any([.. Enumerable.Range(0, Weights).SelectMany(i => Enumerable.Range(0, wheel.Spins).Where(s => s >= RoundOf(i) + 2).Select(s => (i, s)))]);
                }

                return (new Fault { On = (i, spin) => i != at || spin < first }, NoSize);
            }

            case "re-seated":
            {
                // The centre of mass lies near the mid-plane: its part of the static unbalance goes to the outer flange, the rest to the inner.
                var from = 1 + random.Next(wheel.Spins - 1);
                var static_ = Deviation(cause, "static") * WhyCase.Normal(random);
                var outer = 0.5 + (0.07 * WhyCase.Normal(random).Real);
                return (new Fault { Extra = j => j >= from ? (static_ * (1 - outer), static_ * outer) : (0, 0) }, NoSize);
            }

            case "loose-object":
            {
                var same = Form(cause, ("middle", true), ("planes", true)) == "middle";
                var deviation = Deviation(cause, "static");
                (Complex, Complex)[] extra =
                [
                    .. Enumerable.Range(0, wheel.Spins).Select(_ =>
                    {
                        var one = deviation * WhyCase.Normal(random) / 2;
                        return (one, same ? one : deviation * WhyCase.Normal(random) / 2);
                    }),
                ];
                return (new Fault { Extra = j => extra[j] }, NoSize);
            }

            case "calibration":
            {
                var form = Form(cause, ("both", true), ("first", true), ("second", true));
                var gain = 1 + (Deviation(cause, "gain") * WhyCase.Normal(random));
                return (new Fault { FirstGain = form == "second" ? 1 : gain, SecondGain = form == "first" ? 1 : gain }, NoSize);
            }

            default:
                return (Fault.None, NoSize);
        }
    }

    /// <summary>Two faults at once.</summary>
    public static Fault Both(Fault a, Fault b) => new()
    {
        Distance = a.Distance + b.Distance,
        Diameter = a.Diameter + b.Diameter,
        Width = a.Width + b.Width,
        True = (i, w) => b.True(i, a.True(i, w)),
        Place = (i, w) => a.Place(i, w) == (1, 0) ? b.Place(i, w) : a.Place(i, w),
        Seen = w =>
        {
            a.Seen(w);
            b.Seen(w);
        },
        On = (i, s) => a.On(i, s) && b.On(i, s),
        Extra = j => (a.Extra(j).Inner + b.Extra(j).Inner, a.Extra(j).Outer + b.Extra(j).Outer),
        FirstGain = a.FirstGain * b.FirstGain,
        SecondGain = a.SecondGain * b.SecondGain,
    };

    private Fault Swap(string form)
    {
        var round = random.Next(rounds);
        var number = sides.Length;
        if (form != "masses")
        {
            return new Fault { True = (i, w) => form == "all" || RoundOf(i) == round ? w with { Outer = !w.Outer } : w };
        }

        // The mass of the other weight of the round: it is known by the time that the weights act.
        var read = new double[Weights];
        return new Fault
        {
            True = (i, w) => RoundOf(i) == round ? w with { Grams = read[i % 2 == 0 ? i + 1 : i - 1] } : w,
            Seen = weights =>
            {
                for (var i = 0; i < Math.Min(number * rounds, weights.Count); i++)
                {
                    read[i] = weights[i].Grams;
                }
            },
        };
    }

    private (double, double) Place(string side, int outwards)
    {
        var radius = WhyPriors.Size("weight-place", $"{side}-radius")[0];
        var shift = WhyPriors.Size("weight-place", $"{side}-shift")[0];
        var part = radius.Mean + (radius.Deviation!.Value * WhyCase.Normal(random).Real);
        return (part, outwards * (shift.Mean + (shift.Deviation!.Value * WhyCase.Normal(random).Real)) / part);
    }

    private static double MassError(double grams, double part, double number)
    {
        var steps = WhyPriors.Size("weight-mass", "error").Where(s => grams + s.Mean > 5 * s.Deviation!.Value).ToList();
        var other = WhyPriors.Size("weight-mass", "part")[0];
        var at = part * (steps.Sum(s => s.Weight) + other.Weight);
        foreach (var step in steps)
        {
            at -= step.Weight;
            if (at < 0)
            {
                return step.Mean + (step.Deviation!.Value * number);
            }
        }

        return grams * other.Deviation!.Value * number;
    }

    private double Turn()
    {
        var (_, mean, deviation) = WhyCase.Pick(random, WhyPriors.Size("weight-angle", "turn").Select(p => (p.Weight, p)));
        var degrees = deviation is { } d ? mean + (d * WhyCase.Normal(random).Real) : 360 * random.NextDouble();
        return degrees * Math.PI / 180;
    }

    private double Bell(string cause, string size)
    {
        var (_, mean, deviation) = WhyCase.Pick(random, WhyPriors.Size(cause, size).Select(p => (p.Weight, p)));
        return mean + (deviation!.Value * WhyCase.Normal(random).Real);
    }

    private double Deviation(string cause, string size) => WhyCase.Pick(random, WhyPriors.Size(cause, size).Select(p => (p.Weight, p))).Deviation!.Value;

    private string Form(string cause, params (string Form, bool There)[] forms) =>
        WhyCase.Pick(random, forms.Where(f => f.There).Select(f => (WhyPriors.Share(cause, f.Form), f.Form)));

    private Func<int, bool> One()
    {
        var at = random.Next(Weights);
        return i => i == at;
    }

    private Func<int, bool> InOneRound()
    {
        var round = random.Next(rounds);
        return i => RoundOf(i) == round;
    }

    private T Any<T>(IReadOnlyList<T> list) => list[random.Next(list.Count)];
}
