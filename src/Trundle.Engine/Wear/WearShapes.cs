using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Wear;

/// <summary>How likely the readings of one tyre are under each form of each pattern, its size integrated. The formulas stand in docs/theory/wear.md.</summary>
internal sealed class WearShapes
{
    private static readonly double Gauge = Mm("wear.gauge");
    private static readonly double Local = Mm("wear.local");
    private static readonly double Round = Mm("wear.round");
    private static readonly double Tilt = Mm("wear.tilt");
    private static readonly double Crown = Mm("wear.crown");
    private static readonly double Edge = Mm("wear.edge");
    private static readonly double RibSlope = Figures.Of("wear.rib-slope").Value / 100;
    private static readonly double SlopeCentre = Figures.Of("wear.slope-centre").Value / 100;
    private static readonly double ShoulderCentre = Figures.Of("wear.shoulder-centre").Value / 100;
    private static readonly double SlopeShare = Figures.Of("wear.slope-share").Value / 100;
    private static readonly double FeatherTilt = Mm("wear.feather-tilt");
    private static readonly double BlockScatter = Mm("wear.block-scatter");
    private static readonly double CupLength = Figures.Of("wear.cup-length").Value;
    private static readonly double DiagonalShift = Figures.Of("wear.diagonal-shift").Value;
    private static readonly double FlatHalf = Figures.Of("wear.flat-half").Value;
    private static readonly double FlatMet = Figures.Of("wear.flat-met").Value / 100;

    private readonly TreadReadings _readings;
    private readonly int _grooves;
    private readonly int _ribs;
    private readonly double[,] _even;

    public WearShapes(TreadReadings readings)
    {
        _readings = readings;
        _grooves = readings.Grooves.Count;
        _ribs = readings.Ribs.Count;
        _even = Even();
    }

    /// <summary>The logarithm of the readings' density under a form.</summary>
    public double LogEvidence(WearForm form) => form.Pattern switch
    {
        WearPattern.Even => Density(new double[_readings.Count], (double[,])_even.Clone()),
        WearPattern.Centre => Drop(form.Pattern, Across(0, -1, 0)),
        WearPattern.BothShoulders => Drop(form.Pattern, Across(-1, 0, -1)),
        WearPattern.OneShoulder => OneShoulder(form),
        WearPattern.Feather => Feather(form),
        WearPattern.HeelAndToe => HeelAndToe(form.Pattern),
        WearPattern.Cups => GaussianEvidence.LogSum([.. ((double[])[-1, 0, 1]).Select(side => Math.Log(1.0 / 3) + Dips(form.Pattern, 0, side))]),
        WearPattern.Diagonal => GaussianEvidence.LogSum([.. ((double[])[-1, 1]).Select(way => Math.Log(0.5) + Dips(form.Pattern, way * DiagonalShift, 0))]),
        WearPattern.FlatSpot => FlatSpot(form.Pattern),
        WearPattern.Other => Other(form.Pattern),
    };

    /// <summary>Ordinary scatter: tilt and crown across, places around, each single place, and the gauge.</summary>
    private double[,] Even()
    {
        var covariance = new double[_readings.Count, _readings.Count];
        var step = _readings.StepMm * _readings.StepMm / 12;
        for (var i = 0; i < _grooves; i++)
        {
            var a = _readings.Grooves[i];
            for (var j = 0; j <= i; j++)
            {
                var b = _readings.Grooves[j];
                var shared = (Tilt * Tilt * a.Across * b.Across / 4)
                    + (a.Across == 0 && b.Across == 0 ? Crown * Crown : 0)
                    + (a.AroundDegrees == b.AroundDegrees ? Round * Round : 0)
                    + (i == j ? (Local * Local) + (Gauge * Gauge) + step : 0);
                covariance[i, j] = covariance[j, i] = shared;
            }
        }

        for (var i = _grooves; i < _readings.Count; i++)
        {
            covariance[i, i] = (Edge * Edge) + (2 * ((Gauge * Gauge) + step));
        }

        return covariance;
    }

    /// <summary>A shape across, in parts of its size: grooves as given, and the edges of a shoulder rib by the slope there.</summary>
    private double[] Across(double inner, double centre, double outer)
    {
        var shape = new double[_readings.Count];
        for (var i = 0; i < _grooves; i++)
        {
            shape[i] = _readings.Grooves[i].Across switch { < 0 => inner, 0 => centre, > 0 => outer };
        }

        for (var i = 0; i < _ribs; i++)
        {
            shape[_grooves + i] = RibSlope * _readings.Ribs[i].Across switch { < 0 => inner - centre, 0 => 0, > 0 => centre - outer };
        }

        return shape;
    }

    private double OneShoulder(WearForm form)
    {
        var (aslant, alone) = form.Form == "inner"
            ? (Across(-1, -SlopeCentre, 0), Across(-1, -ShoulderCentre, 0))
            : (Across(0, -SlopeCentre, -1), Across(0, -ShoulderCentre, -1));
        return GaussianEvidence.LogSum([Math.Log(SlopeShare) + Drop(form.Pattern, aslant), Math.Log(1 - SlopeShare) + Drop(form.Pattern, alone)]);
    }

    private double Feather(WearForm form)
    {
        var shape = Edges(_grooves, _ribs, form.Form == "inner-high" ? 1 : -1);
        return Drop(form.Pattern, shape, covariance => Add(covariance, (i, j) => FeatherTilt * FeatherTilt * _readings.Grooves[i].Across * _readings.Grooves[j].Across / 4));
    }

    /// <summary>Which of the two edges is worn more is held alike.</summary>
    private double HeelAndToe(WearPattern pattern)
    {
        var blocks = _readings.BlocksMm.Count;
        return GaussianEvidence.LogSum([.. ((double[])[-1, 1]).Select(way => Math.Log(0.5) + Drop(pattern, Edges(_grooves + _ribs, blocks, way), Scattered(BlockScatter)))]);
    }

    /// <summary>Depth deviates smoothly around, at both shoulders and the centre together or at one shoulder alone, or shifted from place to place across.</summary>
    private double Dips(WearPattern pattern, double shift, double side) => Drop(pattern, null, null, (covariance, sd) =>
    {
        Add(covariance, (i, j) =>
        {
            var (a, b) = (_readings.Grooves[i], _readings.Grooves[j]);
            if (side != 0 && (a.Across != side || b.Across != side))
            {
                return 0;
            }

            var apart = Math.Abs(Math.IEEERemainder(a.AroundDegrees - b.AroundDegrees - (shift * (a.Across - b.Across)), 360)) / CupLength;
            return sd * sd * Math.Exp(-0.5 * apart * apart);
        });

        // The blocks in a dip are cut off aslant.
        for (var i = _grooves + _ribs; i < _readings.Count; i++)
        {
            covariance[i, i] += sd * sd / 4;
        }
    });

    /// <summary>One place around is low, over the whole width; now and then it is none of those measured.</summary>
    private double FlatSpot(WearPattern pattern)
    {
        var rounds = _readings.Rounds;
        var missed = Math.Log(1 - FlatMet) + Density(new double[_readings.Count], (double[,])_even.Clone());
        return rounds.Count == 0 ? missed - Math.Log(1 - FlatMet) : GaussianEvidence.LogSum([missed, .. rounds.Select(at => Math.Log(FlatMet / rounds.Count) + Drop(pattern, Flat(at)))]);
    }

    private double[] Flat(double at)
    {
        var shape = new double[_readings.Count];
        for (var i = 0; i < _grooves; i++)
        {
            shape[i] = Math.Abs(Math.IEEERemainder(_readings.Grooves[i].AroundDegrees - at, 360)) <= FlatHalf ? -1 : 0;
        }

        return shape;
    }

    private double Other(WearPattern pattern) => Drop(pattern, null, null, (covariance, sd) =>
    {
        for (var i = 0; i < _readings.Count; i++)
        {
            covariance[i, i] += sd * sd;
        }
    });

    private double[] Edges(int from, int count, double value)
    {
        var shape = new double[_readings.Count];
        Array.Fill(shape, value, from, count);
        return shape;
    }

    private Action<double[,]> Scattered(double sd) => covariance => Add(covariance, (i, j) => i == j ? sd * sd : 0);

    private void Add(double[,] covariance, Func<int, int, double> shared)
    {
        for (var i = 0; i < _grooves; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var more = shared(i, j);
                covariance[i, j] += more;
                covariance[j, i] = covariance[i, j];
            }
        }
    }

    /// <summary>Sums over the parts of the size: a shape that the size multiplies, and what the pattern adds to the scatter.</summary>
    private double Drop(WearPattern pattern, double[]? shape, Action<double[,]>? fixedScatter = null, Action<double[,], double>? scatter = null)
    {
        var logs = new List<double>();
        foreach (var size in WearTables.SizesOf(pattern))
        {
            var mean = new double[_readings.Count];
            var covariance = (double[,])_even.Clone();
            fixedScatter?.Invoke(covariance);
            scatter?.Invoke(covariance, size.SdMm);
            for (var i = 0; shape is not null && i < _readings.Count; i++)
            {
                mean[i] = size.MeanMm * shape[i];
                for (var j = 0; j < _readings.Count; j++)
                {
                    covariance[i, j] += size.SdMm * size.SdMm * shape[i] * shape[j];
                }
            }

            logs.Add(Math.Log(size.Weight) + Density(mean, covariance));
        }

        return GaussianEvidence.LogSum(logs);
    }

    /// <summary>The level of the tread may be anything: grooves are taken by their differences from the first, of which the level is no part.</summary>
    private double Density(double[] mean, double[,] covariance)
    {
        if (_grooves == 0)
        {
            return GaussianEvidence.LogDensity(_readings.Values, mean, covariance);
        }

        var count = _readings.Count - 1;
        var values = new double[count];
        var expected = new double[count];
        var differences = new double[count, count];
        for (var i = 0; i < count; i++)
        {
            var first = i + 1 < _grooves ? 1 : 0;
            values[i] = _readings.Values[i + 1] - (first * _readings.Values[0]);
            expected[i] = mean[i + 1] - (first * mean[0]);
            for (var j = 0; j <= i; j++)
            {
                var second = j + 1 < _grooves ? 1 : 0;
                differences[i, j] = covariance[i + 1, j + 1] - (first * covariance[0, j + 1]) - (second * covariance[i + 1, 0]) + (first * second * covariance[0, 0]);
            }
        }

        return GaussianEvidence.LogDensity(values, expected, differences);
    }

    private static double Mm(string key) => Figures.Of(key).As<Length>().Millimetres;
}
