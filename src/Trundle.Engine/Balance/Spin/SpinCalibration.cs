using System.Numerics;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Balance.Spin;

/// <summary>What unbalance in one plane does to one transducer, for each g·mm: what one g·mm at the valve gives.</summary>
/// <param name="MagnitudePerGramMillimetre">In the recording's unit.</param>
/// <param name="Phase">In the calibration's sense of phases, 0 ≤ phase &lt; 360° in answers.</param>
public sealed record UnbalanceInfluence(double MagnitudePerGramMillimetre, Angle Phase)
{
    /// <summary>One standard error of a component of it, in the recording's unit; null where nobody knows it.</summary>
    public double? StandardErrorPerGramMillimetre { get; init; }
}

/// <summary>The influence coefficients of one speed.</summary>
/// <param name="Speed">The speed.</param>
/// <param name="Inner">Of the inner plane: one for each transducer.</param>
/// <param name="Outer">Of the outer plane.</param>
public sealed record CalibratedSpeed(RotationalSpeed Speed, IReadOnlyList<UnbalanceInfluence> Inner, IReadOnlyList<UnbalanceInfluence> Outer)
{
    /// <summary>
    /// What the calibration spins left unexplained at each transducer, as the standard deviation of one component in the recording's unit at this speed: the
    /// error of any reading beside its own. Empty where it is not known.
    /// </summary>
    public IReadOnlyList<double> Misfit { get; init; } = [];
}

/// <summary>The unbalance that a calibrated machine finds, with its errors.</summary>
/// <param name="Unbalance">The heavy places, in the planes asked for.</param>
/// <param name="Planes">Those planes.</param>
/// <param name="InnerStandardError">One standard error of a component (along any one direction) in the inner plane.</param>
/// <param name="OuterStandardError">The same in the outer plane.</param>
/// <param name="ConditionNumber">How well the two planes are told apart; infinite where they are not.</param>
public sealed record FoundUnbalance(UnbalancePair Unbalance, PlanePair Planes, Unbalance InnerStandardError, Unbalance OuterStandardError, double ConditionNumber)
{
    /// <summary>True where the standard errors hold what the calibration's own coefficients are uncertain by; false where that is not known and so left out.</summary>
    public required bool HoldsCalibrationError { get; init; }
}

/// <summary>A machine whose answer to unbalance in two planes is known.</summary>
/// <remarks>Signs are in docs/theory/spin.md.</remarks>
public sealed class SpinCalibration
{
    private readonly (double RadiansPerSecond, Complex[][] PerSquare, double[] MisfitPerSquare, double?[][] ErrorsPerSquare)[] _speeds;

    private SpinCalibration((double, Complex[][], double[], double?[][])[] speeds, PlanePair planes, SpinSense sense, bool anySpeed) =>
        (_speeds, Planes, Sense, AnySpeed) = (speeds, planes, sense, anySpeed);

    /// <summary>The planes that it was calibrated in.</summary>
    public PlanePair Planes { get; }

    /// <summary>The senses of turning and of phases that it was made in. It serves no spin that turns the other way.</summary>
    public SpinSense Sense { get; }

    /// <summary>True where it rests on the supports' places and not on spins, so that it serves any speed.</summary>
    public bool AnySpeed { get; }

    /// <summary>The speeds of its coefficients, slowest first; one of no meaning where it serves any speed.</summary>
    public IReadOnlyList<RotationalSpeed> Speeds => [.. _speeds.Select(s => RotationalSpeed.FromRadiansPerSecond(s.RadiansPerSecond))];

    /// <summary>A calibration by coefficients.</summary>
    /// <param name="speeds">At least one speed, each different; two transducers each.</param>
    /// <param name="planes">The planes of the coefficients.</param>
    /// <param name="sense">The senses that their phases are told in.</param>
    /// <source>ISO 21940-13 (from memory): influence coefficients; docs/theory/spin.md, calibration</source>
    public static SpinCalibration Of(IReadOnlyList<CalibratedSpeed> speeds, PlanePair planes, SpinSense sense)
    {
        ArgumentNullException.ThrowIfNull(speeds);
        return new SpinCalibration(
            [.. speeds.OrderBy(s => s.Speed.Si).Select(s => (s.Speed.RadiansPerSecond, PerSquare(s, sense), MisfitPerSquare(s), ErrorsPerSquare(s)))], planes, sense, false);
    }

    /// <summary>
    /// A calibration by geometry: hard supports of the shaft, each with a transducer that shows the force on it. It serves any speed at which the
    /// supports are stiff against the shaft.
    /// </summary>
    /// <param name="inner">The support of the first transducer: its place along the shaft, and the force for one unit of the recording.</param>
    /// <param name="outer">The support of the second.</param>
    /// <param name="markToTransducer">The wheel's place under the transducers at the moment of the index mark.</param>
    /// <param name="planes">The planes that the unbalance is told in.</param>
    /// <param name="sense">The senses of turning and of phases.</param>
    /// <returns>The calibration, or null where both supports are at one place.</returns>
    /// <source>equilibrium of forces and moments; docs/theory/balance.md, forces on the supports</source>
    public static SpinCalibration? OfSupports(
        (Length Axial, Force PerUnit) inner, (Length Axial, Force PerUnit) outer, WheelAngle markToTransducer, PlanePair planes, SpinSense sense)
    {
        ArgumentNullException.ThrowIfNull(planes);
        var (za, zb) = (inner.Axial.Millimetres, outer.Axial.Millimetres);
        if (za == zb)
        {
            return null;
        }

        // 1 g·mm turning at 1 rad/s pulls with 10⁻⁶ N. A heavy place under the transducer at the mark gives a phase of nothing.
        var turn = Complex.FromPolarCoordinates(1e-6, -markToTransducer.Radians);
        Complex[] Column(double z) => [turn * ((z - zb) / (za - zb) / inner.PerUnit.Newtons), turn * ((za - z) / (za - zb) / outer.PerUnit.Newtons)];
        return new SpinCalibration([(1, [Column(planes.Inner.Axial.Millimetres), Column(planes.Outer.Axial.Millimetres)], [0, 0], [[null, null], [null, null]])], planes, sense, true);
    }

    /// <summary>True where the calibration serves a speed: between its own, or a little beyond.</summary>
    public bool Serves(RotationalSpeed speed)
    {
        var slack = Figures.Of("spin.beyondCalibrationPercent").Value / 100;
        return AnySpeed || (speed.RadiansPerSecond >= _speeds[0].RadiansPerSecond * (1 - slack) && speed.RadiansPerSecond <= _speeds[^1].RadiansPerSecond * (1 + slack));
    }

    /// <summary>The coefficients at a speed, in the calibration's own sense of phases. Between two speeds what is left of them over the square of the speed goes straight.</summary>
    public CalibratedSpeed At(RotationalSpeed speed)
    {
        var columns = ColumnsAt(speed.RadiansPerSecond);
        var errors = ErrorsAt(speed.RadiansPerSecond);
        return new CalibratedSpeed(speed, Told(0), Told(1)) { Misfit = MisfitAt(speed.RadiansPerSecond) };

        List<UnbalanceInfluence> Told(int plane) =>
            [.. columns[plane].Select((c, p) => new UnbalanceInfluence(c.Magnitude, VibrationReading.InOneTurn(Sense.WithWheelAngle * c.Phase)) { StandardErrorPerGramMillimetre = errors[plane][p] })];
    }

    /// <summary>
    /// The unbalance that gives what a spin shows.
    /// </summary>
    /// <param name="result">A spin that turns in the calibration's sense at a speed that it serves.</param>
    /// <param name="sense">The spin's senses.</param>
    /// <param name="planes">The planes to tell the unbalance in, or null for the calibration's own.</param>
    /// <returns>The unbalance, or null where the two planes cannot be told apart by these transducers.</returns>
    public FoundUnbalance? Find(SpinResult result, SpinSense sense, PlanePair? planes)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (sense.Rotation != Sense.Rotation)
        {
            throw new ArgumentException("A machine calibrated for one sense of turning says nothing of the other.", nameof(sense));
        }

        var columns = ColumnsAt(result.Speed.RadiansPerSecond);
        var values = SingularValues.Of(columns);
        if (double.IsInfinity(values.ConditionNumber))
        {
            return null;
        }

        var found = values.LeastSquares([.. result.Points.Select(p => InWheelSense(p.Lead(sense)))]);
        var pair = new UnbalancePair(new UnbalanceVector(found[0]), new UnbalanceVector(found[1]));
        var to = planes ?? Planes;

        // What one unit on each transducer alone would be taken for, in the planes asked for: errors of the two add as squares, and so do a reading's own, what the
        // calibration spins left unexplained, and the coefficients' errors with the unbalance that they stand beside.
        var (inner, outer) = (0.0, 0.0);
        var misfit = MisfitAt(result.Speed.RadiansPerSecond);
        var coefficients = ErrorsAt(result.Speed.RadiansPerSecond);
        double[] beside = [pair.Inner.Amount.GramMillimetres, pair.Outer.Amount.GramMillimetres];
        for (var p = 0; p < 2; p++)
        {
            var one = values.LeastSquares([p == 0 ? 1 : 0, p == 1 ? 1 : 0]);
            var moved = new UnbalancePair(new UnbalanceVector(one[0]), new UnbalanceVector(one[1])).MovedTo(Planes, to);
            var error = Math.Sqrt(Math.Pow(result.Points[p].StandardError, 2) + Math.Pow(misfit[p], 2) + beside.Select((u, k) => Math.Pow(u * (coefficients[k][p] ?? 0), 2)).Sum());
            inner += Math.Pow(error * moved.Inner.Amount.GramMillimetres, 2);
            outer += Math.Pow(error * moved.Outer.Amount.GramMillimetres, 2);
        }

        return new FoundUnbalance(
            pair.MovedTo(Planes, to), to,
            Unbalance.FromGramMillimetres(Math.Sqrt(inner)), Unbalance.FromGramMillimetres(Math.Sqrt(outer)),
            values.ConditionNumber)
        {
            HoldsCalibrationError = coefficients.All(c => c.All(e => e is not null)),
        };
    }

    /// <summary>A leading phasor told so that it turns with the wheel's angle.</summary>
    internal Complex InWheelSense(Complex lead) => Sense.Rotation == RotationSense.Clockwise ? lead : Complex.Conjugate(lead);

    private Complex[][] ColumnsAt(double radiansPerSecond)
    {
        var (low, high, share) = Between(radiansPerSecond);
        return Scaled(_speeds[low].PerSquare, _speeds[high].PerSquare, share, radiansPerSecond * radiansPerSecond);
    }

    private double[] MisfitAt(double radiansPerSecond)
    {
        var (low, high, share) = Between(radiansPerSecond);
        return [.. _speeds[low].MisfitPerSquare.Zip(_speeds[high].MisfitPerSquare, (a, b) => radiansPerSecond * radiansPerSecond * (a + (share * (b - a))))];
    }

    private double?[][] ErrorsAt(double radiansPerSecond)
    {
        var (low, high, share) = Between(radiansPerSecond);
        return [.. _speeds[low].ErrorsPerSquare.Zip(_speeds[high].ErrorsPerSquare, (a, b) => a.Zip(b, (x, y) => radiansPerSecond * radiansPerSecond * (x + (share * (y - x)))).ToArray())];
    }

    /// <summary>The calibrated speeds below and above, and how far it is from the one to the other.</summary>
    private (int Low, int High, double Share) Between(double radiansPerSecond)
    {
        var after = Array.FindIndex(_speeds, s => s.RadiansPerSecond >= radiansPerSecond);
        if (AnySpeed || after == 0 || _speeds.Length == 1)
        {
            return (0, 0, 0);
        }

        return after < 0
            ? (_speeds.Length - 1, _speeds.Length - 1, 0)
            : (after - 1, after, (radiansPerSecond - _speeds[after - 1].RadiansPerSecond) / (_speeds[after].RadiansPerSecond - _speeds[after - 1].RadiansPerSecond));
    }

    private static Complex[][] Scaled(Complex[][] low, Complex[][] high, double share, double square) =>
        [.. low.Select((column, p) => column.Select((c, i) => square * (c + (share * (high[p][i] - c)))).ToArray())];

    private static double[] MisfitPerSquare(CalibratedSpeed speed) =>
        [.. speed.Inner.Select((_, p) => p < speed.Misfit.Count ? speed.Misfit[p] / (speed.Speed.RadiansPerSecond * speed.Speed.RadiansPerSecond) : 0)];

    private static double?[][] ErrorsPerSquare(CalibratedSpeed speed)
    {
        var square = speed.Speed.RadiansPerSecond * speed.Speed.RadiansPerSecond;
        return [.. new[] { speed.Inner, speed.Outer }.Select(plane => plane.Select(c => c.StandardErrorPerGramMillimetre / square).ToArray())];
    }

    /// <summary>Coefficients in the wheel's sense, over the square of their speed.</summary>
    private static Complex[][] PerSquare(CalibratedSpeed speed, SpinSense sense)
    {
        var square = speed.Speed.RadiansPerSecond * speed.Speed.RadiansPerSecond;
        Complex[] Column(IReadOnlyList<UnbalanceInfluence> plane) =>
            [.. plane.Select(c => Complex.FromPolarCoordinates(c.MagnitudePerGramMillimetre / square, sense.WithWheelAngle * c.Phase.Radians))];
        return [Column(speed.Inner), Column(speed.Outer)];
    }
}
