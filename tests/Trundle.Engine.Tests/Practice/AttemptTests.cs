using Trundle.Engine.Practice;
using Trundle.Engine.Practice.Bench;
using Trundle.Engine.Practice.Drills;
using Trundle.Engine.Practice.Standards;

namespace Trundle.Engine.Tests.Practice;

/// <summary>An attempt that is done again from its lines comes to the same judgement, and lines that are none are refused.</summary>
public sealed class AttemptTests
{
    private static readonly DateOnly Today = new(2026, 3, 2);

    [Fact]
    public void A_bench_done_again_from_its_lines_is_judged_the_same()
    {
        var kinds = PracticeAttempts.Kinds.Where(k => k.Level is not null).ToList();
        foreach (var mistake in new[] { Mistake.None, Mistake.ConeTurnedRound, Mistake.RimWidthWrong, Mistake.GuardUp, Mistake.NoCheckSpin })
        {
            for (ulong seed = 0; seed < 60; seed++)
            {
                var kind = kinds[(int)seed % kinds.Count];
                var bench = RobotTrainee.Do(PracticeWheels.Of(seed, kind.Level!.Value), mistake);
                var (first, again) = (BenchJudge.Judge(bench), PracticeAttempts.Judge(new PracticeAttempt(kind.Key, seed, Today, bench.Acts)).Value);
                again.Parts.ShouldBe(first.Parts);
                (again.Score, again.Passed, again.Stop).ShouldBe((first.Score, first.Passed, first.Stop));
                BenchActs.Replay(bench.Wheel, bench.Acts).Value.Acts.ShouldBe(bench.Acts);
            }
        }
    }

    [Theory]
    [InlineData("wheel/two-planes", "clamp 9 out free")]
    [InlineData("wheel/two-planes", "clamp 2 out")]
    [InlineData("wheel/two-planes", "set 0.05 0.4 NaN clip clip")]
    [InlineData("wheel/two-planes", "fit inner clip 2 90")]
    [InlineData("wheel/two-planes", "fit inner clip 0.02 1e9")]
    [InlineData("wheel/two-planes", "take 0")]
    [InlineData("wheel/two-planes", "spin down covered")]
    [InlineData("wheel/two-planes", "score 100")]
    [InlineData("drill/tin", "week")]
    [InlineData("drill/tin", "month=3")]
    [InlineData("drill/tightening", "wrench 13 0")]
    [InlineData("drill/tightening", "wrench 1 2")]
    [InlineData("drill/demount", "juggle")]
    [InlineData("drill/none", "")]
    public void A_line_that_is_no_act_is_refused_at_its_place(string kind, string line)
    {
        var judged = PracticeAttempts.Judge(new PracticeAttempt(kind, 3, Today, [line]));
        judged.IsRead.ShouldBeFalse();
        judged.Problem!.Where.ShouldBe(kind == "drill/none" ? "kind" : "acts[0]");
    }

    [Fact]
    public void Drills_are_judged_the_same_from_their_lines()
    {
        var drill = DrillList.Of(DrillKind.Tin, 4, Today);
        var answers = new Dictionary<string, string> { ["week"] = "12", ["year"] = drill.Questions[1].Hold("0").Required!.Amount.Text };
        Judge("drill/tin", 4, [.. answers.Select(a => PracticeAttempts.Line(a.Key, a.Value))]).Parts.ShouldBe(drill.Judge(answers).Parts);
        TighteningAct[] acts = [new(TighteningDeed.ByHand, 1), new(TighteningDeed.PowerTool, 1)];
        Judge(PracticeAttempts.Tightening, 4, [.. acts.Select(PracticeAttempts.Line)]).Stop!.Key.ShouldBe("power");
        Judge(PracticeAttempts.Demount, 4, ["bead-breaking"]).Stop!.Key.ShouldBe("bead-breaking");
        PracticeAttempts.Judge(new PracticeAttempt("drill/tin", 4, Today, ["week=1", "week=2"])).IsRead.ShouldBeFalse();

        static PracticeResult Judge(string kind, ulong seed, string[] lines) => PracticeAttempts.Judge(new PracticeAttempt(kind, seed, Today, lines)).Value;
    }

    [Fact]
    public void Every_level_and_every_drill_is_offered_and_practises_a_task_of_the_list()
    {
        PracticeAttempts.Kinds.Select(k => k.Level).OfType<PracticeLevel>().ShouldBe(Enum.GetValues<PracticeLevel>());
        PracticeAttempts.Kinds.Select(k => k.Drill).OfType<DrillKind>().ShouldBe(Enum.GetValues<DrillKind>());
        PracticeAttempts.Kinds.Select(k => k.Key).ShouldBeUnique();
        PracticeAttempts.Kinds.ShouldAllBe(k => PracticeTasks.Of(k.Task) != null);
    }
}
