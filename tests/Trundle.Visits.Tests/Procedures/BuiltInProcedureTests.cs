using Trundle.Visits.Bay;
using Trundle.Visits.Procedures;

namespace Trundle.Visits.Tests.Procedures;

/// <summary>What the carried procedure says, in the ordinary case and in each circumstance: order, hold points, cautions.</summary>
public sealed class BuiltInProcedureTests
{
    private static readonly string[] Ordinary =
    [
        "received", "chocks", "slacken", "lift-points", "stands", "wheel-off", "feel", "core-out", "bead-breaking", "demount", "rim-check", "valve", "mount", "clamps-released",
        "seat", "bead-line", "core-in", "soap-test", "first-spin", "check-spin", "hub-face", "by-hand", "stages", "lowered", "final-torque", "pressure-set", "chocks-out", "road-test",
    ];

    private static List<ProcedureStep> At(params Circumstance[] given) =>
        [.. Procedure.BuiltIn.Steps.Select(s => s.Where(new Circumstances(given.ToDictionary(c => c, _ => (bool?)true)))).OfType<ProcedureStep>()];

    [Fact]
    public void The_ordinary_steps_stand_in_the_order_in_which_they_are_done()
    {
        var ids = At().Select(s => s.Id).ToList();
        Ordinary.Select(id => ids.IndexOf(id)).ShouldBeInOrder(SortDirection.Ascending);
        Ordinary.Select(id => ids.IndexOf(id)).ShouldAllBe(i => i >= 0);
    }

    [Theory]
    [InlineData("chocks")]
    [InlineData("lift-points")]
    [InlineData("stands")]
    [InlineData("core-out")]
    [InlineData("rim-check")]
    [InlineData("mount")]
    [InlineData("seat")]
    [InlineData("bead-line")]
    [InlineData("soap-test")]
    [InlineData("by-hand")]
    [InlineData("stages")]
    [InlineData("lowered")]
    [InlineData("final-torque")]
    [InlineData("pressure-set")]
    [InlineData("road-test")]
    public void A_hold_point_holds(string id) => Procedure.BuiltIn.Step(id).HoldPoint.ShouldBeTrue();

    [Theory]
    [InlineData("lift-points", "Stored energy")]
    [InlineData("core-out", "All air out before a bead is broken")]
    [InlineData("bead-breaking", "the valve core comes out before a bead is broken")]
    [InlineData("rim-check", "Never fit a tyre on a rim of another diameter")]
    [InlineData("seat", "Stand clear")]
    [InlineData("seat", "Never above the ruling limit")]
    [InlineData("seat", "only in a cage")]
    [InlineData("by-hand", "Never power a fixing on from the socket")]
    [InlineData("stages", "No power tool from the seat on")]
    [InlineData("pressure-set", "Never above the maximum")]
    public void A_caution_stands_at_its_step_for_every_wheel(string id, string words) =>
        At().Single(s => s.Id == id).Cautions.ShouldContain(c => c.Text.Contains(words, StringComparison.Ordinal));

    [Fact]
    public void Every_step_says_why_and_every_choice_and_hold_with_a_wrong_word_says_what_stops_it()
    {
        foreach (var step in Procedure.BuiltIn.Steps)
        {
            step.Why.ShouldNotBeNullOrWhiteSpace(step.Id);
            step.Text.Length.ShouldBeGreaterThan(30, step.Id);
            if (step.Choices.Count > step.Passing.Count)
            {
                step.Stop.ShouldNotBeNullOrWhiteSpace(step.Id);
            }
        }
    }

    /// <summary>Each circumstance: its steps, those that hold with a '!', between the ordinary ones that they stand between.</summary>
    [Theory]
    [InlineData(Circumstance.LowProfile, "lubricate-off assist-ready! demount")]
    [InlineData(Circumstance.RunFlat, "feel ran-without-air! core-out lubricate-off assist-ready! demount")]
    [InlineData(Circumstance.Sensor, "received lamp-before chocks valve sensor-serviced! mount pressure-set sensors-learned! chocks-out")]
    [InlineData(Circumstance.TubeType, "rim-check tube-and-flap! valve bead-line tube-settled! core-in")]
    [InlineData(Circumstance.ReversedRim, "core-out narrow-side! bead-breaking")]
    [InlineData(Circumstance.Motorcycle, "slacken axle-marked! lift-points stages axle-tight! lowered brake-pumped! final-torque")]
    [InlineData(Circumstance.AirSuspension, "slacken air-to-lifting! lift-points stands lowered air-to-road! final-torque")]
    [InlineData(Circumstance.HeavyWheel, "stands wheel-carried! wheel-off")]
    [InlineData(Circumstance.Truck, "received ran-low! chocks clamps-released caged! seat bead-line no-ripple! core-in")]
    [InlineData(Circumstance.MultiPiece, "weights-off licensed-only! cap-kept core-out bead-breaking")]
    [InlineData(Circumstance.Repair, "feel repair-found core-out demount repair-inside! repair-probed! repair-prepared! repair-filled! repair-sealed! repair-marked! rim-check mount seat soap-test!")]
    public void A_circumstance_brings_its_steps_where_they_are_due_and_only_there(Circumstance circumstance, string order)
    {
        var (ordinary, steps) = (At().Select(s => s.Id).ToHashSet(), At(circumstance));
        var wanted = order.Split(' ');
        wanted.Select(w => steps.FindIndex(s => s.Id == w.TrimEnd('!'))).ShouldBeInOrder(SortDirection.Ascending);
        wanted.Select(w => steps.FindIndex(s => s.Id == w.TrimEnd('!'))).ShouldAllBe(i => i >= 0);
        var brought = steps.Where(s => !ordinary.Contains(s.Id)).ToList();
        brought.Select(s => s.Id).ShouldBe(wanted.Select(w => w.TrimEnd('!')).Where(w => !ordinary.Contains(w)));
        brought.Where(s => s.HoldPoint).Select(s => s.Id).ShouldBe(wanted.Where(w => w.EndsWith('!') && !ordinary.Contains(w.TrimEnd('!'))).Select(w => w.TrimEnd('!')));
    }

    [Theory]
    [InlineData(Circumstance.LowProfile, "bead-breaking", "Short sidewall")]
    [InlineData(Circumstance.RunFlat, "mount", "cannot be repaired")]
    [InlineData(Circumstance.Sensor, "bead-breaking", "The sensor sits at the valve")]
    [InlineData(Circumstance.TubeType, "core-out", "holds air behind its own walls")]
    [InlineData(Circumstance.ReversedRim, "mount", "From the short side only")]
    [InlineData(Circumstance.Motorcycle, "lift-points", "With a wheel out")]
    [InlineData(Circumstance.AirSuspension, "lowered", "it may sink lower")]
    [InlineData(Circumstance.HeavyWheel, "by-hand", "The lift carries it")]
    [InlineData(Circumstance.Truck, "seat", "From outside the cage")]
    [InlineData(Circumstance.Truck, "caged", "Cage for large tyres")]
    [InlineData(Circumstance.MultiPiece, "licensed-only", "Nobody in this workshop overrules this")]
    [InlineData(Circumstance.MultiPiece, "slacken", "never those that hold the rim together")]
    [InlineData(Circumstance.Repair, "repair-probed", "A plug from outside alone is no repair")]
    public void A_circumstance_brings_its_cautions(Circumstance circumstance, string id, string words)
    {
        bool Told(ProcedureStep? step) => step is not null && step.Cautions.Any(c => c.Text.Contains(words, StringComparison.Ordinal));
        Told(At(circumstance).Single(s => s.Id == id)).ShouldBeTrue();
        Told(At().FirstOrDefault(s => s.Id == id)).ShouldBeFalse();
    }

    [Fact]
    public void Where_nobody_knows_the_caution_is_given_and_says_so_and_no_step_is_asked_for()
    {
        var notKnown = new Circumstances(new Dictionary<Circumstance, bool?> { [Circumstance.Sensor] = null });
        var caution = Procedure.BuiltIn.Step("bead-breaking").Where(notKnown)!.Cautions[^1].Text;
        caution.ShouldStartWith("Nobody has said whether it is so here, sensor in the wheel: The sensor sits at the valve");
        Procedure.BuiltIn.Step("sensor-serviced").Where(notKnown).ShouldBeNull();
    }

    [Fact]
    public void Circumstances_come_together()
    {
        var ids = At(Circumstance.Truck, Circumstance.TubeType, Circumstance.Repair, Circumstance.HeavyWheel).Select(s => s.Id).ToList();
        string[] order = ["ran-low", "wheel-carried", "repair-found", "core-out", "repair-inside", "rim-check", "tube-and-flap", "valve", "caged", "seat", "bead-line", "no-ripple", "tube-settled", "core-in"];
        order.Select(id => ids.IndexOf(id)).ShouldBeInOrder(SortDirection.Ascending);
        ids.Distinct().Count().ShouldBe(ids.Count);
    }
}
