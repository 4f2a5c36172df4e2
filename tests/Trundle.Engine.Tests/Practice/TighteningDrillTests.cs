using System.Numerics;
using Trundle.Engine.Fixings;
using Trundle.Engine.Practice.Drills;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Practice;

/// <summary>Any valid sequence passes, by the three tests written out here once more; and what ends an attempt ends it.</summary>
public sealed class TighteningDrillTests
{
    public static TheoryData<int> Counts => [.. Enumerable.Range(3, 10)];

    [Theory, MemberData(nameof(Counts))]
    public void The_engines_own_order_its_turns_and_its_mirror_images_pass(int count)
    {
        var order = TighteningSequence.For(count);
        for (var turn = 0; turn < count; turn++)
        {
            Do(count, [.. order.Select(f => ((f - 1 + turn) % count) + 1)]).Passed.ShouldBeTrue();
            Do(count, [.. order.Select(f => ((count - (f - 1) + turn) % count) + 1)]).Passed.ShouldBeTrue();
        }

        if (int.IsOddInteger(count))
        {
            // The other rule for an odd count: always (n − 1)/2 places on.
            Do(count, [.. Enumerable.Range(0, count).Select(i => (i * (count - 1) / 2 % count) + 1)]).Passed.ShouldBeTrue();
        }
    }

    [Theory, MemberData(nameof(Counts))]
    public void Round_the_circle_fails_from_four_on_and_a_fixing_left_out_fails_always(int count)
    {
        int[] round = [.. Enumerable.Range(1, count)];
        Do(count, round).Passed.ShouldBe(count == 3);
        var left = Do(count, [.. round.Skip(1)]);
        left.Passed.ShouldBeFalse();
        left.Parts[0].Feedback.ShouldNotBeEmpty();
        Do(count, [.. round, 1]).Passed.ShouldBeFalse();
    }

    [Theory, InlineData(3), InlineData(4), InlineData(5), InlineData(6), InlineData(7), InlineData(8)]
    public void Of_all_permutations_exactly_the_valid_ones_pass(int count)
    {
        var (passed, valid, all) = (0, 0, 0);
        foreach (var order in Permutations([.. Enumerable.Range(1, count)]))
        {
            all++;
            var should = Valid(order);
            valid += should ? 1 : 0;
            var does = Do(count, order).Passed;
            passed += does ? 1 : 0;
            does.ShouldBe(should);
        }

        passed.ShouldBe(valid);
        valid.ShouldBeInRange(1, count == 3 ? all : all - 1);
    }

    [Fact]
    public void A_power_tool_a_missed_stage_and_oil_end_it_with_the_reason()
    {
        var drill = Of(5);
        TighteningAct[] byHand = [.. Enumerable.Range(1, 5).Select(f => new TighteningAct(TighteningDeed.ByHand, f))];
        Key([new TighteningAct(TighteningDeed.PowerTool, 2)]).ShouldBe("power-start");
        Key([.. byHand, new TighteningAct(TighteningDeed.PowerTool, 2)]).ShouldBe("power");
        Key([.. byHand, new TighteningAct(TighteningDeed.Wrench, 1, 1)]).ShouldBe("stage");
        Key(byHand).ShouldBeNull();
        var oiled = drill.Judge([.. byHand, new TighteningAct(TighteningDeed.Oil, 1)]);
        (oiled.Passed, oiled.Score).ShouldBe((false, 0));

        // 110 N·m on M12×1.5 with a 60° cone: 30.1 kN dry and 43.7 kN oiled (docs/theory/fixings.md).
        oiled.Stop!.Why.ShouldContain("30.1 kN to 43.7 kN");

        string? Key(TighteningAct[] acts) => drill.Judge(acts).Stop?.Key;
    }

    [Fact]
    public void Fixings_that_no_hand_ran_in_are_asked_for()
    {
        var acts = new[] { 0, 1 }.SelectMany(s => TighteningSequence.For(5).Select(f => new TighteningAct(TighteningDeed.Wrench, f, s))).ToList();
        var result = Of(5).Judge(acts);
        result.Passed.ShouldBeFalse();
        result.Parts.Single(p => !p.Met).Criterion.Key.ShouldBe("by-hand");
    }

    [Fact]
    public void Seeds_give_every_count_from_three_to_twelve() =>
        Enumerable.Range(0, 300).Select(i => TighteningDrill.Of((ulong)i).Count).Distinct().Order().ShouldBe(Enumerable.Range(3, 10));

    private static TighteningDrill Of(int count) => TighteningDrill.Of(1) with { Count = count, Torque = Torque.FromNewtonMetres(110) };

    private static Trundle.Engine.Practice.PracticeResult Do(int count, int[] order) => Of(count).Judge(
    [
        .. Enumerable.Range(1, count).Select(f => new TighteningAct(TighteningDeed.ByHand, f)),
        .. order.Select(f => new TighteningAct(TighteningDeed.Wrench, f, 0)),
        .. order.Select(f => new TighteningAct(TighteningDeed.Wrench, f, 1)),
    ]);

    private static bool Valid(int[] order)
    {
        var n = order.Length;
        var sum = Complex.Zero;
        for (var i = 0; i < n; i++)
        {
            sum += Complex.FromPolarCoordinates(1, 2 * Math.PI * order[i] / n);
            if (sum.Magnitude > 1 + 1e-9)
            {
                return false;
            }

            var step = i == 0 ? n : Math.Abs(order[i] - order[i - 1]);
            var move = Math.Min(step, n - step);

            // Of seven, the order that pulls least has a move of two places; of three and five, none shorter than (n − 1)/2.
            var least = n switch { 3 => 1, 5 => 2, 7 => 2, _ => 0 };
            if (i > 0 && (n % 2 == 0 ? i % 2 == 1 && move != n / 2 : move < least))
            {
                return false;
            }
        }

        return true;
    }

    private static IEnumerable<int[]> Permutations(int[] items)
    {
        if (items.Length == 1)
        {
            yield return items;
            yield break;
        }

        foreach (var first in items)
        {
            foreach (var rest in Permutations([.. items.Where(i => i != first)]))
            {
                yield return [first, .. rest];
            }
        }
    }
}
