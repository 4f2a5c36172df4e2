using Trundle.Engine.Practice;
using Trundle.Engine.Practice.Bench;
using Trundle.Engine.Practice.Drills;
using Trundle.Engine.Practice.Standards;
using Trundle.Visits.Bay;
using Trundle.Visits.Procedures;
using Trundle.Visits.Roll;

namespace Trundle.Visits.Tests.Roll;

/// <summary>The roll of an invented class, reckoned by hand.</summary>
public sealed class RollTests
{
    private static readonly DateTimeOffset Morning = new(2026, 3, 2, 9, 0, 0, TimeSpan.Zero);
    private static readonly AttemptSignature Second = new("Second instructor", Morning);

    [Fact]
    public void A_class_of_three_comes_out_as_reckoned_by_hand()
    {
        // Twelve tasks of priority 1 and two of priority 2. Asked: 95 % of 12 is 11.4, so 12; 80 % of 2 is 1.6, so 2.
        PracticeTasks.List.Count(t => t.Priority == 1).ShouldBe(12);
        PracticeTasks.List.Count(t => t.Priority == 2).ShouldBe(2);
        var book = RollBook.Empty;

        // Trainee one has shown all but the repair and has that in practice only; trainee two has shown three, one of them lost at a later attempt; trainee three did nothing.
        foreach (var task in PracticeTasks.List)
        {
            book = book.Add(Row(book, "One", task.Key, AttemptMode.Observed, AttemptDecision.Satisfactory) with { Mode = task.Key == "repair" ? AttemptMode.Simulated : AttemptMode.Observed }).Value;
        }

        foreach (var task in new[] { "balance", "inspect", "shake" })
        {
            book = book.Add(Row(book, "Two", task, AttemptMode.Observed, AttemptDecision.Satisfactory)).Value;
        }

        book = book.Add(Row(book, "Two", "inspect", AttemptMode.Observed, AttemptDecision.NotYet)).Value;
        book = book.Add(Row(book, "Two", "leak", AttemptMode.Observed, AttemptDecision.Open)).Value;
        var totals = RollTotals.Of(book, ["One", "Two", "Three"]);
        totals.Select(t => string.Join(" ", t.Shares.Select(s => $"{s.Shown}/{s.Asked}/{s.Left}"))).ShouldBe(["11/12/1 2/2/0", "1/12/11 1/2/1", "0/12/12 0/2/2"]);
        totals[0].Reached.ShouldBeFalse();
        Standing("One", "repair").ShouldBe(TaskStanding.Practised);
        Standing("Two", "inspect").ShouldBe(TaskStanding.Tried);
        Standing("Two", "leak").ShouldBe(TaskStanding.Tried);
        Standing("Three", "leak").ShouldBe(TaskStanding.NotTried);
        book = book.Add(Row(book, "One", "repair", AttemptMode.Observed, AttemptDecision.Satisfactory)).Value;
        RollTotals.Of(book, ["One"])[0].Reached.ShouldBeTrue();

        var lines = RollTotals.Csv(totals).Split("\r\n");
        lines.Length.ShouldBe(5);
        lines[0].ShouldEndWith("\"P-1 shown\",\"P-1 asked\",\"P-1 left\",\"P-2 shown\",\"P-2 asked\",\"P-2 left\"");
        lines[1].ShouldEndWith("\"11\",\"12\",\"1\",\"2\",\"2\",\"0\"");
        lines[2].ShouldStartWith("\"Two\",\"tried\"");
        lines.Take(4).Select(l => l.Split("\",\"").Length).Distinct().ShouldBe([1 + 14 + 6]);

        TaskStanding Standing(string learner, string task) => RollTotals.Of(book, learner, task);
    }

    [Fact]
    public void A_trainee_is_shown_their_own_rows_only()
    {
        var book = RollBook.Empty.Add(Row(RollBook.Empty, "One", "balance", AttemptMode.Observed, AttemptDecision.Satisfactory)).Value;
        book = book.Add(Row(book, "Two", "balance", AttemptMode.Observed, AttemptDecision.NotYet)).Value;
        book.Of("Two").Rows.ShouldHaveSingleItem().Learner.ShouldBe("Two");
        book.Of("Three").Rows.ShouldBeEmpty();
    }

    [Theory]
    [InlineData("task-unknown")]
    [InlineData("row-twice")]
    [InlineData("number-not-next")]
    [InlineData("again-unknown")]
    [InlineData("not-signed")]
    [InlineData("own-assessor")]
    [InlineData("safety-stop")]
    [InlineData("criterion-not-met")]
    [InlineData("not-tied")]
    [InlineData("second-signature")]
    public void A_row_that_could_not_stand_up_is_not_taken(string code)
    {
        var book = RollBook.Empty.Add(Row(RollBook.Empty, "One", "balance", AttemptMode.Observed, AttemptDecision.Satisfactory)).Value;
        var row = Row(book, "One", "balance", AttemptMode.Observed, AttemptDecision.Satisfactory);
        book.Add(row).IsRead.ShouldBeTrue();
        var spoilt = code switch
        {
            "task-unknown" => row with { Task = "juggling" },
            "row-twice" => row with { Id = book.Rows[0].Id },
            "number-not-next" => row with { Number = 5 },
            "again-unknown" => row with { Again = Guid.Empty },
            "not-signed" => row with { Signature = null },
            "own-assessor" => row with { Assessor = "One", Signature = new AttemptSignature("One", Morning) },
            "safety-stop" => row with { SafetyStop = "The guard was up." },
            "criterion-not-met" => row with { Criteria = [new AttemptCriterion("within tolerance", false)] },
            "not-tied" => row with { Mode = AttemptMode.ThirdParty },
            _ => Row(book, "One", "lift", AttemptMode.Observed, AttemptDecision.Satisfactory) with { SecondSignature = new AttemptSignature("Instructor", Morning) },
        };
        book.Add(spoilt).Problem!.Code.ShouldBe(code);
    }

    [Fact]
    public void An_attempt_at_the_bench_becomes_an_open_row_and_decides_nothing_by_itself()
    {
        var result = BenchJudge.Judge(PracticeBench.For(PracticeWheels.Of(4, PracticeLevel.TwoPlanes)));
        var row = AttemptRows.OfPractice(RollBook.Empty, Guid.NewGuid(), "One", "balance", "two planes, seed 4", Morning, result);
        row.Decision.ShouldBe(AttemptDecision.Open);
        row.Criteria.ShouldContain(c => !c.Met);
        row.Feedback.ShouldContain("not clamped");
        var book = RollBook.Empty.Add(row).Value;
        RollTotals.Of(book, "One", "balance").ShouldBe(TaskStanding.Tried);

        // Nor may an assessor call it satisfactory.
        book.Add(row with { Id = Guid.NewGuid(), Number = 2, Decision = AttemptDecision.Satisfactory, Assessor = "Instructor", Signature = new AttemptSignature("Instructor", Morning) }).Problem!.Code.ShouldBe("criterion-not-met");
    }

    [Fact]
    public void Work_on_a_visit_counts_where_somebody_who_may_signed_it_off()
    {
        var trainee = new TraineeStep("One", Morning);
        var signed = new SignedOff(true, "Instructor", Role.Instructor, "Good.", Morning);
        var row = AttemptRows.OfVisit(RollBook.Empty, Guid.NewGuid(), Guid.NewGuid(), "Blue hatchback 1L", "check-spin", trainee, signed, null)!;
        RollTotals.Of(RollBook.Empty.Add(row).Value, "One", "balance").ShouldBe(TaskStanding.Shown);
        AttemptRows.OfVisit(RollBook.Empty, Guid.NewGuid(), Guid.NewGuid(), "", "received", trainee, signed, null).ShouldBeNull();
        AttemptRows.OfVisit(RollBook.Empty, Guid.NewGuid(), Guid.NewGuid(), "", "check-spin", trainee, signed with { Role = Role.Trainee }, null).ShouldBeNull();
        var lifted = AttemptRows.OfVisit(RollBook.Empty, Guid.NewGuid(), Guid.NewGuid(), "", "stands", trainee, signed, null)!;
        RollBook.Empty.Add(lifted).Problem!.Code.ShouldBe("second-signature");
        RollBook.Empty.Add(lifted with { SecondSignature = Second }).IsRead.ShouldBeTrue();
    }

    [Fact]
    public void Every_task_stands_in_a_standard_and_its_steps_in_the_procedure()
    {
        var steps = Steps();
        foreach (var task in PracticeTasks.List)
        {
            task.Codes.ShouldNotBeEmpty(task.Key);
            task.Steps.ShouldBeSubsetOf(steps);
        }

        PracticeTasks.List.Select(t => t.Key).ShouldBeUnique();
        PracticeTasks.List.SelectMany(t => t.Steps).ShouldBeUnique();
    }

    [Fact]
    public void The_demount_drill_has_the_procedures_own_steps_in_an_order_that_passes()
    {
        var known = DemountDrill.Deeds.Where(d => !d.IsTrap).Select(d => d.Key).ToHashSet();
        var inOrder = Steps().Where(known.Contains).ToList();
        inOrder.Count.ShouldBe(known.Count);
        DemountDrill.Of(1).Judge(inOrder).Passed.ShouldBeTrue();
    }

    private static List<string> Steps() => [.. BuiltInProcedure.Files[0].Steps.Select(s => s.Id)];

    private static AttemptRow Row(RollBook book, string learner, string task, AttemptMode mode, AttemptDecision decision) => new()
    {
        Id = Guid.NewGuid(),
        Learner = learner,
        Task = task,
        Edition = AttemptRows.Edition,
        Number = book.NextNumber(learner, task),
        At = Morning,
        On = "Blue hatchback 1L",
        Mode = mode,
        Criteria = [new AttemptCriterion("within tolerance", decision != AttemptDecision.NotYet)],
        Assessor = decision == AttemptDecision.Open ? null : "Instructor",
        Decision = decision,
        Signature = decision == AttemptDecision.Open ? null : new AttemptSignature("Instructor", Morning),
        SecondSignature = PracticeTasks.Of(task)!.SecondSignature ? Second : null,
    };
}
