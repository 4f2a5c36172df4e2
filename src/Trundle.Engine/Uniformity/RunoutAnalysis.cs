using System.Numerics;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Uniformity;

/// <summary>From dial readings to harmonics.</summary>
public static class RunoutAnalysis
{
    private const int MostOrders = 8;
    private const int MostOrdersUneven = 4;
    private const int LeastPlaces = 3;

    /// <summary>The orders that readings at these places are fitted with where nobody asks for a number.</summary>
    /// <returns>All that evenly spaced places can tell, up to 8; with uneven places a third of the readings, up to 4; at least 1.</returns>
    /// <source>own choice: docs/theory/runout-and-matching.md (how many orders)</source>
    public static int OrdersFor(IReadOnlyList<WheelAngle> places)
    {
        ArgumentNullException.ThrowIfNull(places);
        return AreEven(places)
            ? Math.Clamp((places.Count - 1) / 2, 1, MostOrders)
            : Math.Clamp((places.Count - 1) / 3, 1, MostOrdersUneven);
    }

    /// <summary>
    /// Harmonics by least squares, at any places.
    /// </summary>
    /// <param name="readings">At least three different places.</param>
    /// <param name="orders">How many orders, from 1; null leaves it to the places.</param>
    /// <param name="gaugeStep">The dial's own step, or null: then the readings' scatter about the fit tells the standard errors.</param>
    /// <returns>One of the three cases.</returns>
    /// <source>NIST/SEMATECH e-Handbook 2.3.4.4 (least-squares circle of a roundness trace); docs/theory/runout-and-matching.md</source>
    public static RunoutOutcome Of(IReadOnlyList<DialReading> readings, int? orders, Length? gaugeStep)
    {
        ArgumentNullException.ThrowIfNull(readings);
        WheelAngle[] places = [.. readings.Select(r => r.Place)];
        var different = DifferentPlaces(places);
        var wanted = orders ?? OrdersFor(places);
        var needed = Math.Max(LeastPlaces, orders is null ? 0 : (2 * wanted) + 1);
        if (different < needed)
        {
            return new RunoutOutcome.TooFewPlaces(needed);
        }

        double[] at = [.. places.Select(p => p.Radians)];
        var fit = OrderFit.Of(at, wanted);
        while (fit is null && orders is null && wanted > 1)
        {
            fit = OrderFit.Of(at, --wanted);
        }

        return fit is null ? new RunoutOutcome.PlacesDoNotTell(wanted) : Found(readings, at, fit, wanted, gaugeStep);
    }

    private static RunoutOutcome.Found Found(IReadOnlyList<DialReading> readings, double[] at, OrderFit fit, int orders, Length? gaugeStep)
    {
        var n = readings.Count;
        double[] metres = [.. readings.Select(r => r.Value.Metres)];
        var x = fit.Solve(metres);
        WheelAngle[] places = [.. readings.Select(r => r.Place)];
        var even = AreEven(places);
        var first = new Complex(x[1], x[2]);
        double[] left = [.. metres.Select((m, i) => m - x[0] - (x[1] * Math.Cos(at[i])) - (x[2] * Math.Sin(at[i])))];
        var residuals = fit.Residuals(metres);
        var reading = ReadingUncertainty(residuals, n - fit.Unknowns, gaugeStep);
        return new RunoutOutcome.Found
        {
            Readings = readings,
            Mean = Length.FromMetres(x[0]),
            PeakToPeak = Length.FromMetres(metres.Max() - metres.Min()),
            PeakToPeakAround = Length.FromMetres(RangeAround(x)),
            Harmonics = [.. Enumerable.Range(1, orders).Select(k => Harmonic(k, x, fit, reading, even ? n - k : null))],
            First = new HarmonicVector<Length>(first),
            PeakToPeakAfterFirst = Length.FromMetres(left.Max() - left.Min()),
            RootMeanSquareAfterFirst = Length.FromMetres(Math.Sqrt(left.Average(v => v * v))),
            EvenlySpaced = even,
            GreatestGap = GreatestGap(places),
            TakenForFirst = Leaks(at, fit, orders),
            Crowding = Math.Max(fit.AmplitudeGain(1, first.Phase), fit.AmplitudeGain(1, first.Phase + (Math.PI / 2))) / Math.Sqrt(2.0 / n),
            Suspect = OutlierSearch.Of(readings, at, metres, orders),
        };
    }

    private static RunoutHarmonic Harmonic(int order, double[] x, OrderFit fit, double? readingMetres, int? alias)
    {
        var phasor = new Complex(x[(2 * order) - 1], x[2 * order]);
        var phase = WheelAngle.FromRadians(phasor.Phase).Degrees;
        return new RunoutHarmonic(
            order,
            Length.FromMetres(phasor.Magnitude),
            WheelAngle.FromDegrees(phase / order),
            Angle.FromDegrees(phase),
            readingMetres is { } u ? Length.FromMetres(u * fit.AmplitudeGain(order, phasor.Phase)) : null,
            alias);
    }

    /// <summary>Greatest less least of a fit around the whole turn.</summary>
    private static double RangeAround(double[] x)
    {
        // Steps small against the highest order; the parabola through three neighbours then gives the crest itself.
        var steps = 64 * x.Length;
        double[] around = [.. Enumerable.Range(0, steps).Select(i => x.Select((c, j) => j == 0 ? 0 : c * OrderFit.Column(j, 2 * Math.PI * i / steps)).Sum())];
        return Crest(around, 1) + Crest(around, -1);
    }

    private static double Crest(double[] around, int sign)
    {
        var n = around.Length;
        var top = Enumerable.Range(0, n).MaxBy(i => sign * around[i]);
        var (before, at, after) = (sign * around[(top + n - 1) % n], sign * around[top], sign * around[(top + 1) % n]);
        var bend = before - (2 * at) + after;
        return bend < 0 ? at - ((before - after) * (before - after) / (8 * bend)) : at;
    }

    /// <summary>Standard uncertainty of one reading: a step's uniform law, or the scatter about the fit.</summary>
    private static double? ReadingUncertainty(double[] residuals, int free, Length? gaugeStep) =>
        gaugeStep is { } step ? step.Metres / Math.Sqrt(12)
        : free > 0 ? Math.Sqrt(residuals.Sum(r => r * r) / free)
        : null;

    /// <summary>What the fit makes of a pure higher order: the first harmonic that it takes it for, at the worst phase.</summary>
    private static List<TakenForFirst> Leaks(double[] at, OrderFit fit, int orders)
    {
        var highest = (int)Figures.Of("uniformity.highest-order").Value;
        var notable = Figures.Of("uniformity.notable-share").Value;
        var leaks = new List<TakenForFirst>();
        for (var j = orders + 1; j <= highest; j++)
        {
            var cosine = fit.Solve([.. at.Select(a => Math.Cos(j * a))]);
            var sine = fit.Solve([.. at.Select(a => Math.Sin(j * a))]);
            var (c, s) = (new Complex(cosine[1], cosine[2]), new Complex(sine[1], sine[2]));

            // c·cos φ + s·sin φ runs round an ellipse; half the sum of both circles is its longer half axis.
            var share = ((c + (Complex.ImaginaryOne * s)).Magnitude + (c - (Complex.ImaginaryOne * s)).Magnitude) / 2;
            if (share >= notable)
            {
                leaks.Add(new TakenForFirst(j, share));
            }
        }

        return leaks;
    }

    private static bool AreEven(IReadOnlyList<WheelAngle> places)
    {
        var step = 360.0 / places.Count;
        double[] sorted = [.. places.Select(p => p.Degrees).Order()];
        return sorted.Length >= LeastPlaces && Enumerable.Range(0, sorted.Length).All(i => Math.Abs(sorted[i] - sorted[0] - (i * step)) <= 1e-6);
    }

    private static int DifferentPlaces(WheelAngle[] places)
    {
        double[] sorted = [.. places.Select(p => p.Degrees).Order()];
        return sorted.Where((d, i) => i == 0 || d - sorted[i - 1] > 1e-6).Count(d => d - sorted[0] < 360 - 1e-6);
    }

    private static Angle GreatestGap(WheelAngle[] places)
    {
        double[] sorted = [.. places.Select(p => p.Degrees).Order()];
        return Angle.FromDegrees(sorted.Select((d, i) => (i + 1 < sorted.Length ? sorted[i + 1] : sorted[0] + 360) - d).Max());
    }
}
