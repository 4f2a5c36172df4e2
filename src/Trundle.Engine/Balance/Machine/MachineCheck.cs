using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Balance.Machine;

/// <summary>Is the balancer itself right?</summary>
public static class MachineCheck
{
    private static readonly PlaneSide[] Sides = [PlaneSide.Inner, PlaneSide.Outer];

    /// <summary>
    /// Judges every test that was made of a balancer. Index spins must differ in how the wheel is turned, and repeat spins are at least three: a reader
    /// refuses others before.
    /// </summary>
    /// <source>ISO 21940-21 by H. P. Bloch, F. K. Geitner, pp. 291-312; the wheel-shop test by a vehicle maker's service manuals: docs/theory/balancer.md</source>
    public static MachineOutcome Of(MachineSpins spins)
    {
        ArgumentNullException.ThrowIfNull(spins);
        var traverse = spins.Traverse.ToDictionary(
            t => t.Key,
            t => TraverseTest.Judge([.. t.Value.Shown.Select(m => On(m, spins.RadiusOf(t.Key)))], On(t.Value.TestMass, spins.RadiusOf(t.Key)) / 10));
        var index = spins.Index.Count == 0 ? [] : Sides.ToDictionary(
            s => s,
            s => IndexTest.Part([.. spins.Index.Select(i => i.Turned)], [.. spins.Index.Select(i => i.Found.At(s))])
                ?? throw new ArgumentException("The wheel was in one position on the shaft.", nameof(spins)));
        var repeat = spins.Repeats.Count == 0 ? [] : Sides.ToDictionary(s => s, s => RepeatStudy.Of([.. spins.Repeats.Select(r => r.At(s))], hidden: Hidden(s, spins)));
        List<MachineTest> tests =
        [
            .. traverse.Select(t => Traversed(t.Key, t.Value)),
            .. Reduced(spins),
            .. index.Select(i => Indexed(i.Key, i.Value, spins)),
            .. repeat.Select(r => Repeated(r.Key, r.Value, spins)),
            .. spins.Shop is { } shop ? ShopCheck.Of(shop, spins) : [],
        ];
        return new MachineOutcome
        {
            Verdict = Whole(tests),
            Tests = tests,
            ReductionPercent = Ratios(spins).Select(r => (double?)r.Percent).Min(),
            MinimumAchievable = traverse.Count > 0 && traverse.Values.All(t => t.Passed) ? traverse.Values.Select(t => t.Tested).Max() : null,
            Traverse = traverse,
            Index = index,
            Repeat = repeat,
        };
    }

    private static MachineVerdict Whole(List<MachineTest> tests) =>
        tests.Any(t => t.Verdict == MachineVerdict.Failed) ? MachineVerdict.Failed
        : tests.Any(t => t.Verdict == MachineVerdict.Undecided) || tests.All(t => t.Verdict == MachineVerdict.NotJudged) ? MachineVerdict.Undecided
        : MachineVerdict.Passed;

    private static MachineTest Traversed(PlaneSide side, TraverseResult result)
    {
        var limit = Figures.Of("machine.traversePercent");
        var worst = result.GreatestRatio - 1 > 1 - result.LeastRatio ? result.GreatestRatio - 1 : result.LeastRatio - 1;
        return new MachineTest("traverse", side, result.Passed ? MachineVerdict.Passed : MachineVerdict.Failed,
            Amount.Number(100 * worst, "%", 2), limit.Limit(0), limit.Source,
            result.Passed
                ? $"The machine reaches {result.Tested.Text("g·mm", 0)} in this plane; write it into its record."
                : result.Residual > result.Tested && result.Scatter <= result.Tested
                    ? $"The readings go up and down once around: {result.Residual.Text("g·mm", 0)} was left on the rotor. Balance it again and repeat the test."
                    : $"The readings scatter: {result.WouldPass.Text("g·mm", 0)} is the least that would pass. Look at clamping, belt and floor; calibrate the machine and repeat the test.");
    }

    private static IEnumerable<(PlaneSide Side, double Percent, KnownSpin Spin)> Ratios(MachineSpins spins) =>
        from spin in spins.Known
        from side in Sides
        where spin.Added.At(side).Amount.Si > 0
        select (side, ReductionRatio.Percent(spin.Added.At(side).Amount, ReductionRatio.Left(spin.Added.At(side), spin.Found.At(side)).Amount), spin);

    private static IEnumerable<MachineTest> Reduced(MachineSpins spins)
    {
        var source = new Source("Bloch and Geitner, Machinery Component Maintenance and Repair, p. 291 (ISO 21940-21)", SourceStatus.Read);
        foreach (var bySide in Ratios(spins).GroupBy(r => r.Side))
        {
            var (_, percent, spin) = bySide.MinBy(r => r.Percent);
            var (added, found) = (spin.Added.At(bySide.Key), spin.Found.At(bySide.Key));
            var amount = string.Create(CultureInfo.InvariantCulture, $"shown {found.Amount / added.Amount:0.000} of the amount, {(found.Place - added.Place).Degrees:+0.0;-0.0;0.0}° of its place");
            var verdict = spins.ReductionPercent is not { } asked ? MachineVerdict.NotJudged : percent >= asked ? MachineVerdict.Passed : MachineVerdict.Failed;
            yield return new MachineTest("reduction", bySide.Key, verdict, Amount.Number(percent, "%", 1),
                spins.ReductionPercent is { } p ? new Limit(Amount.Number(p, "%", 1), Source.Entered("the ratio given for this machine")) : null, source,
                verdict switch
                {
                    MachineVerdict.Failed => $"The worst spin was {amount}: calibrate the machine and repeat the test.",
                    MachineVerdict.NotJudged => $"The worst spin was {amount}. Ask the machine's maker for the ratio that it should reach.",
                    _ => $"The worst spin was {amount}.",
                });
        }
    }

    private static MachineTest Indexed(PlaneSide side, IndexResult result, MachineSpins spins)
    {
        var radius = spins.RadiusOf(side);
        var fixture = result.Fixture.Amount;
        var error = result.FixtureStandardError is { } e ? e * Figures.Of("machine.coverage").Value : default;
        var verdict = spins.FixtureLimit is not { } limit ? MachineVerdict.NotJudged : JudgedWithError.Of(fixture, On(limit, radius), error) switch
        {
            Acceptance.Accept => MachineVerdict.Passed,
            Acceptance.Undecided => MachineVerdict.Undecided,
            Acceptance.Reject => MachineVerdict.Failed,
        };
        return new MachineTest("index", side, verdict, Amount.Of(result.Fixture.MassAt(radius), "g", 1),
            spins.FixtureLimit is { } l ? new Limit(Amount.Of(l, "g", 1), Source.Entered("the limit given for the fixture")) : null,
            new Source("Bloch and Geitner, Machinery Component Maintenance and Repair, p. 312", SourceStatus.Read),
            verdict switch
            {
                MachineVerdict.Passed => "The fixture adds little of its own.",
                MachineVerdict.Failed => "The fixture adds unbalance of its own: clean shaft, cone and seat, look at their run-out with a dial, and repeat with the assembly clamped anew.",
                MachineVerdict.Undecided => "The spins scatter too much to say: add spins in further positions.",
                _ => result.Scatter is null
                    ? "Two positions cannot show their own scatter: add a third and a fourth. Ask the machine's maker what the fixture may add."
                    : "Ask the machine's maker what the fixture may add, or hold it against the tolerance that wheels are balanced to.",
            });
    }

    private static MachineTest Repeated(PlaneSide side, RepeatResult result, MachineSpins spins)
    {
        var radius = spins.RadiusOf(side);
        double Grams(Unbalance u) => u.GramMillimetres / radius.Millimetres;
        var verdict = spins.RepeatLimit is not { } limit ? MachineVerdict.NotJudged
            : !result.IsKnown ? MachineVerdict.Undecided
            : Grams(result.High) <= limit.Grams ? MachineVerdict.Passed
            : Grams(result.Low) > limit.Grams ? MachineVerdict.Failed
            : MachineVerdict.Undecided;
        return new MachineTest("repeat", side, verdict,
            !result.IsKnown ? new Amount(null, "g", "below what the display shows") : new Amount(Grams(result.StandardDeviation), "g", string.Create(CultureInfo.InvariantCulture, $"{Grams(result.StandardDeviation):0.00} g, between {Grams(result.Low):0.00} and {Grams(result.High):0.00} g")),
            spins.RepeatLimit is { } l ? new Limit(Amount.Of(l, "g", 2), Source.Entered("the repeatability given for this machine")) : null,
            new Source("ISO 5725-2; interval by the chi-squared distribution", SourceStatus.FromMemory),
            verdict switch
            {
                _ when !result.IsKnown => "No spin differs from another: the scatter is below the display's step, and nobody can say how far. Set the display to its finest step with small values shown, or enter its step and what it hides under 'balancer', or put a known mass on so that it shows; then spin again.",
                MachineVerdict.Undecided when result.NoneDiffers => "No spin differs from another, and what the display rounds and hides may scatter by more than the limit: set it to its finest step with small values shown, or put a known mass on, and spin again.",
                MachineVerdict.Passed => "Spins repeat as they should.",
                MachineVerdict.Failed => "Spins do not repeat: look for a loose clamping nut, worn shaft or cone, a floor that shakes, an object in the tyre.",
                MachineVerdict.Undecided => "The limit lies within the interval: make more spins.",
                _ => "Ask the machine's maker how well spins should repeat.",
            });
    }

    /// <summary>
    /// One standard deviation of a component that the display cannot show in a plane: a value rounded to a step is off by step/√12, and one that is hidden
    /// lies anywhere in a circle, by half its radius in each component.
    /// </summary>
    private static Unbalance Hidden(PlaneSide side, MachineSpins spins)
    {
        var step = spins.Profile.DisplayStep?.Grams ?? 0;
        var below = spins.Repeats.All(r => r.At(side).Amount.Si <= 0) ? spins.Profile.DisplayHidesBelow?.Grams ?? 0 : 0;
        return On(Mass.FromGrams(Math.Sqrt((step * step / 12) + (below * below / 4))), spins.RadiusOf(side));
    }

    internal static Unbalance On(Mass mass, Length radius) => Unbalance.FromGramMillimetres(mass.Grams * radius.Millimetres);
}

/// <summary>The wheel-shop test that a vehicle maker has published.</summary>
internal static class ShopCheck
{
    private static readonly PlaneSide[] Sides = [PlaneSide.Inner, PlaneSide.Outer];

    public static IEnumerable<MachineTest> Of(ShopSpins shop, MachineSpins spins)
    {
        double Grams(UnbalanceVector of, PlaneSide side) => of.MassAt(spins.RadiusOf(side)).Grams;
        if (shop.Empty is { } empty)
        {
            var worst = Sides.MaxBy(s => Grams(empty.At(s), s));
            yield return Test("empty-shaft", worst, Grams(empty.At(worst), worst),
                "Clean the shaft, take every cone off, and calibrate the machine if it still shows unbalance with nothing on it.");
        }

        if (shop is { Added: { } added, Found: { } found })
        {
            // By physics the mass shows in its own plane, and nothing in the other.
            var other = added.Plane == PlaneSide.Inner ? PlaneSide.Outer : PlaneSide.Inner;
            yield return Test("known-mass", added.Plane, Grams(found.At(added.Plane) - added.Unbalance, added.Plane),
                "The machine does not call the mass that is on: check the settings for this wheel, then calibrate.");
            yield return Test("known-mass", other, Grams(found.At(other), other),
                "The machine shows the mass in the other plane as well: check distance and width as set, then calibrate.");
        }

        foreach (var (name, of, step) in new[]
        {
            ("five-spins", shop.Repeats, "Spins one after the other differ: look for a loose clamping nut, a loose object in the tyre, a floor that shakes."),
            ("four-places", shop.Quarters, "It matters how the wheel sits on the shaft: clean shaft, cone and seat, look for a worn cone or a bent shaft."),
        })
        {
            if (of.Count > 0)
            {
                var worst = Sides.MaxBy(s => Spread(of, s));
                yield return Test(name, worst, Spread(of, worst), step);
            }
        }

        double Spread(IReadOnlyList<UnbalancePair> of, PlaneSide side) => of.Max(u => Grams(u.At(side), side)) - of.Min(u => Grams(u.At(side), side));
    }

    private static MachineTest Test(string name, PlaneSide side, double grams, string ifFailed)
    {
        var limit = Figures.Of("machine.shopLimit");
        var passed = grams <= limit.Value;
        return new MachineTest(name, side, passed ? MachineVerdict.Passed : MachineVerdict.Failed, Amount.Number(grams, "g", 1), limit.Limit(0), limit.Source,
            passed ? "As it should be." : ifFailed);
    }
}
