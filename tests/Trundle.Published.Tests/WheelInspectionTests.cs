using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Published.Tests;

/// <summary>49 CFR 570.10(b), (c) and 570.63(c) (read): no cracks, elongated holes, welding; a rim runs out by 1/8 in at most. 29 CFR 1910.177 (read): no cracked, bent or broken part of a large wheel is used or repaired.</summary>
public sealed class WheelInspectionTests
{
    [Theory]
    [InlineData(WheelDamageKind.Crack, null, "wheel.crack", Verdict.Renew)]
    [InlineData(WheelDamageKind.ElongatedHole, null, "wheel.hole", Verdict.Renew)]
    [InlineData(WheelDamageKind.Weld, null, "wheel.weld", Verdict.Renew)]
    [InlineData(WheelDamageKind.BentFlange, 0.125, "wheel.bent.small", Verdict.Refer)]
    [InlineData(WheelDamageKind.BentFlange, 0.126, "wheel.bent", Verdict.Renew)]
    [InlineData(WheelDamageKind.LockRing, null, "wheel.lock-ring", Verdict.Renew)]
    public void A_wheel_in_use(WheelDamageKind kind, double? inches, string rule, Verdict verdict)
    {
        var subject = Wheel(kind, inches);
        var found = ConditionCheck.Run(subject);
        var finding = found.Findings.Single(f => f.Rule == rule);
        // Read, but in a copy whose edition nobody knows: told as second-hand. What only the trade says was read nowhere.
        finding.Source.Status.ShouldBe(rule == "wheel.bent.small" ? SourceStatus.FromMemory : SourceStatus.SecondHand);
        InspectionVerdicts.Of(subject, found).Single(v => v.Part == InspectedPart.Wheel).Verdict.ShouldBe(verdict);
    }

    [Theory]
    [InlineData(0.01)]
    [InlineData(0.2)]
    public void A_bent_part_of_a_multi_piece_wheel_is_renewed_however_little_it_is_bent(double inches)
    {
        var subject = Wheel(WheelDamageKind.BentFlange, inches, multiPiece: true);
        var found = ConditionCheck.Run(subject);
        found.Findings.ShouldContain(f => f.Rule == "wheel.bent.heavy");
        found.Findings.Single(f => f.Rule == "wheel.multi-piece").Cautions.ShouldContain(c => c.Contains("restraining device", StringComparison.Ordinal));
        InspectionVerdicts.Of(subject, found).Single(v => v.Part == InspectedPart.Wheel).Verdict.ShouldBe(Verdict.Renew);
    }

    private static FittedVehicle Wheel(WheelDamageKind kind, double? inches, bool? multiPiece = null) => new(
        new Vehicle { Axles = [new Axle()] },
        [new Assembly { Position = PuncturedTyre.At, Wheel = new Wheel { MultiPiece = multiPiece, Damage = [new WheelDamage(kind, inches is { } i ? Length.FromInches(i) : null)] } }],
        RuleSet.UnitedStates, null);
}
