using Trundle.Engine.Fixings;

namespace Trundle.Engine.Tests.Fixings;

public class TighteningProgressTests
{
    private static TighteningProgress Start() => TighteningProgress.Start([1, 3, 5, 2, 4], [50, 100]);

    private static TighteningProgress After(TighteningProgress progress, params int[] fixings) =>
        fixings.Aggregate(progress, (p, fixing) => p.Tightened(fixing).Value);

    [Fact]
    public void All_fixings_pass_one_stage_before_the_next_begins()
    {
        var steps = Start().Remaining.ToList();
        steps.Select(s => s.Fixing).ShouldBe([1, 3, 5, 2, 4, 1, 3, 5, 2, 4]);
        steps.Select(s => s.Percent).ShouldBe([50, 50, 50, 50, 50, 100, 100, 100, 100, 100]);
        After(Start(), 1, 3, 5, 2, 4).Next.ShouldBe(new TighteningStep(1, 1, 100));
    }

    [Fact]
    public void It_is_finished_only_after_the_last_fixing_at_the_last_stage()
    {
        var last = After(Start(), 1, 3, 5, 2, 4, 1, 3, 5, 2);
        last.Finished.ShouldBeFalse();
        var done = last.Tightened(4).Value;
        done.Finished.ShouldBeTrue();
        done.Next.ShouldBeNull();
        done.Tightened(1).Problem!.Code.ShouldBe("wheel-finished");
    }

    [Fact]
    public void A_fixing_out_of_turn_is_said_and_changes_nothing()
    {
        var progress = After(Start(), 1, 3);
        var wrong = progress.Tightened(4);
        wrong.Problem!.Code.ShouldBe("fixing-out-of-turn");
        wrong.Problem.Message.ShouldBe("Fixing 5 is next at 50 %, not fixing 4.");
        progress.Next!.Value.Fixing.ShouldBe(5);
    }

    [Fact]
    public void A_wheel_that_was_left_starts_again_at_the_first_stage_even_from_within_the_last()
    {
        var left = After(Start(), 1, 3, 5, 2, 4, 1, 3).Interrupted();
        left.Next.ShouldBe(new TighteningStep(1, 0, 50));
        left.Interruptions.ShouldBe(1);
        left.Remaining.Count().ShouldBe(10);
    }

    [Fact]
    public void An_untouched_or_finished_wheel_has_nothing_to_begin_anew()
    {
        var untouched = Start();
        untouched.Interrupted().ShouldBeSameAs(untouched);
        var done = After(Start(), 1, 3, 5, 2, 4, 1, 3, 5, 2, 4);
        done.Interrupted().ShouldBeSameAs(done);
    }

    [Fact]
    public void A_wheel_taken_up_from_its_record_takes_no_fixing_until_a_person_says_that_nothing_was_moved()
    {
        var before = After(Start(), 1, 3, 5, 2, 4, 1, 3);
        var taken = TighteningProgress.TakenUp(before.Order, before.Percents, [before.Record(0), before.Record(1)], 0).Value;
        taken.Done.ShouldBe(7);
        taken.Left.ShouldBeTrue();
        taken.Tightened(5).Problem!.Code.ShouldBe("wheel-left");
        taken.GoneOn().Tightened(5).Value.Done.ShouldBe(8);
        var again = taken.BegunAgain();
        again.Left.ShouldBeFalse();
        again.Next.ShouldBe(new TighteningStep(1, 0, 50));
        again.Interruptions.ShouldBe(1);
    }

    [Fact]
    public void At_every_fixing_the_record_gives_back_how_far_it_had_come_and_an_untouched_or_finished_wheel_asks_nothing()
    {
        var progress = Start();
        for (var done = 0; ; done++)
        {
            var recorded = Enumerable.Range(0, 2).Select(progress.Record).Where(r => r.Fixings.Count > 0).ToList();
            var taken = TighteningProgress.TakenUp(progress.Order, progress.Percents, recorded, 3).Value;
            taken.Done.ShouldBe(done);
            taken.Interruptions.ShouldBe(3);
            taken.Left.ShouldBe(done is > 0 and < 10);
            if (progress.Next is not { } next)
            {
                done.ShouldBe(10);
                return;
            }

            progress = progress.Tightened(next.Fixing).Value;
        }
    }

    [Theory]
    [InlineData("another order", 50, new[] { 1, 2 }, 100, new int[0])]
    [InlineData("another share", 60, new[] { 1, 3 }, 100, new int[0])]
    [InlineData("a stage begun before the first was whole", 50, new[] { 1, 3, 5, 2 }, 100, new[] { 1 })]
    [InlineData("more fixings than the wheel has", 50, new[] { 1, 3, 5, 2, 4, 6 }, 100, new int[0])]
    public void A_record_that_does_not_follow_the_order_in_use_leaves_only_the_first_stage(string why, double share, int[] first, double nextShare, int[] second)
    {
        var start = Start();
        RecordedStage[] recorded = second.Length == 0 ? [new(share, first)] : [new(share, first), new(nextShare, second)];
        TighteningProgress.TakenUp(start.Order, start.Percents, recorded, 0).Problem!.Code.ShouldBe("record-out-of-order", why);
    }
}
