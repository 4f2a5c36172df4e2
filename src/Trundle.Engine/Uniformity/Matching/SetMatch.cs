using System.Numerics;
using Trundle.Measures;

namespace Trundle.Engine.Uniformity.Matching;

/// <summary>Which tyre goes on which wheel and at what turn.</summary>
public static class SetMatch
{
    /// <summary>
    /// The choice that serves the aim best, of all pairings and turns. The turn of each pair is in closed form; the pairing is an exact
    /// assignment with its certificate.
    /// </summary>
    /// <param name="problem">At least one tyre and one wheel.</param>
    /// <returns>One of the two cases.</returns>
    /// <source>H. W. Kuhn, The Hungarian method for the assignment problem, 1955 (from memory); docs/theory/runout-and-matching.md (a set)</source>
    public static MatchOutcome<T> Solve<T>(MatchProblem<T> problem) where T : struct, IQuantity<T>
    {
        ArgumentNullException.ThrowIfNull(problem);
        var (tyres, wheels) = (problem.Tyres.Count, problem.Wheels.Count);
        var choices = new Choice?[tyres, wheels];
        var flip = tyres > wheels;
        var costs = flip ? new double[wheels, tyres] : new double[tyres, wheels];
        for (var t = 0; t < tyres; t++)
        {
            for (var w = 0; w < wheels; w++)
            {
                var allowed = problem.Tyres[t].MayGoOn is not { } list || list.Contains(w);
                choices[t, w] = allowed ? Best(problem, t, w) : null;
                var cost = choices[t, w]?.Charged ?? double.PositiveInfinity;
                costs[flip ? w : t, flip ? t : w] = cost;
            }
        }

        var (most, _) = Assignment.Greatest(costs, double.IsFinite);
        if (most < costs.GetLength(0))
        {
            return new MatchOutcome<T>.NoCompletePairing(most);
        }

        var proven = true;
        if (problem.Aim == MatchAim.WorstThenSum)
        {
            var worst = Assignment.Bottleneck(costs);
            proven = Assignment.Greatest(costs, c => c < worst * (1 - 1e-12)).Pairs < costs.GetLength(0);
            Forbid(costs, worst);
        }

        var (columnOf, priced) = Assignment.LeastSum(costs);
        var pairs = columnOf
            .Select((column, row) => flip ? (Tyre: column, Wheel: row) : (Tyre: row, Wheel: column))
            .OrderBy(p => p.Tyre)
            .Select(p => Pair(problem, p.Tyre, p.Wheel, choices[p.Tyre, p.Wheel]!))
            .ToList();
        return new MatchOutcome<T>.Matched(
            pairs,
            [.. Enumerable.Range(0, tyres).Except(pairs.Select(p => p.Tyre))],
            [.. Enumerable.Range(0, wheels).Except(pairs.Select(p => p.Wheel))],
            T.FromSi(pairs.Max(p => p.After.Si)),
            T.FromSi(pairs.Sum(p => p.After.Si)),
            proven && priced);
    }

    private static void Forbid(double[,] costs, double worst)
    {
        for (var row = 0; row < costs.GetLength(0); row++)
        {
            for (var column = 0; column < costs.GetLength(1); column++)
            {
                if (costs[row, column] > worst)
                {
                    costs[row, column] = double.PositiveInfinity;
                }
            }
        }
    }

    /// <summary>The best of one pair: kept as it sits, or at its best turn with the charge for the work.</summary>
    private static Choice Best<T>(MatchProblem<T> problem, int tyre, int wheel) where T : struct, IQuantity<T>
    {
        var (t, w) = (Phasors(problem.Tyres[tyre]), Phasors(problem.Wheels[wheel]));
        var charge = problem.KeepUnlessGain?.Si ?? 0;
        if (!problem.Tyres[tyre].PlaceKnown || !problem.Wheels[wheel].PlaceKnown)
        {
            // With a free turn the two face each other, wherever they point.
            var apart = Math.Abs(t[0].Magnitude - w[0].Magnitude);
            return new Choice(null, false, apart, apart + charge);
        }

        var (turn, left) = PairTurn.Best(t, w, problem.TurnStep?.Radians);
        if (problem.Tyres[tyre].SitsOn == wheel)
        {
            var asItSits = PairTurn.Left(t, w, 0);
            return asItSits <= left + charge ? new Choice(0, true, asItSits, asItSits) : new Choice(turn, false, left, left + charge);
        }

        return new Choice(turn, false, left, left + charge);
    }

    private static MatchedPair<T> Pair<T>(MatchProblem<T> problem, int tyre, int wheel, Choice choice) where T : struct, IQuantity<T>
    {
        var part = problem.Tyres[tyre];
        var sits = part.SitsOn ?? wheel;
        T? before = part.PlaceKnown && problem.Wheels[sits].PlaceKnown
            ? T.FromSi(PairTurn.Left(Phasors(part), Phasors(problem.Wheels[sits]), 0))
            : null;
        Angle? turn = choice.Turn is { } r ? Angle.FromRadians(r) : null;
        return new MatchedPair<T>(
            tyre,
            wheel,
            turn,
            choice.Kept,
            before,
            T.FromSi(choice.Left),
            turn is { } a ? [.. part.Planes.Zip(problem.Wheels[wheel].Planes, (t, w) => t.Turned(a) + w)] : null);
    }

    private static Complex[] Phasors<T>(MatchPart<T> part) where T : struct, IQuantity<T> => [.. part.Planes.Select(p => p.Si)];

    private sealed record Choice(double? Turn, bool Kept, double Left, double Charged);
}
