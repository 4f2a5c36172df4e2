using System.Numerics;
using Trundle.Engine.Balance.Choice;
using Trundle.Measures;

namespace Trundle.Engine.Balance;

/// <summary>What one plane's display stands for.</summary>
/// <param name="Shown">The mass shown.</param>
/// <param name="Least">The least mass that is shown so.</param>
/// <param name="Most">The most.</param>
/// <param name="ShowsNothing">Nothing is shown: the mass may lie at any angle.</param>
public sealed record ShownMass(Mass Shown, Mass Least, Mass Most, bool ShowsNothing);

/// <summary>
/// What a balancer's display leaves open. A shown mass stands for an interval, and nothing shown for a disc about nothing; the true reading lies
/// anywhere in them. Everything here is the greatest over all of that. The figure of signs is in docs/theory/signs-and-axes.md.
/// </summary>
public sealed record DisplayUncertainty
{
    /// <summary>The inner plane's display, in the plane that was read.</summary>
    public required ShownMass Inner { get; init; }

    /// <summary>The outer plane's display.</summary>
    public required ShownMass Outer { get; init; }

    /// <summary>By how much the inner plane's residual may differ from the reckoned one, at the radius of the plane that carries the weights.</summary>
    public required Mass OffInner { get; init; }

    /// <summary>By how much the outer plane's residual may differ.</summary>
    public required Mass OffOuter { get; init; }

    /// <summary>The most that the inner plane may keep.</summary>
    public required Mass WorstInner { get; init; }

    /// <summary>The most that the outer plane may keep.</summary>
    public required Mass WorstOuter { get; init; }

    /// <summary>The greatest static part that may be left.</summary>
    public required Unbalance WorstStatic { get; init; }

    /// <summary>The greatest couple that may be left, about the mid-plane of the planes that carry the weights.</summary>
    public required CoupleUnbalance WorstCouple { get; init; }

    /// <summary>The toleranced parts, each at its own worst.</summary>
    public required IReadOnlyList<TolerancePart> WorstParts { get; init; }

    /// <summary>The toleranced parts where nothing is shown in both planes: what the display can hide.</summary>
    public required IReadOnlyList<TolerancePart> HiddenParts { get; init; }

    /// <summary>Whatever the display leaves open, the tolerance is met.</summary>
    public bool WithinToleranceAtWorst => WorstParts.All(p => p.Ratio <= 1 + 1e-9);

    /// <summary>The display may show nothing in both planes while the tolerance is not met.</summary>
    public bool ToleranceFinerThanDisplay => HiddenParts.Any(p => p.Ratio > 1 + 1e-9);
}

/// <summary>Reckons with what a display rounds and hides.</summary>
public static class DisplayReckoning
{
    /// <summary>What the readings of a solved problem leave open, by the balancer's profile.</summary>
    /// <param name="outcome">The weights chosen by what was shown.</param>
    /// <param name="profile">The balancer's profile: masses in steps, hidden masses, angles in steps.</param>
    /// <returns>The greatest deviations; null where the profile tells nothing about the display.</returns>
    /// <source>interval reckoning, the greatest of a convex function over each plane's set: docs/theory/balance.md, what the display hides</source>
    public static DisplayUncertainty? Of(BalanceOutcome outcome, BalancerProfile profile)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        ArgumentNullException.ThrowIfNull(profile);
        return profile.TellsDisplay ? Of(outcome.Problem, outcome.Residual, profile) : null;
    }

    private static DisplayUncertainty Of(BalanceProblem problem, UnbalancePair residual, BalancerProfile profile)
    {
        var read = problem.ReadingPlanes ?? problem.Planes;
        var (inner, outer) = (PlaneDisplay.Of(problem.Readings.Inner, read.Inner.Radius, profile), PlaneDisplay.Of(problem.Readings.Outer, read.Outer.Radius, profile));
        var open = new OpenReadings(problem, inner, outer);
        var nothing = new OpenReadings(problem, PlaneDisplay.Of(default, read.Inner.Radius, profile), PlaneDisplay.Of(default, read.Outer.Radius, profile));
        var half = problem.Planes.Apart.Millimetres / 2;
        var onInner = new ScorePart("inner", 1, 0, 1 / problem.Planes.Inner.Radius.Millimetres);
        var onOuter = new ScorePart("outer", 0, 1, 1 / problem.Planes.Outer.Radius.Millimetres);
        var score = ScoreParts.Of(problem.Tolerance, problem.Planes, problem.ReadingPlanes);
        return new DisplayUncertainty
        {
            Inner = inner.Shown,
            Outer = outer.Shown,
            OffInner = Mass.FromGrams(open.Greatest(onInner, default)),
            OffOuter = Mass.FromGrams(open.Greatest(onOuter, default)),
            WorstInner = Mass.FromGrams(open.Greatest(onInner, residual)),
            WorstOuter = Mass.FromGrams(open.Greatest(onOuter, residual)),
            WorstStatic = Unbalance.FromGramMillimetres(open.Greatest(new ScorePart("static", 1, 1, 1), residual)),
            WorstCouple = CoupleUnbalance.FromGramSquareMillimetres(open.Greatest(new ScorePart("couple", -half, half, 1), residual)),
            WorstParts = [.. score.Parts.Select(p => BalanceSolve.Part(p, open.Greatest(p, residual)))],
            HiddenParts = [.. score.Parts.Select(p => BalanceSolve.Part(p, nothing.Greatest(p, default)))],
        };
    }

    /// <summary>
    /// The set in which the true vector of one plane lies, less what is shown: corners of a sector, or a disc. In g·mm at the plane's radius.
    /// </summary>
    private sealed record PlaneDisplay(ShownMass Shown, IReadOnlyList<Complex> Corners, double DiscGramMillimetres)
    {
        public static PlaneDisplay Of(UnbalanceVector shown, Length radius, BalancerProfile profile)
        {
            var mass = shown.MassAt(radius);
            if (mass.Grams < 1e-9)
            {
                var most = profile.MostShownAsNothing;
                return new PlaneDisplay(new ShownMass(default, default, most, true), [Complex.Zero], most.Grams * radius.Millimetres);
            }

            var half = (profile.DisplayStep ?? default).Grams / 2;
            var (leastGrams, mostGrams) = (Math.Max(0, mass.Grams - half), mass.Grams + half);
            var turn = (profile.DisplayAngleStep ?? default).Radians / 2;
            List<(double Grams, double Radians)> corners = turn > 0
                // The outer arc bulges beyond its ends: the point where the tangents at them meet closes it in.
                ? [(leastGrams, -turn), (leastGrams, turn), (mostGrams, -turn), (mostGrams, turn), (mostGrams / Math.Cos(turn), 0)]
                : [(leastGrams, 0), (mostGrams, 0)];
            return new PlaneDisplay(
                new ShownMass(mass, Mass.FromGrams(leastGrams), Mass.FromGrams(mostGrams), false),
                [.. corners.Select(c => Complex.FromPolarCoordinates(c.Grams * radius.Millimetres, shown.Place.Radians + c.Radians) - shown.GramMillimetres)],
                0);
        }
    }

    /// <summary>Both planes' sets. A part is convex, so its greatest lies at corners; a disc adds its radius times the part's factor.</summary>
    private sealed class OpenReadings(BalanceProblem problem, PlaneDisplay inner, PlaneDisplay outer)
    {
        public double Greatest(ScorePart part, UnbalancePair residual)
        {
            var corners = inner.Corners.SelectMany(i => outer.Corners.Select(o => Value(part, residual, i, o))).Max();
            return corners + (inner.DiscGramMillimetres * Value(part, default, 1, 0)) + (outer.DiscGramMillimetres * Value(part, default, 0, 1));
        }

        private double Value(ScorePart part, UnbalancePair residual, Complex innerGramMillimetres, Complex outerGramMillimetres)
        {
            // What is needed more than shown is left over.
            var more = new UnbalancePair(new UnbalanceVector(innerGramMillimetres), new UnbalanceVector(outerGramMillimetres));
            var left = residual - (problem.ReadingPlanes is { } read ? more.MovedTo(read, problem.Planes) : more);
            return part.Of(left.Inner.GramMillimetres, left.Outer.GramMillimetres);
        }
    }
}
