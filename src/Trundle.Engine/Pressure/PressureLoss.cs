using Trundle.Engine.Reference;
using Trundle.Engine.Uniformity;
using Trundle.Measures;

namespace Trundle.Engine.Pressure;

/// <summary>One reading beside the line through all of them.</summary>
/// <param name="Reading">As read.</param>
/// <param name="AtReference">What the gauge would have shown at the reference temperature, in the reference air.</param>
/// <param name="OffLine">How far that lies above the line.</param>
/// <param name="StandardUncertainty">How well it is known, by gauge, thermometer and weather.</param>
public sealed record LossPoint(DatedPressure Reading, GaugePressure AtReference, GaugePressure OffLine, GaugePressure StandardUncertainty);

/// <summary>A loss of pressure in one time, with its range. A gain is negative.</summary>
/// <param name="Estimate">By least squares.</param>
/// <param name="StandardError">One standard deviation of the estimate.</param>
/// <param name="Low">Lower end of the 95 % range.</param>
/// <param name="High">Upper end of the 95 % range.</param>
public sealed record LossRange(GaugePressure Estimate, GaugePressure StandardError, GaugePressure Low, GaugePressure High)
{
    internal LossRange Times(double factor) => new(Estimate * factor, StandardError * factor, Low * factor, High * factor);
}

/// <summary>The line at one time, at the reference temperature.</summary>
/// <param name="Estimate">The line itself.</param>
/// <param name="Low">Lower edge of its 95 % band.</param>
/// <param name="High">Upper edge.</param>
public readonly record struct LossLine(GaugePressure Estimate, GaugePressure Low, GaugePressure High);

/// <summary>How long until a pressure is reached, counted from the last reading. Each is null where it does not come within ten years.</summary>
/// <param name="Estimate">By the line itself.</param>
/// <param name="Earliest">By the lower edge of the line's 95 % band.</param>
/// <param name="Latest">By the upper edge.</param>
/// <param name="Reached">The line is at the pressure or below it already.</param>
public sealed record TimeToPressure(TimeSpan? Estimate, TimeSpan? Earliest, TimeSpan? Latest, bool Reached);

/// <summary>How fast a tyre loses air, from readings with temperature and height taken out.</summary>
/// <remarks>
/// Each reading is brought to one temperature by the absolute pressure, y = (P + Pa) Tref / T. A straight line is laid through them by least
/// squares, each weighted with its own uncertainty. Where air was let in, a new level begins and the slope stays common. Its standard error is
/// the greater of what gauge, thermometer and weather let expect and what the readings' own scatter shows. See docs/theory/pressure.md.
/// </remarks>
public sealed class PressureLoss
{
    private const double ChanceOutside = 0.05;
    private const double NormalWidth = 1.959963984540054;
    private const double MostDays = 3652.5;

    private readonly double _slope;
    private readonly double _levelMean;
    private readonly double _timeMean;
    private readonly double _levelVariance;
    private readonly double _slopeVariance;
    private readonly double _commonHalfWidth;
    private readonly double _last;

    private PressureLoss(IReadOnlyList<DatedPressure> readings, ReadingAccuracy accuracy, Temperature reference)
    {
        (Reference, Accuracy, Air) = (reference, accuracy, readings[^1].Air);
        var start = readings[0].At;
        var time = readings.Select(r => (r.At - start).TotalDays).ToArray();
        var level = readings.Select(r => r.Value.In(r.Air).Pascals * reference.Kelvins / r.Tyre.Kelvins).ToArray();
        var sigma = readings.Select((r, i) => Uncertainty(r, level[i])).ToArray();
        var groups = Groups(readings);
        var means = groups.Select(g => (Time: Weighted(g, time, sigma), Level: Weighted(g, level, sigma), Weight: g.Sum(i => Weight(sigma, i)))).ToList();
        var spread = groups.Select((g, k) => g.Sum(i => Weight(sigma, i) * Square(time[i] - means[k].Time))).Sum();
        _slope = groups.Select((g, k) => g.Sum(i => Weight(sigma, i) * (time[i] - means[k].Time) * (level[i] - means[k].Level))).Sum() / spread;

        var residual = new double[time.Length];
        for (var k = 0; k < groups.Count; k++)
        {
            foreach (var i in groups[k])
            {
                residual[i] = level[i] - means[k].Level - (_slope * (time[i] - means[k].Time));
            }
        }

        Free = readings.Count - groups.Count - 1;
        var scatter = Free > 0 ? Math.Sqrt(residual.Select((r, i) => Weight(sigma, i) * r * r).Sum() / Free) : 0;
        var known = 1 / Math.Sqrt(spread);
        var width = Math.Max(NormalWidth, Free > 0 ? StudentTail.Quantile(ChanceOutside, Free) * scatter : 0);
        (_levelMean, _timeMean, _last) = (means[^1].Level, means[^1].Time, time[^1]);
        _levelVariance = width * width / means[^1].Weight;
        _slopeVariance = width * width / spread;
        _commonHalfWidth = accuracy.Repeatability is null ? 0 : NormalWidth * accuracy.GreatestError.Pascals / Math.Sqrt(3);
        PerDay = Loss(-_slope, known * Math.Max(1, scatter), width * known);
        Points = [.. readings.Select((r, i) => new LossPoint(r, Gauge(level[i]), GaugePressure.FromPascals(residual[i]), GaugePressure.FromPascals(sigma[i])))];
    }

    /// <summary>The temperature to which all readings were brought.</summary>
    public Temperature Reference { get; }

    /// <summary>The air's pressure of the last reading, to which gauge pressures at reference are counted.</summary>
    public AbsolutePressure Air { get; }

    /// <summary>How well the readings were taken to be known.</summary>
    public ReadingAccuracy Accuracy { get; }

    /// <summary>The readings, in order of time.</summary>
    public IReadOnlyList<LossPoint> Points { get; }

    /// <summary>How many readings there are more than the line needs.</summary>
    public int Free { get; }

    /// <summary>The loss in a day.</summary>
    public LossRange PerDay { get; }

    /// <summary>The loss in a month of 30.4375 days.</summary>
    public LossRange PerMonth => PerDay.Times(Figures.Of("leak.month").Value);

    /// <summary>What the line says for the time of the last reading, at reference.</summary>
    public GaugePressure Now => Gauge(At(_last));

    /// <summary>
    /// Lays the line through readings.
    /// </summary>
    /// <param name="readings">At least two, in order of time, two of them with time and no change of air between them.</param>
    /// <param name="accuracy">How well they are known.</param>
    /// <param name="reference">The temperature to bring them to.</param>
    /// <returns>The loss, or a problem where the readings do not hold one.</returns>
    /// <source>ideal gas at constant volume; weighted least squares with a common slope and Student's t: textbooks of regression, such as Draper and Smith, Applied Regression Analysis (from memory); uncertainty from limits, limit over √3: JCGM 100:2008 4.3.7 (from memory)</source>
    public static Reading<PressureLoss> Of(IReadOnlyList<DatedPressure> readings, ReadingAccuracy accuracy, Temperature reference)
    {
        ArgumentNullException.ThrowIfNull(readings);
        ArgumentNullException.ThrowIfNull(accuracy);
        for (var i = 1; i < readings.Count; i++)
        {
            if (readings[i].At <= readings[i - 1].At)
            {
                return Reading<PressureLoss>.Failed(new Problem($"readings[{i.ToString(System.Globalization.CultureInfo.InvariantCulture)}].at", "not-later", "This reading is not later than the one before it: list the readings in order of time, each with its own time."));
            }
        }

        return readings.Skip(1).Any(r => !r.AirChanged)
            ? Reading<PressureLoss>.Of(new PressureLoss(readings, accuracy, reference))
            : Reading<PressureLoss>.Failed(new Problem("readings", "too-few", "A loss needs at least two readings with no air let in or out between them."));
    }

    /// <summary>How long until the gauge shows a pressure at a temperature, in the air of the last reading.</summary>
    /// <param name="pressure">The pressure to wait for.</param>
    /// <param name="temperature">Temperature of the tyre's air then.</param>
    public TimeToPressure Until(GaugePressure pressure, Temperature temperature)
    {
        var target = Target(pressure, temperature);
        return new TimeToPressure(
            Crossing(t => At(t) - target),
            Crossing(t => At(t) - HalfWidth(t) - target),
            Crossing(t => At(t) + HalfWidth(t) - target),
            At(_last) <= target);
    }

    /// <summary>What the line says for a time, since air was last let in or out.</summary>
    /// <param name="time">By the clock of the readings.</param>
    public LossLine At(DateTime time)
    {
        var day = (time - Points[0].Reading.At).TotalDays;
        return new LossLine(Gauge(At(day)), Gauge(At(day) - HalfWidth(day)), Gauge(At(day) + HalfWidth(day)));
    }

    /// <summary>What a gauge pressure at some temperature, in the air of the last reading, is at the reference temperature.</summary>
    /// <param name="pressure">What the gauge shows.</param>
    /// <param name="temperature">Temperature of the tyre's air.</param>
    public GaugePressure AtReference(GaugePressure pressure, Temperature temperature) => Gauge(Target(pressure, temperature));

    /// <summary>How far apart two readings of this accuracy must be taken for the loss in a month to be known to within half of a difference.</summary>
    /// <param name="difference">The difference of two losses in a month that is to be told.</param>
    public TimeSpan Apart(GaugePressure difference)
    {
        var sigma = Math.Sqrt(Points.Average(p => Square(p.StandardUncertainty.Pascals)));
        return TimeSpan.FromDays(Math.Min(MostDays, NormalWidth * Math.Sqrt(2) * sigma * 2 / difference.Pascals * Figures.Of("leak.month").Value));
    }

    private double Uncertainty(DatedPressure reading, double level)
    {
        var gauge = Accuracy.Repeatability?.Pascals ?? (Accuracy.GreatestError.Pascals / Math.Sqrt(3));
        var weather = reading.Barometer ? 0 : Figures.Of("leak.weather").As<GaugePressure>().Pascals;
        var thermometer = level / reading.Tyre.Kelvins * Accuracy.Thermometer.Kelvins / Math.Sqrt(3);
        var ratio = Reference.Kelvins / reading.Tyre.Kelvins;
        return Math.Sqrt(Square(ratio * gauge) + Square(ratio * weather) + Square(thermometer));
    }

    /// <summary>Indexes of the readings between which no air was let in or out.</summary>
    private static List<List<int>> Groups(IReadOnlyList<DatedPressure> readings)
    {
        var groups = new List<List<int>> { new() { 0 } };
        for (var i = 1; i < readings.Count; i++)
        {
            if (readings[i].AirChanged)
            {
                groups.Add([]);
            }

            groups[^1].Add(i);
        }

        return groups;
    }

    /// <summary>The first time after the last reading at which a height above the target comes to nothing. Line and band cross once at most: the edges are bent one way only.</summary>
    private TimeSpan? Crossing(Func<double, double> above)
    {
        var (low, high) = (_last, _last + MostDays);
        if (above(low) <= 0)
        {
            return TimeSpan.Zero;
        }

        if (above(high) > 0)
        {
            return null;
        }

        for (var i = 0; i < 200 && high - low > 1e-9; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = above(middle) > 0 ? (middle, high) : (low, middle);
        }

        return TimeSpan.FromDays(high - _last);
    }

    private double Target(GaugePressure pressure, Temperature temperature) => pressure.In(Air).Pascals * Reference.Kelvins / temperature.Kelvins;

    private double At(double day) => _levelMean + (_slope * (day - _timeMean));

    private double HalfWidth(double day) => Math.Sqrt(_levelVariance + Square(_commonHalfWidth) + (_slopeVariance * Square(day - _timeMean)));

    private GaugePressure Gauge(double level) => AbsolutePressure.FromPascals(level).Above(Air);

    private static LossRange Loss(double estimate, double error, double halfWidth) => new(
        GaugePressure.FromPascals(estimate), GaugePressure.FromPascals(error), GaugePressure.FromPascals(estimate - halfWidth), GaugePressure.FromPascals(estimate + halfWidth));

    private static double Weighted(List<int> group, double[] values, double[] sigma) => group.Sum(i => Weight(sigma, i) * values[i]) / group.Sum(i => Weight(sigma, i));

    private static double Weight(double[] sigma, int i) => 1 / Square(sigma[i]);

    private static double Square(double value) => value * value;
}
