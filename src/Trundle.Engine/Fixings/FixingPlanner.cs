using Trundle.Engine.Findings;
using Trundle.Engine.InUse;
using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Fixings;

/// <summary>Makes the plan for the fixings of one wheel.</summary>
public static class FixingPlanner
{
    /// <summary>
    /// Sequence, stages, wrench settings, clamp, proof load, re-torque, findings and cautions. A torque that the vehicle's maker did not give is
    /// not invented: stages then carry their shares alone, and there is no clamp.
    /// </summary>
    /// <param name="question">Count 1 to 20; an adapter must leave an arm. The reader has seen to both.</param>
    /// <source>each part names its own: sequence, clamp, proof load and re-torque</source>
    public static FixingPlan Plan(FixingQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        var fixings = question.Fixings;
        var count = fixings.Count ?? throw new ArgumentException("The count of fixings must be known.", nameof(question));
        var percents = question.StagePercents.Count > 0
            ? question.StagePercents
            : [Figures.Of("fixings.stage.first").Value, Figures.Of("fixings.stage.last").Value];
        var clamp = fixings is { Torque: { } torque, Thread: { } thread }
            ? ClampRange.Of(torque, thread, fixings.Seat, fixings.Condition, Detail(question, torque))
            : null;
        var proof = ProofLoad(fixings);
        return new FixingPlan
        {
            Question = question,
            Sequence = TighteningSequence.For(count),
            MakerOrder = fixings.Order.Count > 0 ? fixings.Order : null,
            Stages = [.. percents.Select(p => Stage(p, question))],
            Reach = Reach(question),
            Clamp = clamp,
            ProofLoad = proof,
            ReTorque = fixings.ReTorque ?? ReTorque.Customary(question.Heavy),
            Findings = [.. SeatFindings(fixings), .. ProofFindings(clamp, proof, proof is null ? Strongest(fixings) : null), .. WrenchFindings.Of(question), .. LeastEngagement.Finding(fixings) is { } engagement ? [engagement] : Array.Empty<Finding>()],
            Cautions = [.. FixingCautions.For(question, clamp, proof)],
        };
    }

    private static TighteningStage Stage(double percent, FixingQuestion question)
    {
        var atFixing = question.Fixings.Torque * (percent / 100);
        var setting = atFixing is { } t && question.Adapter is not null ? question.Adapter.Setting(t) : atFixing;
        return setting is { } s && WrenchFindings.Refusal(question.Wrench, s) is { } why
            ? new TighteningStage(percent, atFixing, null) { Refused = why }
            : new TighteningStage(percent, atFixing, setting);
    }

    private static ClampDetail Detail(FixingQuestion question, Torque torque) => new()
    {
        NutFactor = question.NutFactor,
        Form = question.Fixings.Form,
        WornSeat = question.Fixings.SeatWorn,
        Wrench = question.Wrench,
        Setting = question.Adapter?.Setting(torque),
    };

    private static WrenchReach? Reach(FixingQuestion question) =>
        question is { Wrench: { WorstPercent: { } worst } wrench, Fixings.Torque: { } torque }
            ? new WrenchReach(wrench.LeastAt(torque), wrench.MostAt(torque), worst, wrench.IsOff(question.Adapter?.Setting(torque) ?? torque))
            : null;

    private static Limit? ProofLoad(FixingSet fixings)
    {
        if (fixings.Thread is not { } thread || fixings.PropertyClass is not { } text || PropertyClass.Read(text) is not { IsRead: true } read)
        {
            return null;
        }

        var (load, source) = read.Value.ProofLoad(thread);
        return new Limit(Amount.Of(load, "kN", 1), source);
    }

    /// <summary>The proof load of the strongest class that a fixing of this thread can bear: what no fixing stands, whatever its class.</summary>
    private static (PropertyClass Class, Limit Proof)? Strongest(FixingSet fixings)
    {
        if (fixings.Thread is not { } thread)
        {
            return null;
        }

        var (strongest, load, source) = PropertyClass.All.Where(c => c.Contradiction(thread) is null).Select(c => (Class: c, c.ProofLoad(thread).Load, c.ProofLoad(thread).Source)).MaxBy(c => c.Load.Newtons);
        return (strongest, new Limit(Amount.Of(load, "kN", 1), source));
    }

    private static IEnumerable<Finding> ProofFindings(ClampRange? clamp, Limit? proof, (PropertyClass Class, Limit Proof)? strongest)
    {
        if (clamp is not null && strongest is var (class_, most) && clamp.Low > Force.FromKilonewtons(most.Amount.Value!.Value))
        {
            yield return new Finding("fixings.clamp", Category.Major, null, Amount.Of(clamp.Low, "kN", 1), most, most.Source,
                $"Do not tighten to this torque: even the low end of its clamp passes the proof load of the strongest class held here, {class_.Name}, and the class of these fixings is not known. Look up torque, thread and class in the vehicle maker's own data.");
        }

        if (clamp is null || proof is null)
        {
            yield break;
        }

        var limit = Force.FromKilonewtons(proof.Amount.Value!.Value);
        if (clamp.Nominal.Nominal > limit)
        {
            yield return new Finding("fixings.clamp", Category.Major, null, Amount.Of(clamp.Nominal.Nominal, "kN", 1), proof, proof.Source,
                "Do not tighten to this torque: it would stretch the thread past its proof load. Look up torque, thread, class, seat and whether oil is allowed in the vehicle maker's own data. A fixing that was tightened so already is renewed.");
        }
        else if (clamp.High > limit)
        {
            yield return new Finding("fixings.clamp", Category.Refer, null, Amount.Of(clamp.High, "kN", 1), proof, proof.Source,
                (clamp.Assumed.Count > 0 ? $"Do not tighten yet: give the {string.Join(" and the ", clamp.Assumed)} of the fixing, left open here, and ask again. " : "Do not tighten yet. ")
                + "The high end of the clamp passes the proof load, and a fixing there is stretched for good. Hold the torque against the vehicle maker's for this thread and class; threads and seats dry or oiled as the maker says; a calibrated wrench. Whoever answers for the work then decides.");
        }
    }

    /// <summary>A worn seat stops the tightening: no torque makes up for it.</summary>
    private static IEnumerable<Finding> SeatFindings(FixingSet fixings)
    {
        if (fixings.SeatWorn)
        {
            var rule = RulesInForce.Carried.OfTrade("wheel.seat-worn");
            yield return new Finding(rule.Rule, rule.Category, null, Amount.Word("worn"), null, rule.Source,
                $"Stop: do not tighten on a worn seat. {rule.Action} Where the nut's or the bolt's seat is worn, renew the fixings; then look at the stud and the hub face.");
        }
    }
}
