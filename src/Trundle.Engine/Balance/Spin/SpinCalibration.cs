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

    /// <summary>How far those of the two transducers go together: the correlation of the first with the second, of magnitude 0 to 1, its angle in the wheel's sense.</summary>
    public Complex MisfitCorrelation { get; init; }

    /// <summary>The same of the errors of the inner plane's coefficients.</summary>
    public Complex InnerCorrelation { get; init; }

    /// <summary>The same of the outer plane's.</summary>
    public Complex OuterCorrelation { get; init; }
}

/// <summary>The unbalance that a calibrated machine finds, with its errors.</summary>
/// <param name="Unbalance">The heavy places, in the planes asked for.</param>
/// <param name="Planes">Those planes.</param>
/// <param name="InnerStandardError">One standard error of a component (along any one direction) in the inner plane, the common turn left out.</param>
/// <param name="OuterStandardError">The same in the outer plane.</param>
/// <param name="ConditionNumber">How well the two planes are told apart; infinite where they are not.</param>
public sealed record FoundUnbalance(UnbalancePair Unbalance, PlanePair Planes, Unbalance InnerStandardError, Unbalance OuterStandardError, double ConditionNumber)
{
    /// <summary>One standard error of a turn that both planes' vectors make together, by the index mark: across each vector it stands beside the errors above, along it it does nothing.</summary>
    public required Angle TurnStandardError { get; init; }

    /// <summary>One standard error of a component across a plane's vector: its own and what the common turn does.</summary>
    public Unbalance Across(UnbalanceVector heavy, Unbalance error) =>
        Measures.Unbalance.FromGramMillimetres(Math.Sqrt(Math.Pow(error.GramMillimetres, 2) + Math.Pow(heavy.Amount.GramMillimetres * TurnStandardError.Radians, 2)));

    /// <summary>True where the standard errors hold what the calibration's own coefficients are uncertain by; false where that is not known and so left out.</summary>
    public required bool HoldsCalibrationError { get; init; }
}

/// <summary>A machine whose answer to unbalance in two planes is known.</summary>
/// <remarks>Signs are in docs/theory/spin.md.</remarks>
public sealed class SpinCalibration
{
    private readonly Point[] _speeds;

    private SpinCalibration(Point[] speeds, PlanePair planes, SpinSense sense, bool anySpeed) =>
        (_speeds, Planes, Sense, AnySpeed) = (speeds, planes, sense, anySpeed);

    /// <summary>One speed: the coefficients in the wheel's sense over its square, and what was told of it.</summary>
    private sealed record Point(double RadiansPerSecond, Complex[][] PerSquare, CalibratedSpeed Told);

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
            [.. speeds.OrderBy(s => s.Speed.Si).Select(s => new Point(s.Speed.RadiansPerSecond, PerSquare(s, sense), s))], planes, sense, false);
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
        UnbalanceInfluence[] nobodyKnows = [new(0, default), new(0, default)];
        return new SpinCalibration(
            [new Point(1, [Column(planes.Inner.Axial.Millimetres), Column(planes.Outer.Axial.Millimetres)], new CalibratedSpeed(RotationalSpeed.FromRadiansPerSecond(1), nobodyKnows, nobodyKnows))],
            planes, sense, true);
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
        PairErrors[] errors = [ErrorsAt(speed.RadiansPerSecond, 0), ErrorsAt(speed.RadiansPerSecond, 1)];
        var misfit = MisfitAt(speed.RadiansPerSecond);
        return new CalibratedSpeed(speed, Told(0), Told(1))
        {
            Misfit = [Math.Sqrt(misfit.First), Math.Sqrt(misfit.Second)],
            MisfitCorrelation = misfit.Correlation,
            InnerCorrelation = errors[0].Correlation,
            OuterCorrelation = errors[1].Correlation,
        };

        List<UnbalanceInfluence> Told(int plane) => [.. columns[plane].Select((c, p) =>
            new UnbalanceInfluence(c.Magnitude, VibrationReading.InOneTurn(Sense.WithWheelAngle * c.Phase))
            {
                StandardErrorPerGramMillimetre = HoldsErrors ? Math.Sqrt(p == 0 ? errors[plane].First : errors[plane].Second) : null,
            })];
    }

    private bool HoldsErrors => _speeds.All(s => s.Told.Inner.Concat(s.Told.Outer).All(c => c.StandardErrorPerGramMillimetre is not null));

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

        // What one unit on each transducer alone would be taken for, in the planes asked for: a reading's own errors, what the calibration spins left unexplained and the
        // coefficients' errors with the unbalance that they stand beside go through the inverse, as far as they are the same at both transducers together.
        var omega = result.Speed.RadiansPerSecond;
        var one = Told(values.LeastSquares([1, 0]));
        var two = Told(values.LeastSquares([0, 1]));
        var errors = PairErrors.Independent(result.Points[0].OwnStandardError, result.Points[1].OwnStandardError) + MisfitAt(omega)
            + (Math.Pow(pair.Inner.Amount.GramMillimetres, 2) * ErrorsAt(omega, 0)) + (Math.Pow(pair.Outer.Amount.GramMillimetres, 2) * ErrorsAt(omega, 1));
        return new FoundUnbalance(
            pair.MovedTo(Planes, to), to,
            Unbalance.FromGramMillimetres(Math.Sqrt(errors.Through(one.Inner.GramMillimetres, two.Inner.GramMillimetres))),
            Unbalance.FromGramMillimetres(Math.Sqrt(errors.Through(one.Outer.GramMillimetres, two.Outer.GramMillimetres))),
            values.ConditionNumber)
        {
            TurnStandardError = result.MarkStandardError,
            HoldsCalibrationError = HoldsErrors,
        };

        UnbalancePair Told(Complex[] found) => new UnbalancePair(new UnbalanceVector(found[0]), new UnbalanceVector(found[1])).MovedTo(Planes, to);
    }

    /// <summary>A leading phasor told so that it turns with the wheel's angle.</summary>
    internal Complex InWheelSense(Complex lead) => Sense.Rotation == RotationSense.Clockwise ? lead : Complex.Conjugate(lead);

    private Complex[][] ColumnsAt(double radiansPerSecond)
    {
        var (low, high, share) = Between(radiansPerSecond);
        return Scaled(_speeds[low].PerSquare, _speeds[high].PerSquare, share, radiansPerSecond * radiansPerSecond);
    }

    private PairErrors MisfitAt(double radiansPerSecond) =>
        Errors(radiansPerSecond, s => (s.Misfit.ElementAtOrDefault(0), s.Misfit.ElementAtOrDefault(1), s.MisfitCorrelation));

    /// <summary>The errors of one plane's coefficients; 0 where nobody knows them.</summary>
    private PairErrors ErrorsAt(double radiansPerSecond, int plane) => Errors(radiansPerSecond, s =>
    {
        var (of, correlation) = plane == 0 ? (s.Inner, s.InnerCorrelation) : (s.Outer, s.OuterCorrelation);
        return (of[0].StandardErrorPerGramMillimetre ?? 0, of[1].StandardErrorPerGramMillimetre ?? 0, correlation);
    });

    /// <summary>Standard errors go as the coefficients do, over the square of the speed; how far they go together goes straight.</summary>
    private PairErrors Errors(double radiansPerSecond, Func<CalibratedSpeed, (double First, double Second, Complex Correlation)> of)
    {
        var (low, high, share) = Between(radiansPerSecond);
        var (a, b) = (of(_speeds[low].Told), of(_speeds[high].Told));
        var (fromLow, fromHigh) = ((1 - share) * Square(low), share * Square(high));
        return PairErrors.Of((fromLow * a.First) + (fromHigh * b.First), (fromLow * a.Second) + (fromHigh * b.Second), a.Correlation + (share * (b.Correlation - a.Correlation)));

        double Square(int speed) => Math.Pow(radiansPerSecond / _speeds[speed].RadiansPerSecond, 2);
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

    /// <summary>Coefficients in the wheel's sense, over the square of their speed.</summary>
    private static Complex[][] PerSquare(CalibratedSpeed speed, SpinSense sense)
    {
        var square = speed.Speed.RadiansPerSecond * speed.Speed.RadiansPerSecond;
        Complex[] Column(IReadOnlyList<UnbalanceInfluence> plane) =>
            [.. plane.Select(c => Complex.FromPolarCoordinates(c.MagnitudePerGramMillimetre / square, sense.WithWheelAngle * c.Phase.Radians))];
        return [Column(speed.Inner), Column(speed.Outer)];
    }
}
