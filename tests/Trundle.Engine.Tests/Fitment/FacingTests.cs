using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Tests.Fitment;

public sealed class FacingTests
{
    /// <summary>
    /// The turning sense worked out from a picture: forward is +y, right is +x, up is +z. A rolling wheel turns about -x (its top goes forward).
    /// Its outer face looks to -x on the left and to +x on the right; an inner dual's looks the other way. Seen against the face's own direction,
    /// the turn is clockwise where the axis of turning and the face's direction are opposite.
    /// </summary>
    [Fact]
    public void The_turning_sense_agrees_with_vectors_at_every_position()
    {
        var left = Clockwise(Bay.At("1L"));
        foreach (var side in (Side[])[Side.Left, Side.Right])
        {
            foreach (var dual in Enum.GetValues<DualPlace>())
            {
                var position = Position.On(2, side, dual);
                (Facing.TurningSide(position) == Side.Left).ShouldBe(Clockwise(position) == left, position.ToString());
            }
        }

        static bool Clockwise(Position position)
        {
            var faceX = (position.Side == Side.Left ? -1 : 1) * (position.Dual == DualPlace.Inner ? -1 : 1);
            const int axisX = -1;
            return axisX * faceX < 0;
        }
    }

    [Theory]
    [InlineData("1L", MountedFor.Left, Category.None)]
    [InlineData("1L", MountedFor.Right, Category.Major)]
    [InlineData("2R", MountedFor.Right, Category.None)]
    [InlineData("2R", MountedFor.Left, Category.Major)]
    public void A_directional_tyre_turns_its_way(string position, MountedFor side, Category expected)
    {
        foreach (var rules in Bay.EveryRuleSet)
        {
            Run(rules, position, t => t with { Directional = true, MountedFor = side }).One("direction.rotation", position).Category.ShouldBe(expected);
            Run(rules, position, t => t with { Marks = ["ROTATION"], MountedFor = side }).One("direction.rotation", position).Category.ShouldBe(expected);
        }
    }

    [Theory]
    [InlineData("2Lo", MountedFor.Left, "direction.rotation", Category.None)]
    [InlineData("2Lo", MountedFor.Right, "direction.rotation", Category.Major)]
    [InlineData("2Li", MountedFor.Right, "direction.inner-dual", Category.None)]
    [InlineData("2Li", MountedFor.Left, "direction.inner-dual", Category.Refer)]
    [InlineData("2Ri", MountedFor.Left, "direction.inner-dual", Category.None)]
    public void The_inner_wheel_of_a_pair_stands_face_in(string position, MountedFor side, string rule, Category expected)
    {
        var vehicle = Bay.Car with { Axles = [Bay.Axle(), Bay.Axle() with { Dual = true }] };
        var subject = new FittedVehicle(vehicle, [Bay.On(position) with { Tyre = new FittedTyre { Marking = Bay.Marked(Bay.Size), Directional = true, MountedFor = side } }], null, null);
        FitmentCheck.Run(subject).One(rule, position).Category.ShouldBe(expected);
    }

    [Theory]
    [InlineData(true, Category.None)]
    [InlineData(false, Category.Major)]
    public void The_outside_is_out(bool outside, Category expected)
    {
        Run(RuleSet.UnitedKingdom, "1R", t => t with { Asymmetric = true, OuterFaceOut = outside }).One("direction.outer-face", "1R").Category.ShouldBe(expected);
        Run(RuleSet.UnitedStates, "1R", t => t with { Marks = ["OUTSIDE"], OuterFaceOut = outside }).One("direction.outer-face", "1R").Category.ShouldBe(expected);
    }

    [Fact]
    public void What_was_not_entered_is_asked_for()
    {
        var result = Run(null, "1L", t => t with { Directional = true, Asymmetric = true });
        result.Faults.ShouldBeEmpty();
        result.Needs.Count(n => n.Position == "1L" && (n.What.Contains("mounted for", StringComparison.Ordinal) || n.What.Contains("outside faces out", StringComparison.Ordinal))).ShouldBe(2);
    }

    private static CheckResult Run(RuleSet? rules, string position, Func<FittedTyre, FittedTyre> change) =>
        FitmentCheck.Run(Bay.Four(rules).With(position, a => a with { Tyre = change(a.Tyre!) }));
}
