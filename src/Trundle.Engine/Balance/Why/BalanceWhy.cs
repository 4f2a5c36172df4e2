using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Balance.Why;

/// <summary>Why a wheel does not come to zero.</summary>
public static class BalanceWhy
{
    /// <summary>
    /// Weighs every cause by how well it foretells all displays, its size integrated over what is held likely, and gives their probabilities under
    /// the assumption that exactly one is at work.
    /// </summary>
    /// <param name="problem">Settings, spins and fitted weights; the planes entered lie apart and the repeatability is above nothing.</param>
    /// <returns>All causes, the likeliest first, with estimate, evidence and next step.</returns>
    /// <source>equilibrium of two planes and Bayes' theorem; model, priors and how well it does: docs/theory/why.md</source>
    public static WhyOutcome Run(WhyProblem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        var model = new ForwardModel(problem);
        var displays = new SpinDisplays(model);
        var forms = new FaultForms(model, displays);
        var weighed = forms.All().GroupBy(f => f.Cause).Select(g => Weigh(g.Key, [.. g], displays, forms.KindContradicted)).ToList();
        var whole = Variation.LogSum([.. weighed.Select(w => w.LogPosterior)]);
        List<(Weighed Weighed, double Probability)> ranked =
        [
            .. weighed.Select(w => (w, Math.Exp(w.LogPosterior - whole))).OrderByDescending(w => w.Item2).ThenBy(w => w.w.Cause),

            // A cause about weights where none was fitted is no cause.
            .. Enum.GetValues<WhyCause>().Where(c => weighed.All(w => w.Cause != c)).Select(c => (new Weighed(c, double.NegativeInfinity, 0, null), 0.0)),
        ];
        var steps = new NextSteps(problem, [.. ranked.Select(r => (r.Weighed.Cause, r.Probability))]);
        var sure = Math.Log(Figures.Of("why.alikeRatio").Value);
        return new WhyOutcome
        {
            Explanations =
            [
                .. ranked.Select((r, i) =>
                {
                    var rival = ranked[i == 0 ? 1 : 0].Weighed.Cause;
                    var (estimate, direction) = r.Weighed.Best is { } best ? Estimate(best, model, displays) : default;
                    return new WhyExplanation
                    {
                        Cause = r.Weighed.Cause,
                        Probability = r.Probability,
                        Prior = WhyTables.Causes[r.Weighed.Cause],
                        Estimate = estimate,
                        Direction = direction,
                        Subject = r.Weighed.Best?.Subject ?? WhySubject.Whole,
                        EvidenceLogRatio = r.Weighed.LogRatio / Math.Log(10),
                        Misfit = Misfit(r.Weighed.Best?.SquaresLeft(displays) ?? displays.Squares, displays),
                        NextStep = steps.Between(r.Weighed.Cause, rival),
                        NextStepSpeaksForThis = steps.SpeaksFor(r.Weighed.Cause, rival),
                        PartedFrom = rival,
                    };
                }),
            ],
            MisfitWithoutCause = Misfit(displays.Squares, displays),
            MisfitExpected = Mass.FromGrams(displays.Deviation),
            CanTell = displays.Spins > 1,
            WeightsSeen = model.Weights.Any(w => w.Spin < model.Spins - 1),
            NothingFits = weighed.Where(w => w.LogPosterior - whole > Math.Log(1e-6)).All(w => w.Best!.SquaresLeft(displays) > OncePerThousand(displays.Freedom)),
            FirstTwoAlike = Math.Abs(ranked[0].Weighed.LogRatio - ranked[1].Weighed.LogRatio) < sure,
        };
    }

    private sealed record Weighed(WhyCause Cause, double LogPosterior, double LogRatio, Variation? Best);

    private static Weighed Weigh(WhyCause cause, IReadOnlyList<Variation> forms, SpinDisplays displays, bool kindContradicted)
    {
        double[] logs = [.. forms.Select(f => Math.Log(f.Share) + f.LogRatio(displays))];
        var best = 0;
        for (var i = 1; i < logs.Length; i++)
        {
            best = logs[i] > logs[best] ? i : best;
        }

        var ratio = Variation.LogSum(logs);
        var told = cause == WhyCause.WeightPlace && kindContradicted ? Figures.Of("why.kindTold").Value : 1;
        return new Weighed(cause, Math.Log(WhyTables.Causes[cause] * told) + ratio, ratio, forms[best]);
    }

    private static Mass Misfit(double squares, SpinDisplays displays) =>
        Mass.FromGrams(displays.Freedom > 0 ? Math.Sqrt(Math.Max(0, squares) / displays.Freedom) * displays.Deviation : 0);

    /// <summary>What a sum of squares of so many bells passes once in a thousand (Wilson and Hilferty 1931, from memory).</summary>
    private static double OncePerThousand(int freedom) =>
        freedom == 0 ? double.PositiveInfinity : freedom * Math.Pow(1 - (2.0 / (9 * freedom)) + (3.0902 * Math.Sqrt(2.0 / (9 * freedom))), 3);

    private static (WhyEstimate? Estimate, Angle? Direction) Estimate(Variation best, ForwardModel model, SpinDisplays displays)
    {
        var problem = model.Problem;
        var inside = Figures.Of("why.interval").Value;
        switch (best.Cause)
        {
            case WhyCause.RimDistance:
                return (Setting(problem.Entered.RimDistance, problem.Units.Distance, -150, 150), null);
            case WhyCause.RimDiameter:
                return (Setting(problem.Entered.RimDiameter, problem.Units.Diameter, -Math.Min(130, 0.8 * problem.Entered.RimDiameter.Millimetres), 130), null);
            case WhyCause.RimWidth:
                return (Setting(problem.Entered.RimWidth, problem.Units.Width, -Math.Min(130, 0.8 * problem.Entered.RimWidth.Millimetres), 130), null);
            case WhyCause.WeightMass:
            {
                var grams = best.Subject.Weights[0].Weight.Mass.Grams;
                var (a, b) = ((LinearVariation)best).LeastSquares(displays);
                var size = SizeEstimate.OfBell(a[0, 0], b[0], -grams, Math.Max(60, 3 * grams), inside);
                return (Of(size, x => Amount.Of(Mass.FromGrams(grams + x), "g", 1)), null);
            }

            case WhyCause.WeightAngle:
            {
                var (turn, concentration) = ((TurnVariation)best).LeastSquares(displays);
                return (concentration < 0.1 ? null : Of(SizeEstimate.OfTurn(turn, concentration, inside), x => Amount.Of(Angle.FromRadians(x), "°", 0)), null);
            }

            case WhyCause.ReSeated:
                return ReSeated();
            case WhyCause.Calibration:
                return Gain();
            case WhyCause.WeightsSwapped or WhyCause.WeightPlace or WhyCause.WeightLost or WhyCause.LooseObject or WhyCause.Noise:
            default:
                return (null, null);
        }

        WhyEstimate? Setting(Length entered, string unit, double leastMm, double mostMm)
        {
            var (a, b) = ((LinearVariation)best).LeastSquares(displays);
            return Of(SizeEstimate.OfBell(a[0, 0], b[0], leastMm, mostMm, inside), x => Amount.Of(entered + Length.FromMillimetres(x), unit, unit == "mm" ? 1 : 2));
        }

        (WhyEstimate?, Angle?) ReSeated()
        {
            var (a, b) = ((LinearVariation)best).LeastSquares(displays);
            if (a[0, 0] <= 0)
            {
                return (null, null);
            }

            var (x, y) = (b[0] / a[0, 0], b[1] / a[0, 0]);
            var size = SizeEstimate.OfBell(a[0, 0], a[0, 0] * Math.Sqrt((x * x) + (y * y)), 0, double.MaxValue / 1e6, inside);
            return (Of(size, u => problem.WheelMass is { } mass
                ? Amount.Of(Length.FromMillimetres(u / mass.Grams), "mm", 2)
                : Amount.Of(Unbalance.FromGramMillimetres(u), "g·mm", 0)), Angle.FromRadians(Math.Atan2(y, x)));
        }

        (WhyEstimate?, Angle?) Gain()
        {
            var (a, b) = ((LinearVariation)best).LeastSquares(displays);
            if (a[0, 0] <= 0)
            {
                return (null, null);
            }

            var (x, y) = (1 + (b[0] / a[0, 0]), b[1] / a[0, 0]);
            var size = SizeEstimate.OfBell(a[0, 0], a[0, 0] * Math.Sqrt((x * x) + (y * y)), 0, double.MaxValue / 1e6, inside);
            return (Of(size, g => Amount.Number(100 * g, "%", 0)), Angle.FromRadians(Math.Atan2(y, x)));
        }
    }

    private static WhyEstimate? Of((double Value, double Low, double High)? size, Func<double, Amount> amount) =>
        size is { } s ? new WhyEstimate(amount(s.Value), amount(s.Low), amount(s.High)) : null;
}

/// <summary>Which step parts two causes best for its minutes.</summary>
internal sealed class NextSteps(WhyProblem problem, IReadOnlyList<(WhyCause Cause, double Probability)> causes)
{
    private readonly double _price = Figures.Of("why.minutePrice").Value;
    private readonly double _mending = Figures.Of("why.mendingWorth").Value;

    /// <summary>The step whose outcome tells most about which of the two it is, in bits, less the price of its minutes. One that looks at the first cause itself counts a little more, since it mends at once.</summary>
    public WhyStep Between(WhyCause one, WhyCause other)
    {
        // While no display tells what a weight did, only something that moves by itself can be parted from the rest.
        var unseen = !problem.Spins.SkipLast(1).Any(s => s.FittedAfter.Count > 0);
        var moves = problem.Spins.Count > 1 && causes[0].Cause is WhyCause.LooseObject or WhyCause.ReSeated;
        return unseen && !moves
            ? WhyTables.Steps.First(s => s.Step.Key == (problem.Spins[^1].FittedAfter.Count > 0 ? "spin-after-fitting" : "fit-and-spin")).Step
            : Best(one, other);
    }

    /// <summary>True where what that step shows is likelier under the first cause.</summary>
    public bool SpeaksFor(WhyCause one, WhyCause other)
    {
        var row = WhyTables.Steps.First(s => s.Step == Between(one, other));
        return row.Shows[one] >= row.Shows[other];
    }

    private WhyStep Best(WhyCause one, WhyCause other)
    {
        var (p, q) = (Probability(one), Probability(other));
        var part = p + q > 0 ? Math.Clamp(p / (p + q), 0.02, 0.98) : 0.5;
        return WhyTables.Steps.Where(s => !DoneAlready(s.Step)).MaxBy(s => Bits(part, s.Shows[one], s.Shows[other]) + (s.Shows[one] > s.Shows[other] ? _mending : 0) - (_price * s.Minutes))!.Step;
    }

    private double Probability(WhyCause cause) => causes.First(c => c.Cause == cause).Probability;

    private bool DoneAlready(WhyStep step) => step.Cause switch
    {
        WhyCause.RimDistance => problem.MeasuredAgain.RimDistance is not null,
        WhyCause.RimDiameter => problem.MeasuredAgain.RimDiameter is not null,
        WhyCause.RimWidth => problem.MeasuredAgain.RimWidth is not null,
        _ => false,
    };

    private static double Bits(double part, double inOne, double inOther) =>
        Entropy((part * inOne) + ((1 - part) * inOther)) - (part * Entropy(inOne)) - ((1 - part) * Entropy(inOther));

    private static double Entropy(double p) => p is <= 0 or >= 1 ? 0 : -((p * Math.Log2(p)) + ((1 - p) * Math.Log2(1 - p)));
}
