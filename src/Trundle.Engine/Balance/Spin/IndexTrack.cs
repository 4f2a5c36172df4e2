using System.Numerics;
using Trundle.Engine.Reference;

namespace Trundle.Engine.Balance.Spin;

/// <summary>Which edge of the index pulse is the mark.</summary>
public enum IndexEdge
{
    /// <summary>Where the index signal rises.</summary>
    Rising,

    /// <summary>Where it falls.</summary>
    Falling,
}

/// <summary>The marks of an index signal, numbered by turns, and the angle that they tell at every sample.</summary>
internal sealed record IndexTrack
{
    /// <summary>Marks used, in parts of a sample.</summary>
    public required IReadOnlyList<double> Marks { get; init; }

    /// <summary>The turn at which each stands, from 0.</summary>
    public required IReadOnlyList<int> Turns { get; init; }

    /// <summary>Marks that should be there and are not.</summary>
    public required int Missing { get; init; }

    /// <summary>Marks too close behind another to be one.</summary>
    public required int Extra { get; init; }

    /// <summary>Turns that are shorter or longer than those around them, as where samples were lost: each by the number of the mark that it begins with.</summary>
    public required IReadOnlyList<int> UnevenTurns { get; init; }

    /// <summary>How many they are.</summary>
    public int Uneven => UnevenTurns.Count;

    /// <summary>The angle at every sample; the speed of the middle is that of the middle of the record.</summary>
    public required AngleTrack Angle { get; init; }

    /// <summary>By how much the speed changes over the record, as a part of itself.</summary>
    public required double Drift { get; init; }

    /// <summary>One standard error of that; infinite where too few marks tell it.</summary>
    public required double DriftError { get; init; }

    /// <summary>One standard error of the angle in the middle of the record, in radians.</summary>
    public required double AngleError { get; init; }

    /// <summary>One standard error of the speed, as a part of itself.</summary>
    public required double SpeedError { get; init; }

    /// <summary>Reads the marks; null where there are fewer than two.</summary>
    public static IndexTrack? Of(ReadOnlySpan<double> index, IndexEdge edge)
    {
        var found = Edges(index, edge, out var steps);
        if (found.Count < 2)
        {
            return null;
        }

        var usual = Median([.. found.Zip(found.Skip(1), (a, b) => b - a)]);
        var (marks, turns) = (new List<double> { found[0] }, new List<int> { 0 });
        var (missing, extra) = (0, 0);
        foreach (var mark in found.Skip(1))
        {
            // Half-way between one turn and none it is an echo; a gap of several turns is counted by the usual turn.
            var gap = (mark - marks[^1]) / usual;
            if (gap < 0.5)
            {
                extra++;
                continue;
            }

            var passed = Math.Max(1, (int)Math.Round(gap));
            missing += passed - 1;
            marks.Add(mark);
            turns.Add(turns[^1] + passed);
        }

        // Before the first mark and behind the last there is less than a turn, or marks are missing there too; a quarter is left to a changing speed.
        missing += (int)Math.Max(0, (marks[0] / usual) - 0.25) + (int)Math.Max(0, ((index.Length - 1 - marks[^1]) / usual) - 0.25);
        return marks.Count < 2 ? null : Fitted(marks, turns, missing, extra, (index.Length - 1) / 2.0, steps);
    }

    /// <summary>Turns as a square law of samples about the middle of the record, by least squares; a straight line where there are under five marks.</summary>
    private static IndexTrack? Fitted(List<double> marks, List<int> turns, int missing, int extra, double middle, bool steps)
    {
        var terms = marks.Count >= 5 ? 3 : 2;
        var span = Math.Max(1, marks[^1] - marks[0]);
        Span<double> normal = stackalloc double[9];
        Span<double> right = stackalloc double[3];
        Span<double> row = stackalloc double[3];
        for (var m = 0; m < marks.Count; m++)
        {
            Row(marks[m], row);
            for (var i = 0; i < terms; i++)
            {
                right[i] += row[i] * turns[m];
                for (var j = 0; j <= i; j++)
                {
                    normal[(i * terms) + j] += row[i] * row[j];
                }
            }
        }

        if (!SquareRoot.Of(normal, terms))
        {
            return null;
        }

        SquareRoot.Solve(normal, terms, right);
        var squares = 0.0;
        for (var m = 0; m < marks.Count; m++)
        {
            Row(marks[m], row);
            var left = turns[m] - (right[0] * row[0]) - (right[1] * row[1]) - (terms > 2 ? right[2] * row[2] : 0);
            squares += left * left;
        }

        // Few marks cannot tell their own scatter: then it is that of a mark that may lie anywhere between two samples.
        var free = marks.Count - terms;
        var perSample = right[1] / span;
        var scatter = free >= 3 ? Math.Sqrt(squares / free) : perSample / Math.Sqrt(12);
        Span<double> errors = stackalloc double[3];
        Span<double> unit = stackalloc double[3];
        for (var i = 0; i < terms; i++)
        {
            unit.Clear();
            unit[i] = 1;
            SquareRoot.Solve(normal, terms, unit);
            errors[i] = scatter * Math.Sqrt(Math.Max(0, unit[i]));
        }

        if (steps)
        {
            errors[0] = Math.Max(errors[0], StepError(normal));
            errors[1] = Math.Sqrt((errors[1] * errors[1]) + StepSlope());
        }

        // Terms of t/span: speed over the record changes by 2·square/span of the record's length in spans.
        var change = terms > 2 ? 2 * right[2] / span / span : 0;
        var whole = 2 * middle;
        return new IndexTrack
        {
            Marks = marks,
            Turns = turns,
            Missing = missing,
            Extra = extra,
            UnevenTurns = EvenTurns.Uneven(marks, turns),
            Angle = new AngleTrack(middle, Math.Tau * right[0], Math.Tau * perSample, Math.Tau * change),
            Drift = change * whole / perSample,
            DriftError = terms > 2 ? 2 * errors[2] / span / span * whole / perSample : double.PositiveInfinity,
            AngleError = Math.Tau * errors[0],
            SpeedError = errors[1] / span / perSample,
        };

        // A mark of noughts and ones lies anywhere within a sample. Told as a sawtooth of its place, the harmonic m of that error is averaged by the weights of the fit
        // only as far as the marks' places spread: at a whole number of samples a turn not at all, which scatter cannot show.
        double StepError(ReadOnlySpan<double> root)
        {
            Span<double> weights = stackalloc double[3];
            Span<double> at = stackalloc double[3];
            weights[0] = 1;
            SquareRoot.Solve(root, terms, weights);
            var variance = 0.0;
            for (var m = 1; m <= 40; m++)
            {
                var sum = Complex.Zero;
                for (var k = 0; k < marks.Count; k++)
                {
                    Row(marks[k], at);
                    var weight = (weights[0] * at[0]) + (weights[1] * at[1]) + (terms > 2 ? weights[2] * at[2] : 0);
                    sum += Complex.FromPolarCoordinates(weight, Math.Tau * m * turns[k] / perSample);
                }

                variance += sum.Magnitude * sum.Magnitude / (2 * Math.PI * Math.PI * m * m);
            }

            return perSample * Math.Sqrt(variance);
        }

        // What a mark of noughts and ones scatters less than 1/√12 of a sample is error that goes evenly along the record, which no scatter shows: at the worst from the
        // one end of its twelfth to the other, as much at the first mark as at the last.
        double StepSlope() => 2 * perSample * perSample * Math.Max(0, (1 / 12.0) - (scatter * scatter / (perSample * perSample)));

        void Row(double mark, Span<double> into)
        {
            var t = (mark - middle) / span;
            into[0] = 1;
            into[1] = t;
            into[2] = t * t;
        }
    }

    /// <summary>
    /// Crossings of half the height, in parts of a sample. Between 40 and 60 % of the height nothing is decided, so that noise on an edge is one mark.
    /// </summary>
    private static List<double> Edges(ReadOnlySpan<double> index, IndexEdge edge, out bool steps)
    {
        steps = true;
        var found = new List<double>();
        if (index.IsEmpty)
        {
            return found;
        }

        var (least, most) = (index[0], index[0]);
        foreach (var value in index)
        {
            least = Math.Min(least, value);
            most = Math.Max(most, value);
        }

        var sign = edge == IndexEdge.Rising ? 1 : -1;
        var (low, half, high) = (least + (0.4 * (most - least)), (least + most) / 2, least + (0.6 * (most - least)));
        if (sign < 0)
        {
            (low, half, high) = (-high, -half, -low);
        }

        if (most <= least)
        {
            return found;
        }

        var up = sign * index[0] > low;
        for (var k = 1; k < index.Length; k++)
        {
            var value = sign * index[k];
            if (up)
            {
                up = value > low;
            }
            else if (value >= high)
            {
                up = true;
                var from = k;
                while (from > 1 && sign * index[from - 1] >= half)
                {
                    from--;
                }

                var (before, after) = (sign * index[from - 1], sign * index[from]);
                steps &= after - before > 0.9 * (most - least);
                found.Add(from - 1 + (after > before ? (half - before) / (after - before) : 0.5));
            }
        }

        return found;
    }

    internal static double Median(IReadOnlyCollection<double> values) => values.Order().ElementAt(values.Count / 2);
}
