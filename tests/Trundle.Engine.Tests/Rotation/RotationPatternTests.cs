using Trundle.Engine.Findings;
using Trundle.Engine.Rotation;
using Trundle.Engine.Vehicles;
using static Trundle.Engine.Tests.Rotation.Invented;

namespace Trundle.Engine.Tests.Rotation;

public class RotationPatternTests
{
    public static TheoryData<string> Names => [.. RotationPattern.Trade.Select(p => p.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_trade_pattern_is_a_permutation(string name)
    {
        var pattern = RotationPattern.Named(name)!;
        pattern.Moves.Select(m => m.From).ShouldBeUnique();
        pattern.Moves.Select(m => m.To).ShouldBeUnique();
        pattern.Moves.Select(m => m.From.ToString()).Order().ShouldBe(pattern.Moves.Select(m => m.To.ToString()).Order());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Order_rotations_bring_every_tyre_home_and_fewer_do_not(string name)
    {
        var pattern = RotationPattern.Named(name)!;
        var at = pattern.Moves.ToDictionary(m => m.From, m => m.From);
        for (var turn = 1; turn <= pattern.Order; turn++)
        {
            foreach (var start in at.Keys.ToList())
            {
                at[start] = pattern.Goes(at[start]);
            }

            at.All(a => a.Key == a.Value).ShouldBe(turn == pattern.Order);
        }
    }

    [Fact]
    public void Moves_are_read_with_arrows_and_swaps()
    {
        var read = RotationPattern.Read("1L>2L, 2L>1R,1R>2R ; 2r>1l", "vehicle maker's own", Source.CommonPractice).Value;
        read.Moves.Select(m => $"{m.From}>{m.To}").Order().ShouldBe(["1L>2L", "1R>2R", "2L>1R", "2R>1L"]);
        read.Name.ShouldBe("vehicle maker's own");
        read.Goes(At("2R")).ShouldBe(At("1L"));
        RotationPattern.Read("1L<>2L 1R<>2R", "own", Source.CommonPractice).Value.Order.ShouldBe(2);
        RotationPattern.Read(" Rearward Cross ", "own", Source.CommonPractice).Value.Name.ShouldBe("rearward cross");
    }

    [Theory]
    [InlineData("", "rotation-unknown")]
    [InlineData("sideways", "rotation-unknown")]
    [InlineData("1L>2L", "rotation-incomplete")]
    [InlineData("1L>2L, 2L>1L, 1L>2R", "rotation-doubled")]
    [InlineData("1L>2L, 1R>2L", "rotation-doubled")]
    [InlineData("1L>3X, 3X>1L", "position-unknown")]
    [InlineData("1L>2L>1L", "rotation-unknown")]
    public void A_rotation_that_is_none_is_a_problem(string text, string code) =>
        RotationPattern.Read(text, "own", Source.CommonPractice).Problem!.Code.ShouldBe(code);

    [Theory]
    [MemberData(nameof(Names))]
    public void At_the_lift_never_more_than_one_assembly_waits_and_no_hub_holds_two(string name)
    {
        var pattern = RotationPattern.Named(name)!;
        var steps = LiftOrder.Of(pattern, [.. pattern.Moves.Select(m => new RotationMove(m.From, m.To, false))], 2);
        var hub = pattern.Moves.ToDictionary(m => m.From, m => (Position?)m.From);
        Position? waiting = null;
        foreach (var step in steps)
        {
            switch (step.Action)
            {
                case LiftAction.Off:
                    waiting.ShouldBeNull();
                    hub[step.From].ShouldBe(step.From);
                    (hub[step.From], waiting) = (null, step.From);
                    break;
                case LiftAction.Move:
                    hub[step.From].ShouldBe(step.From);
                    hub[step.To].ShouldBeNull();
                    (hub[step.From], hub[step.To]) = (null, step.From);
                    break;
                case LiftAction.On:
                    waiting.ShouldBe(step.From);
                    hub[step.To].ShouldBeNull();
                    (hub[step.To], waiting) = (step.From, null);
                    break;
            }

            step.Waiting.ShouldBe(waiting);
        }

        waiting.ShouldBeNull();
        foreach (var move in pattern.Moves)
        {
            hub[move.To].ShouldBe(move.From);
        }
    }
}
