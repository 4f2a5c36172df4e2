using System.Numerics;
using Trundle.Engine.Balance;
using Trundle.Engine.Balance.Why;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Balance.Oracle.Why;

/// <summary>
/// A wheel on a balancer by its forces, written apart from the engine: point masses on the true wheel push on two transducers, and the machine turns
/// the forces into masses with the settings entered. Millimetres, grams, radians.
/// </summary>
internal sealed class SimulatedWheel
{
    public double Distance { get; init; } = 60;

    public double Diameter { get; init; } = 406.4;

    public double Width { get; init; } = 177.8;

    public double FirstTransducer { get; init; } = -120;

    public double SecondTransducer { get; init; } = -280;

    public double Deviation { get; init; } = 1.5;

    public int Spins { get; init; } = 2;

    public double WheelGrams { get; init; } = 16_000;

    /// <summary>Unbalance before the first spin in the true flange planes, g·mm.</summary>
    public Complex InnerStart { get; init; } = Complex.FromPolarCoordinates(7000, 0.7);

    public Complex OuterStart { get; init; } = Complex.FromPolarCoordinates(9000, 3.7);

    /// <summary>A weight as read: after which spin (from 0), on the outer side or the inner, grams and place.</summary>
    internal sealed record Weight(int Spin, bool Outer, double Grams, double Angle);

    /// <summary>What is wrong.</summary>
    internal sealed record Fault
    {
        public static Fault None { get; } = new();

        public double Distance { get; init; }

        public double Diameter { get; init; }

        public double Width { get; init; }

        /// <summary>What a weight truly is: side, grams, angle.</summary>
        public Func<int, Weight, Weight> True { get; init; } = (_, w) => w;

        /// <summary>Told all weights before they act, for a fault that rests on more than one.</summary>
        public Action<IReadOnlyList<Weight>> Seen { get; init; } = _ => { };

        /// <summary>Where a weight sits off its flange: radius over half the diameter, and millimetres outwards.</summary>
        public Func<int, Weight, (double RadiusPart, double Shift)> Place { get; init; } = (_, _) => (1, 0);

        /// <summary>Whether a weight is on in a spin.</summary>
        public Func<int, int, bool> On { get; init; } = (_, _) => true;

        /// <summary>Unbalance that a spin has besides, in the true flange planes.</summary>
        public Func<int, (Complex Inner, Complex Outer)> Extra { get; init; } = _ => (0, 0);

        public Complex FirstGain { get; init; } = 1;

        public Complex SecondGain { get; init; } = 1;
    }

    /// <summary>What the machine shows at a spin with no noise: inner, outer.</summary>
    public (Complex Inner, Complex Outer) Display(Fault fault, IReadOnlyList<Weight> weights, int spin, bool withStart = true)
    {
        fault.Seen(weights);
        var inner = Distance + fault.Distance;
        var outer = inner + Width + fault.Width;
        var (first, second) = (Complex.Zero, Complex.Zero);
        if (withStart)
        {
            Push(InnerStart, inner);
            Push(OuterStart, outer);
        }

        var (extraInner, extraOuter) = fault.Extra(spin);
        Push(extraInner, inner);
        Push(extraOuter, outer);
        for (var i = 0; i < weights.Count; i++)
        {
            if (weights[i].Spin >= spin || !fault.On(i, spin))
            {
                continue;
            }

            var w = fault.True(i, weights[i]);
            var (part, shift) = fault.Place(i, weights[i]);
            Push(Complex.FromPolarCoordinates(w.Grams * part * (Diameter + fault.Diameter) / 2, w.Angle), (w.Outer ? outer : inner) + shift);
        }

        (first, second) = (first * fault.FirstGain, second * fault.SecondGain);
        var (z1, z2) = (Distance, Distance + Width);
        var u1 = (((z2 - FirstTransducer) * first) + ((z2 - SecondTransducer) * second)) / (z2 - z1);
        var u2 = (((FirstTransducer - z1) * first) + ((SecondTransducer - z1) * second)) / (z2 - z1);
        return (-u1 / (Diameter / 2), -u2 / (Diameter / 2));

        void Push(Complex unbalance, double at)
        {
            first += unbalance * (at - SecondTransducer) / (FirstTransducer - SecondTransducer);
            second += unbalance * (at - FirstTransducer) / (SecondTransducer - FirstTransducer);
        }
    }

    /// <summary>The file's content from displays and weights.</summary>
    public WhyProblem Problem(IReadOnlyList<(Complex Inner, Complex Outer)> displays, IReadOnlyList<Weight> weights) => new()
    {
        Entered = new BalancerSettings(Length.FromMillimetres(Distance), Length.FromMillimetres(Diameter), Length.FromMillimetres(Width)),
        Transducers = (Length.FromMillimetres(FirstTransducer), Length.FromMillimetres(SecondTransducer)),
        Repeatability = Mass.FromGrams(Deviation),
        Units = ("mm", "mm", "mm"),
        Spins =
        [
            .. displays.Select((d, j) => new WhySpin(
                new UnbalancePair(Shown(d.Inner), Shown(d.Outer)),
                [.. weights.Where(w => w.Spin == j).Select(w => new WeightFitted(w.Outer ? PlaneSide.Outer : PlaneSide.Inner, Mass.FromGrams(w.Grams), WheelAngle.FromRadians(w.Angle), null))])),
        ],
    };

    private UnbalanceVector Shown(Complex grams) => UnbalanceVector.OfMass(Mass.FromGrams(grams.Magnitude), Length.FromMillimetres(Diameter / 2), WheelAngle.FromRadians(grams.Phase));
}
