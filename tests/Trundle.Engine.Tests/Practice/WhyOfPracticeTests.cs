using Trundle.Engine.Balance.Why;
using Trundle.Engine.Practice.Bench;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Practice;

/// <summary>The engine that explains why a wheel does not come to zero, asked about practice wheels on which one thing was done wrong: two parts that were made apart agree.</summary>
public sealed class WhyOfPracticeTests
{
    [Theory]
    [InlineData("RimWidthWrong", WhyCause.RimWidth)]
    [InlineData("RimDiameterWrong", WhyCause.RimDiameter)]
    [InlineData("RimDistanceWrong", WhyCause.RimDistance)]
    [InlineData("SidesChanged", WhyCause.WeightsSwapped)]
    [InlineData("None", WhyCause.Noise)]
    public void The_displays_of_a_practice_wheel_point_at_the_mistake_that_was_made(string name, WhyCause cause)
    {
        var mistake = Enum.Parse<Mistake>(name);
        var (first, among, tried) = (0, 0, 0);
        for (ulong seed = 0; seed < 120; seed++)
        {
            var bench = RobotTrainee.Do(PracticeWheels.Of(seed, PracticeLevel.TwoPlanes), mistake, 2);
            if (bench.Spins.Count < 3 && mistake != Mistake.None)
            {
                // The mistake did so little to this wheel that the check spin was content.
                continue;
            }

            tried++;
            var problem = new WhyProblem
            {
                Entered = bench.Entered,
                Profile = bench.Wheel.Profile,
                InnerKind = bench.InnerKind,
                OuterKind = bench.OuterKind,
                Repeatability = Mass.FromGrams(1),
                WheelMass = bench.Wheel.Mass,
                Spins = [.. bench.Spins.Select((s, i) => new WhySpin(s.Needed, [.. bench.Weights.Where(w => w.AfterSpin == i + 1)
                    .Select(w => new WeightFitted(mistake == Mistake.SidesChanged ? Other(w.Fitted.Plane) : w.Fitted.Plane, w.Fitted.Mass, w.Fitted.Place, null))]))],
            };
            var ranked = BalanceWhy.Run(problem).Explanations.Select(e => e.Cause).ToList();
            first += ranked[0] == cause ? 1 : 0;
            among += ranked.Take(3).Contains(cause) ? 1 : 0;
        }

        // A display of whole grams and a hand that misses by up to 2° hide a small mistake, and a width off does to two spins nearly what another cause does: found, 43 of a
        // hundred widths stand first and all among the first three; the other causes stand first in more than half.
        tried.ShouldBeGreaterThan(20);
        ((double)first / tried).ShouldBeGreaterThan(cause == WhyCause.RimWidth ? 0.35 : 0.5, $"first {first}, among three {among}, of {tried}");
        ((double)among / tried).ShouldBeGreaterThan(0.8, $"first {first}, among three {among}, of {tried}");

        static Trundle.Engine.Balance.PlaneSide Other(Trundle.Engine.Balance.PlaneSide side) => side == Trundle.Engine.Balance.PlaneSide.Inner ? Trundle.Engine.Balance.PlaneSide.Outer : Trundle.Engine.Balance.PlaneSide.Inner;
    }
}
