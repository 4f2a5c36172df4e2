using Trundle.Engine.Practice;
using Trundle.Visits.Roll;

namespace Trundle.Visits.Tests.Roll;

/// <summary>A lesson: its numbers, its form, and where a learner stands.</summary>
public sealed class LessonTests
{
    private static readonly Guid Id = new("01920000-0000-7000-8000-000000000042");
    private static readonly Lesson Demount = new("Monday", [PracticeAttempts.Demount, "drill/tin"], null, ["4", "5"]);

    [Fact]
    public void Each_learner_gets_a_number_of_their_own_that_stays_or_all_the_same()
    {
        Demount.SeedFor(Id, "4").ShouldBe(Demount.SeedFor(Id, "4"));
        Demount.SeedFor(Id, "4").ShouldNotBe(Demount.SeedFor(Id, "5"));
        Demount.SeedFor(Id, "4").ShouldBeInRange(1, 999_999);
        (Demount with { Seed = 7 }).SeedFor(Id, "5").ShouldBe(7);
        Lesson.Of(Demount.Body()).Body().ShouldBe(Demount.Body());
        Lesson.Of((Demount with { Seed = 7 }).Body()).Seed.ShouldBe(7);
    }

    [Fact]
    public void What_is_no_lesson_is_said()
    {
        Demount.Wrong.ShouldBeNull();
        (Demount with { Title = "" }).Wrong!.Code.ShouldBe("title-length");
        (Demount with { Kinds = [] }).Wrong!.Code.ShouldBe("nothing-chosen");
        (Demount with { Kinds = ["wheel/none"] }).Wrong!.Code.ShouldBe("kind-unknown");
        (Demount with { Seed = -1 }).Wrong!.Code.ShouldBe("out-of-range");
        (Demount with { For = [] }).Wrong!.Code.ShouldBe("nobody-chosen");
    }

    [Fact]
    public void Where_a_learner_stands_is_told_of_their_own_attempts_at_their_own_number()
    {
        var seed = (ulong)Demount.SeedFor(Id, "4");
        var book = RollBook.Empty;
        Add("4", seed, false, false);
        Words().ShouldBe("not yet, 1 attempt, best 40 points");
        Add("4", seed + 1, true, false);
        Add("5", seed, true, false);
        Words().ShouldBe("not yet, 1 attempt, best 40 points", "another number, and another learner");
        Add("4", seed, true, true);
        Words().ShouldBe("stopped, 2 attempts, best 40 points");
        Add("4", seed, true, false);
        Words().ShouldBe("passed at attempt 3");
        LessonStanding.Of(Demount, Id, "4", book)[1].Words.ShouldBe("not tried");

        string Words() => LessonStanding.Of(Demount, Id, "4", book)[0].Words;

        void Add(string learner, ulong number, bool met, bool stopped) => book = book.Add(new AttemptRow
        {
            Id = Guid.NewGuid(),
            Learner = learner,
            Task = "demount-mount",
            Edition = AttemptRows.Edition,
            Number = book.NextNumber(learner, "demount-mount"),
            At = new DateTimeOffset(2026, 3, 2, 9, 0, 0, TimeSpan.Zero),
            On = AttemptRows.On(PracticeAttempts.Of(PracticeAttempts.Demount)!, number),
            Mode = AttemptMode.Simulated,
            Points = stopped ? 0 : met ? 100 : 40,
            SafetyStop = stopped ? "a bead before the core" : null,
            Criteria = [new AttemptCriterion("whole", true), new AttemptCriterion("order", met)],
        }).Value;
    }
}
