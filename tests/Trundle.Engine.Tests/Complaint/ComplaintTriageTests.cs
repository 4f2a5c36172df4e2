using System.Numerics;
using Trundle.Engine.Complaint;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Complaint;

/// <summary>What the reference texts say of complaints comes out of the tables; what can cost a wheel is never passed over.</summary>
public sealed class ComplaintTriageTests
{
    private static readonly string[] Dangerous = ["loose-wheel", "separating-tyre", "low-pressure", "dragging-brake", "wheel-bearing", "worn-joint"];

    [Fact]
    public void With_nothing_said_every_cause_is_as_held_before_and_every_danger_stands()
    {
        var outcome = ComplaintTriage.Of(ComplaintData.Said());
        foreach (var cause in outcome.Causes)
        {
            cause.Probability.ShouldBe(ComplaintData.Prior(cause.Cause), 1e-12);
        }

        outcome.NotExcluded.Select(c => c.Cause).ShouldBe(Dangerous, ignoreOrder: true);
        outcome.Next.ShouldNotBeNull();
        outcome.Look.Take(Dangerous.Length).ShouldAllBe(c => c.Caution != null);
    }

    [Fact]
    public void Every_answer_of_every_question_adds_up_to_one_for_every_cause_and_none_is_impossible()
    {
        Figures.Of("complaint.slip").Value.ShouldBe(100 * ComplaintData.Slip, 1e-12);
        Figures.Of("complaint.slip-follows").Value.ShouldBe(100 * ComplaintData.SlipOf("follows"), 1e-12);
        ComplaintTable.Questions.Select(q => q.Key).ShouldBe(ComplaintData.Questions);
        foreach (var cause in ComplaintData.Causes.Select(c => c["cause"]))
        {
            foreach (var question in ComplaintTable.Questions)
            {
                question.Choices.Sum(c => ComplaintTable.Likelihood(cause, question.Key, c.Key)).ShouldBe(1, 1e-9);
                question.Choices.ShouldAllBe(c => ComplaintTable.Likelihood(cause, question.Key, c.Key) > 0.004);
            }
        }
    }

    // What comes once a turn of a wheel follows the road speed in any gear; what follows the engine's in any gear is none.
    [Fact]
    public void A_shake_that_follows_the_engine_speed_is_the_engines_first_however_it_grows()
    {
        ComplaintTriage.Of(ComplaintData.Said("kind=shake", "speed=rising", "felt=steering-wheel")).Causes[0].Cause.ShouldBe("unbalance");
        ComplaintTriage.Of(ComplaintData.Said("kind=shake", "speed=rising", "felt=steering-wheel", "follows=engine-speed")).Causes[0].Cause.ShouldBe("engine");
        ComplaintTriage.Of(ComplaintData.Said("kind=shake", "speed=rising", "felt=steering-wheel", "follows=road-speed")).Causes[0].Cause.ShouldBe("unbalance");
    }

    // The rear corner of a textbook (Automotive Chassis Engineering, sec. 3.13, read: 317.5 kg, 45.4 kg, 22 and 192 kN/m) with 1500 N·s/m and a wheel of
    // 1.9273 m: a force alike at all speeds fades by over 70 % from its peak near the hop to 160 km/h; that of an unbalance (30 g at 0.2 m) does not fade.
    [Fact]
    public void Fading_with_speed_points_to_runout_and_growing_to_unbalance()
    {
        BodyAcceleration(74, Runout).ShouldBe(0.1527, 0.0005);
        BodyAcceleration(160, Runout).ShouldBe(0.0426, 0.0005);
        BodyAcceleration(80, Unbalance).ShouldBe(0.0963, 0.0005);
        BodyAcceleration(160, Unbalance).ShouldBe(0.1118, 0.0005);
        Ratio("runout", "unbalance", "speed=band").ShouldBeGreaterThan(1.2 * Ratio("runout", "unbalance"));
        Ratio("unbalance", "runout", "speed=rising").ShouldBeGreaterThan(2 * Ratio("unbalance", "runout"));
    }

    // Vehicle makers' service texts (read): swaying at 8 to 56 km/h comes of a belt that is not straight, and such a tyre is taken out of use.
    [Fact]
    public void Swaying_at_low_speed_is_a_tyre_that_is_taken_out_of_use()
    {
        var outcome = ComplaintTriage.Of(ComplaintData.Said("kind=waddle", "speed=low"));
        outcome.Causes[0].Cause.ShouldBe("separating-tyre");
        outcome.NotExcluded[0].Cause.ShouldBe("separating-tyre");
        outcome.NotExcluded[0].Caution!.ShouldContain("do not drive");
        ComplaintTriage.Of(new ComplaintDetail(ComplaintData.Said("kind=waddle").Given, Speed.FromKilometresPerHour(45))).Causes[0].Cause.ShouldBe("separating-tyre");
    }

    [Theory]
    [InlineData("brake-disc", "kind=shake", "when=braking", "felt=pedal")]
    [InlineData("engine", "kind=shake", "follows=engine-speed", "neutral=stays", "speed=standing")]
    [InlineData("wheel-bearing", "kind=noise", "noise=hum-turning", "felt=heard")]
    [InlineData("alignment", "kind=pull", "pull=one-side", "after=kerb")]
    [InlineData("tyre-pull", "kind=pull", "pull=one-side", "after=new-tyres")]
    [InlineData("road", "kind=pull", "pull=road")]
    [InlineData("drive-joint", "when=accelerating", "noise=click", "follows=road-speed")]
    [InlineData("flat-from-standing", "kind=shake", "after=standing", "warm=fades")]
    [InlineData("flat-from-braking", "noise=thump", "after=hard-braking", "follows=road-speed", "warm=same", "when=always")]
    [InlineData("packed-dirt", "kind=shake", "speed=rising", "after=mud")]
    [InlineData("uneven-wear", "kind=noise", "noise=hum", "follows=road-speed", "when=always")]
    [InlineData("unbalance", "kind=shake", "speed=rising", "felt=steering-wheel", "when=always")]
    [InlineData("propeller-shaft", "felt=floor", "when=accelerating", "speed=rising", "follows=road-speed", "noise=hum", "kind=shake")]
    [InlineData("dragging-brake", "kind=pull", "noise=scrape", "warm=grows")]
    [InlineData("loose-wheel", "after=wheel-work", "noise=click", "warm=grows")]
    public void A_plain_case_names_its_cause_first(string cause, params string[] said) => ComplaintTriage.Of(ComplaintData.Said(said)).Causes[0].Cause.ShouldBe(cause);

    // What comes once a turn of a wheel keeps to the road speed in any gear; so what follows the engine is not of wheel or tyre, unless it was misheard.
    [Fact]
    public void What_follows_the_engine_and_not_the_road_speaks_against_every_wheel_tyre_and_brake()
    {
        string[] drive = ["engine", "propeller-shaft", "drive-joint", "other"];
        foreach (var cause in ComplaintData.Causes.Select(c => c["cause"]).Except(drive))
        {
            (ComplaintTable.Likelihood("engine", "follows", "engine-speed") / ComplaintTable.Likelihood(cause, "follows", "engine-speed")).ShouldBeGreaterThan(25, cause);
            foreach (var said in new[] { "kind=shake", "kind=noise" })
            {
                ComplaintTriage.Of(ComplaintData.Said(said, "follows=engine-speed")).Causes[0].Cause.ShouldBe("engine");
            }

            var before = ComplaintTriage.Of(ComplaintData.Said("kind=shake", "speed=rising", "felt=steering-wheel")).Causes.Single(c => c.Cause == cause).Probability;
            ComplaintTriage.Of(ComplaintData.Said("kind=shake", "speed=rising", "felt=steering-wheel", "follows=engine-speed")).Causes.Single(c => c.Cause == cause).Probability.ShouldBeLessThan(before, cause);
        }

        ComplaintTriage.Of(ComplaintData.Said("kind=shake", "follows=engine-speed", "neutral=goes")).Causes[0].Probability.ShouldBeGreaterThan(0.7);
    }

    [Theory]
    [InlineData("kind=shake", "speed=rising", "felt=steering-wheel", "after=wheel-work")]
    [InlineData("kind=shake", "after=wheel-work")]
    [InlineData("noise=click", "after=wheel-work")]
    public void After_work_on_the_wheels_a_loose_wheel_is_looked_at_first(params string[] said)
    {
        var outcome = ComplaintTriage.Of(ComplaintData.Said(said));
        outcome.NotExcluded.ShouldContain(c => c.Cause == "loose-wheel" && c.Caution!.Contains("do not drive", StringComparison.Ordinal));
        outcome.Look[0].Caution.ShouldNotBeNull();
        outcome.Look[0].Cause.ShouldBe("loose-wheel");
    }

    [Fact]
    public void A_danger_is_passed_over_only_when_the_answers_leave_less_than_its_figure()
    {
        var least = Figures.Of("complaint.not-excluded").Value / 100;
        var random = new Random(11);
        var excluded = 0;
        for (var i = 0; i < 2000; i++)
        {
            string[] said = [.. ComplaintData.Questions.Where(_ => random.Next(2) == 0).Select(q => $"{q}={ComplaintData.Answers(q)[random.Next(ComplaintData.Answers(q).Count)]}")];
            var outcome = ComplaintTriage.Of(ComplaintData.Said(said));
            outcome.Causes.Sum(c => c.Probability).ShouldBe(1, 1e-9);
            foreach (var cause in outcome.Causes.Where(c => Dangerous.Contains(c.Cause)))
            {
                cause.Caution.ShouldNotBeNull();
                outcome.NotExcluded.Contains(cause).ShouldBe(cause.Probability >= least);
                excluded += cause.Probability < least ? 1 : 0;
            }
        }

        excluded.ShouldBeGreaterThan(100, "the answers can exclude a danger");
    }

    [Fact]
    public void Everything_answered_leaves_no_question_and_order_of_answers_is_nothing()
    {
        string[] all = [.. ComplaintData.Questions.Select(q => $"{q}={ComplaintData.Answers(q)[^1]}")];
        var outcome = ComplaintTriage.Of(ComplaintData.Said(all));
        outcome.Next.ShouldBeNull();
        var back = ComplaintTriage.Of(ComplaintData.Said([.. all.Reverse()]));
        foreach (var cause in outcome.Causes)
        {
            back.Causes.Single(c => c.Cause == cause.Cause).Probability.ShouldBe(cause.Probability, 1e-12);
        }

        outcome.Causes[0].Evidence.Count.ShouldBe(ComplaintData.Questions.Count);
    }

    [Theory]
    [InlineData(50, "low")]
    [InlineData(50.1, "middle")]
    [InlineData(80, "middle")]
    public void A_speed_alone_stands_for_its_band_and_an_answer_wins_over_it(double kilometresPerHour, string band)
    {
        var speed = Speed.FromKilometresPerHour(kilometresPerHour);
        Same(new ComplaintDetail(ComplaintData.Said().Given, speed), ComplaintData.Said($"speed={band}"));
        Same(new ComplaintDetail(ComplaintData.Said("speed=all").Given, speed), ComplaintData.Said("speed=all"));

        // Above, whether it fades again was not said: both are left open.
        var fast = ComplaintTriage.Of(new ComplaintDetail(ComplaintData.Said().Given, Speed.FromKilometresPerHour(110)));
        double Weight(string cause) => ComplaintData.Prior(cause) * (ComplaintData.Likelihood(cause, "speed", "band") + ComplaintData.Likelihood(cause, "speed", "rising"));
        fast.Causes.Single(c => c.Cause == "runout").Probability.ShouldBe(Weight("runout") / ComplaintData.Causes.Sum(c => Weight(c["cause"])), 1e-9);
    }

    private static double Runout(double omega) => 48;

    private static double Unbalance(double omega) => 0.030 * 0.2 * omega * omega;

    private static double BodyAcceleration(double kilometresPerHour, Func<double, double> force)
    {
        var omega = 2 * Math.PI * kilometresPerHour / 3.6 / 1.9273;
        Complex spring = new(22_000, omega * 1500);
        var wheel = 192_000 + spring - (45.4 * omega * omega);
        var body = spring - (317.5 * omega * omega);
        return omega * omega * (force(omega) * spring / ((wheel * body) - (spring * spring))).Magnitude;
    }

    private static void Same(ComplaintDetail one, ComplaintDetail other) => ComplaintTriage.Of(one).Causes.Select(c => (c.Cause, c.Probability)).ShouldBe(ComplaintTriage.Of(other).Causes.Select(c => (c.Cause, c.Probability)));

    private static double Ratio(string one, string other, params string[] said)
    {
        var outcome = ComplaintTriage.Of(ComplaintData.Said(said));
        return outcome.Causes.Single(c => c.Cause == one).Probability / outcome.Causes.Single(c => c.Cause == other).Probability;
    }
}
