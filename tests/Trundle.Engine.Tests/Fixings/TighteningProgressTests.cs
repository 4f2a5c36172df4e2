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
}
