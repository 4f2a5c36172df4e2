using MathNet.Numerics.LinearAlgebra;
using Complex = System.Numerics.Complex;
using Fault = Trundle.Engine.Tests.Balance.Oracle.Why.SimulatedWheel.Fault;
using Weight = Trundle.Engine.Tests.Balance.Oracle.Why.SimulatedWheel.Weight;

namespace Trundle.Engine.Tests.Balance.Oracle.Why;

/// <summary>
/// The best that can be said under the tables, by another way than the engine's: differences of neighbouring spins with their whole covariance
/// (MathNet), the fault's effect taken from the simulated forces, and every size summed over a fine grid or put into the covariance.
/// </summary>
internal sealed class WhyOracle
{
    private readonly WhyCase _case;
    private readonly int _differences;
    private readonly Matrix<double> _covariance;
    private readonly Matrix<double> _inverse;
    private readonly double _logDeterminant;
    private readonly Vector<double> _seen;
    private readonly Vector<double> _expected;
    private readonly int _sides;
    private readonly int _rounds;

    private WhyOracle(WhyCase drawn)
    {
        _case = drawn;
        _differences = drawn.Wheel.Spins - 1;
        var s2 = drawn.Wheel.Deviation * drawn.Wheel.Deviation;
        _covariance = Matrix<double>.Build.Dense(4 * _differences, 4 * _differences, (a, b) =>
            a % 4 != b % 4 ? 0 : a / 4 == b / 4 ? 2 * s2 : Math.Abs((a / 4) - (b / 4)) == 1 ? -s2 : 0);
        _inverse = _covariance.Inverse();
        _logDeterminant = Math.Log(_covariance.Determinant());
        _seen = Differences(j => drawn.Displays[j]);
        _expected = Mean(Fault.None);
        _sides = drawn.Weights.Count(w => w.Spin == 0);
        _rounds = drawn.Weights.Count / _sides;
    }

    /// <summary>The causes with their probabilities, the likeliest first.</summary>
    public static IReadOnlyList<(string Cause, double Probability)> Of(WhyCase drawn)
    {
        var oracle = new WhyOracle(drawn);
        var logs = WhyPriors.Causes.Select(c => (c.Cause, Log: Math.Log(c.Prior) + oracle.LogEvidence(c.Cause))).ToList();
        var whole = LogSum(logs.Select(l => l.Log));
        return [.. logs.Select(l => (l.Cause, Probability: Math.Exp(l.Log - whole))).OrderByDescending(l => l.Probability)];
    }

    private double LogEvidence(string cause) => cause switch
    {
        "rim-distance" => LineEvidence(x => new Fault { Distance = x }, Sizes(cause, "error")),
        "rim-diameter" => LineEvidence(x => new Fault { Diameter = x }, Sizes(cause, "error")),
        "rim-width" => LineEvidence(x => new Fault { Width = x }, Sizes(cause, "error")),
        "weight-angle" => Forms(cause,
            ("one", [.. All.Select(w => TurnEvidence(i => i == w))]),
            ("all", _case.Weights.Count > 1 ? [TurnEvidence(_ => true)] : []),
            ("round", _rounds > 1 && _sides > 1 ? [.. Enumerable.Range(0, _rounds).Select(r => TurnEvidence(i => i / _sides == r))] : [])),
        "weight-mass" => LogMean(All.Select(MassEvidence)),
        "weights-swapped" => Forms(cause,
            ("round", [.. Enumerable.Range(0, _rounds).Select(r => At(Mean(new Fault { True = (i, w) => i / _sides == r ? w with { Outer = !w.Outer } : w })))]),
            ("all", _rounds > 1 ? [At(Mean(new Fault { True = (_, w) => w with { Outer = !w.Outer } }))] : []),
            ("masses", _sides == 2 ? [.. Enumerable.Range(0, _rounds).Select(r => At(Mean(new Fault { True = (i, w) => i / 2 == r ? w with { Grams = _case.Weights[i ^ 1].Grams } : w })))] : [])),
        "weight-place" => Forms(cause,
            ("inner", Has(false) ? [PlaceEvidence(i => !_case.Weights[i].Outer)] : []),
            ("outer", Has(true) ? [PlaceEvidence(i => _case.Weights[i].Outer)] : []),
            ("both", Has(false) && Has(true) ? [PlaceEvidence(_ => true)] : []),
            ("one", _rounds > 1 ? [.. All.Select(w => PlaceEvidence(i => i == w))] : [])),
        "weight-lost" => Forms(cause,
            ("before", [.. All.Select(w => At(Mean(new Fault { On = (i, _) => i != w })))]),
            ("later", [.. All.SelectMany(w => Enumerable.Range(0, _case.Wheel.Spins).Where(s => s >= _case.Weights[w].Spin + 2).Select(s => At(Mean(new Fault { On = (i, j) => i != w || j < s }))))])),
        "re-seated" => LogMean(Enumerable.Range(1, _differences).Select(SeatEvidence)),
        "loose-object" => Forms(cause, ("middle", [LooseEvidence(true)]), ("planes", [LooseEvidence(false)])),
        "calibration" => Forms(cause, ("both", [GainEvidence(true, true)]), ("first", [GainEvidence(true, false)]), ("second", [GainEvidence(false, true)])),
        _ => At(_expected),
    };

    private IEnumerable<int> All => Enumerable.Range(0, _case.Weights.Count);

    private bool Has(bool outer) => _case.Weights.Any(w => w.Outer == outer);

    private static IReadOnlyList<(double Weight, double Mean, double Deviation)> Sizes(string cause, string size) =>
        [.. WhyPriors.Size(cause, size).Select(p => (p.Weight, p.Mean, p.Deviation!.Value))];

    private Vector<double> Differences(Func<int, (Complex Inner, Complex Outer)> display) =>
        Vector<double>.Build.DenseOfEnumerable(Enumerable.Range(0, _differences).SelectMany(j =>
        {
            var (a, b) = (display(j), display(j + 1));
            return new[] { (b.Inner - a.Inner).Real, (b.Inner - a.Inner).Imaginary, (b.Outer - a.Outer).Real, (b.Outer - a.Outer).Imaginary };
        }));

    private Vector<double> Mean(Fault fault) => Differences(j => _case.Wheel.Display(fault, _case.Weights, j, withStart: false));

    private double At(Vector<double> mean)
    {
        var off = _seen - mean;
        return -0.5 * ((off * _inverse * off) + _logDeterminant);
    }

    private double With(Vector<double> mean, Matrix<double> covariance)
    {
        var cholesky = covariance.Cholesky();
        var off = _seen - mean;
        return -0.5 * ((off * cholesky.Solve(off)) + cholesky.DeterminantLn);
    }

    /// <summary>A size on which the displays rest in a straight line: its bells summed over a grid.</summary>
    private double LineEvidence(Func<double, Fault> fault, IReadOnlyList<(double Weight, double Mean, double Deviation)> bells)
    {
        var slope = Mean(fault(1)) - _expected;
        var off = _seen - _expected;
        var (c0, c1, c2) = (off * _inverse * off, off * _inverse * slope, slope * _inverse * slope);
        var whole = bells.Sum(b => b.Weight);
        return LogSum(bells.Select(b =>
        {
            var grid = Grid(b.Mean, b.Deviation, 2001).Select(g => g.Log - (0.5 * (c0 - (2 * c1 * g.At) + (c2 * g.At * g.At))));
            return Math.Log(b.Weight / whole) + LogSum(grid);
        })) - (0.5 * _logDeterminant);
    }

    private double MassEvidence(int weight)
    {
        var grams = _case.Weights[weight].Grams;
        var bells = Sizes("weight-mass", "error").Where(s => grams + s.Mean > 5 * s.Deviation)
            .Concat(Sizes("weight-mass", "part").Select(p => (p.Weight, p.Mean * grams, p.Deviation * grams))).ToList();
        return LineEvidence(x => new Fault { True = (i, w) => i == weight ? w with { Grams = w.Grams + x } : w }, bells);
    }

    private double TurnEvidence(Func<int, bool> chosen)
    {
        // Turned by φ the mean is still + cos φ·a + sin φ·b.
        Vector<double> Turned(double by) => Mean(new Fault { True = (i, w) => chosen(i) ? w with { Angle = w.Angle + by } : w });
        var (at0, at180, at90) = (Turned(0), Turned(Math.PI), Turned(Math.PI / 2));
        var (still, a) = ((at0 + at180) / 2, (at0 - at180) / 2);
        var b = at90 - still;
        var off = _seen - still;
        double[] c = [off * _inverse * off, off * _inverse * a, off * _inverse * b, a * _inverse * a, a * _inverse * b, b * _inverse * b];
        const int points = 7200;
        return LogSum(Enumerable.Range(0, points).Select(i =>
        {
            var turn = 2 * Math.PI * i / points;
            var (x, y) = (Math.Cos(turn), Math.Sin(turn));
            var square = c[0] - (2 * x * c[1]) - (2 * y * c[2]) + (x * x * c[3]) + (2 * x * y * c[4]) + (y * y * c[5]);
            return Math.Log(TurnDensity(turn) * 2 * Math.PI / points) - (0.5 * square);
        })) - (0.5 * _logDeterminant);
    }

    private static double TurnDensity(double turn) => WhyPriors.Size("weight-angle", "turn").Sum(p =>
    {
        if (p.Deviation is not { } degrees)
        {
            return p.Weight / (2 * Math.PI);
        }

        var d = degrees * Math.PI / 180;
        return Enumerable.Range(-2, 5).Sum(k => p.Weight * Math.Exp(-0.5 * Math.Pow((turn - (p.Mean * Math.PI / 180) + (2 * Math.PI * k)) / d, 2)) / (d * Math.Sqrt(2 * Math.PI)));
    });

    private double PlaceEvidence(Func<int, bool> chosen)
    {
        var mean = _expected.Clone();
        var covariance = _covariance.Clone();
        foreach (var outer in new[] { false, true })
        {
            if (!All.Any(i => chosen(i) && _case.Weights[i].Outer == outer))
            {
                continue;
            }

            var name = outer ? "outer" : "inner";
            Vector<double> Placed(double part, double partTimesShift) =>
                Mean(new Fault { Place = (i, w) => chosen(i) && w.Outer == outer ? (part, partTimesShift / part) : (1, 0) }) - _expected;
            var perPart = Placed(2, 0);
            var perShift = Placed(1, 1);
            var radius = Sizes("weight-place", $"{name}-radius")[0];
            var shift = Sizes("weight-place", $"{name}-shift")[0];
            mean += ((radius.Mean - 1) * perPart) + ((outer ? -1 : 1) * shift.Mean * perShift);
            covariance += (perPart.OuterProduct(perPart) * (radius.Deviation * radius.Deviation)) + (perShift.OuterProduct(perShift) * (shift.Deviation * shift.Deviation));
        }

        return With(mean, covariance);
    }

    private double SeatEvidence(int from)
    {
        var bells = Sizes("re-seated", "static");
        return LogSum(Grid(0.5, 0.07, 61).SelectMany(g => bells.Select(b =>
        {
            Vector<double> Moved(Complex u) => Mean(new Fault { Extra = j => j >= from ? (u * (1 - g.At), u * g.At) : (0, 0) }) - _expected;
            return g.Log + Math.Log(b.Weight) + With(_expected, _covariance + Both(Moved(b.Deviation), Moved(b.Deviation * Complex.ImaginaryOne)));
        })));
    }

    private double LooseEvidence(bool same) => LogSum(Sizes("loose-object", "static").Select(b =>
    {
        var covariance = _covariance.Clone();
        for (var j = 0; j < _case.Wheel.Spins; j++)
        {
            foreach (var u in new[] { Complex.One, Complex.ImaginaryOne })
            {
                Vector<double> Seen(double inner, double outer) =>
                    Mean(new Fault { Extra = k => k == j ? (u * inner * b.Deviation / 2, u * outer * b.Deviation / 2) : (0, 0) }) - _expected;
                var vectors = same ? new[] { Seen(1, 1) } : [Seen(1, 0), Seen(0, 1)];
                covariance = vectors.Aggregate(covariance, (c, v) => c + v.OuterProduct(v));
            }
        }

        return Math.Log(b.Weight) + With(_expected, covariance);
    }));

    private double GainEvidence(bool first, bool second) => LogSum(Sizes("calibration", "gain").Select(b =>
    {
        Vector<double> Gained(Complex by) => Mean(new Fault { FirstGain = first ? 1 + by : 1, SecondGain = second ? 1 + by : 1 }) - _expected;
        return Math.Log(b.Weight) + With(_expected, _covariance + Both(Gained(b.Deviation), Gained(b.Deviation * Complex.ImaginaryOne)));
    }));

    private static Matrix<double> Both(Vector<double> a, Vector<double> b) => a.OuterProduct(a) + b.OuterProduct(b);

    /// <summary>A bell as a grid over seven deviations to each side: places and the logarithms of their weights.</summary>
    private static IEnumerable<(double At, double Log)> Grid(double mean, double deviation, int points)
    {
        var step = 14 * deviation / (points - 1);
        return Enumerable.Range(0, points).Select(i =>
        {
            var at = mean - (7 * deviation) + (i * step);
            return (at, Math.Log(step / (deviation * Math.Sqrt(2 * Math.PI))) - (0.5 * Math.Pow((at - mean) / deviation, 2)));
        });
    }

    private static double Forms(string cause, params (string Form, double[] Logs)[] forms)
    {
        var there = forms.Where(f => f.Logs.Length > 0).ToList();
        var sum = there.Sum(f => WhyPriors.Share(cause, f.Form));
        return LogSum(there.Select(f => Math.Log(WhyPriors.Share(cause, f.Form) / sum) + LogMean(f.Logs)));
    }

    private static double LogMean(IEnumerable<double> logs)
    {
        List<double> list = [.. logs];
        return LogSum(list) - Math.Log(list.Count);
    }

    private static double LogSum(IEnumerable<double> logs)
    {
        List<double> list = [.. logs];
        var greatest = list.Max();
        return greatest + Math.Log(list.Sum(l => Math.Exp(l - greatest)));
    }
}
