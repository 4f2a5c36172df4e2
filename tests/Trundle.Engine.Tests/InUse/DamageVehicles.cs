using Trundle.Engine.InUse;
using Trundle.Engine.Tests.Fitment;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Tests.InUse;

/// <summary>A vehicle with one damage, repair, pressure, flange or valve of one size, for any limit on these: made of the limit's own data.</summary>
internal static class DamageVehicles
{
    private const string Truck = "295/80 R22.5 152/148M";

    public static LimitVehicle Make(InUseLimit limit, double value)
    {
        var on = new Maker(limit);
        return limit.Quantity switch
        {
            JudgedQuantity.CutLength => on.Hurt(value, Cut(Millimetres(value))),
            // A tenth of 315 mm is the greater of the two limits of a cut.
            JudgedQuantity.CutShare => on.Hurt(value, Cut(Length.FromMillimetres(315 * value / 100)), "315/35 R20 110Y"),
            JudgedQuantity.CutDepth => on.Hurt(value, Cut(null) with { Depth = Millimetres(value) }),
            JudgedQuantity.CrackDepth => on.Hurt(value, new Damage(DamageKind.Crack, DamagePlace.Sidewall, null) { Depth = Millimetres(value), Joined = false }),
            JudgedQuantity.BeadTear => on.Hurt(value, new Damage(DamageKind.Bead, DamagePlace.Bead, Millimetres(value))),
            JudgedQuantity.InjurySize => on.Hurt(value, Puncture(Millimetres(value))),
            JudgedQuantity.InjuryReach => on.Hurt(value, Puncture() with { FromMiddle = Length.FromMillimetres(on.Width * value / 200) }),
            JudgedQuantity.InjuryLean => on.Hurt(value, Puncture() with { Lean = Angle.FromDegrees(value) }),
            JudgedQuantity.TreadAtRepair => on.With(on.Hurt(value, Puncture()), a => a with { Tread = new TreadDepths([], [Length.FromMillimetres(value)], []) }),
            JudgedQuantity.AgeAtRepair => Aged(limit, value),
            JudgedQuantity.EarlierRepairs => on.Repaired((int)Math.Round(value, MidpointRounding.AwayFromZero), Puncture() with { FromRepair = Length.FromMillimetres(900) }),
            JudgedQuantity.RepairDistance => on.Repaired(1, Puncture() with { FromRepair = Millimetres(value) }) with { Value = value },
            JudgedQuantity.RepairTurn => on.Repaired(1, Puncture() with { RoundFromRepair = Angle.FromDegrees(value) }) with { Value = value },
            JudgedQuantity.PressureShare => on.With(on.Hurt(value), a => a with { Pressure = new PressureReading(GaugePressure.FromKilopascals(230 * value / 100), null, false) }),
            JudgedQuantity.ColdPressure => on.With(on.Hurt(value), a => a with { Pressure = new PressureReading(GaugePressure.FromKilopascals(value), null, false) }),
            JudgedQuantity.FlangeBend => on.With(on.Hurt(value), a => a with { Wheel = Bay.Wheel with { Damage = [new WheelDamage(WheelDamageKind.BentFlange, Millimetres(value))] } }),
            JudgedQuantity.ValvePressure => on.Asked(value),
            JudgedQuantity.RegroovedCapacity => on.With(on.Hurt(value, null, Truck), a => a with { Tyre = a.Tyre! with { Marks = ["REGROOVED", "REGROOVABLE", FormattableString.Invariant($"MAX LOAD {value:0} KG")] } }),
            JudgedQuantity.TreadDepth or JudgedQuantity.WinterMark or JudgedQuantity.TreadSpread or JudgedQuantity.CircumferenceSpread
                or JudgedQuantity.DualDifference or JudgedQuantity.TyreAge or JudgedQuantity.LoadShare => throw new InvalidOperationException("Made elsewhere."),
        };
    }

    private static LimitVehicle Aged(InUseLimit limit, double years)
    {
        var aged = LimitVehicles.Age(limit, years);
        return aged with { Subject = aged.Subject.With("1L", a => a with { Damage = [Puncture()] }) };
    }

    private static Length? Millimetres(double value) => Length.FromMillimetres(value);

    private static Damage Cut(Length? size) => new(DamageKind.Cut, DamagePlace.Sidewall, size);

    private static Damage Puncture(Length? size = null) => new(DamageKind.Puncture, DamagePlace.Tread, size ?? Length.FromMillimetres(3));

    private sealed class Maker(InUseLimit limit)
    {
        /// <summary>The marked width of the tyre that the limit's place asks for.</summary>
        public double Width => limit.Scope.Place switch
        {
            RulePlace.LighterTyreNarrow => 155,
            RulePlace.LighterTyreWide => 205,
            _ => 195,
        };

        private string Marking => limit.Scope.Place switch
        {
            RulePlace.TruckTyre => Truck,
            RulePlace.TemporarySpareTyre => "T125/80 D15 95M",
            RulePlace.LighterTyreNarrow => "155/80 R13 79T",
            RulePlace.LighterTyreWide or RulePlace.SpeedSymbolVOrAbove => "205/55 R16 91V",
            _ => Bay.Size,
        };

        public LimitVehicle Hurt(double value, Damage? damage = null, string? marking = null) =>
            new(Bay.Four().With("1L", _ => Bay.On("1L", marking ?? Marking) with { Damage = damage is null ? [] : [damage] }), "1L", value);

        public LimitVehicle With(LimitVehicle made, Func<Assembly, Assembly> change) => made with { Subject = made.Subject.With("1L", change) };

        public LimitVehicle Repaired(int repairs, Damage puncture) => With(Hurt(Math.Max(repairs, 0), puncture), a => a with
        {
            Tyre = a.Tyre! with { History = new RepairHistory { Repairs = [.. Enumerable.Repeat(new EarlierRepair(DamagePlace.Tread, null, RepairMethod.StemAndPatch), Math.Max(repairs, 0))] } },
        });

        public LimitVehicle Asked(double kilopascals)
        {
            var made = With(Hurt(kilopascals), a => a with { Valve = new Valve { Kind = limit.Scope.Place == RulePlace.HighPressureValve ? ValveKind.HighPressureSnapIn : ValveKind.RubberSnapIn } });
            var placard = new Placard(Bay.Marked(Bay.Size), GaugePressure.FromKilopascals(230), GaugePressure.FromKilopascals(kilopascals));
            return made with { Subject = made.Subject with { Vehicle = made.Subject.Vehicle with { Axles = [.. made.Subject.Vehicle.Axles.Select(a => a with { Placard = placard })] } } };
        }
    }
}
