using Trundle.Engine.Fixings;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Tests.Fitment;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Tests.InUse;

/// <summary>For each rule without a row of its own in the limits: vehicles of which it is said, and vehicles, at and inside its limit where it has one, of which it is not.</summary>
internal static class RuleCases
{
    /// <summary>One rule: where it is said, of what, and of what not.</summary>
    internal sealed record Case(Func<FittedVehicle, FittedVehicle> Said, IReadOnlyList<Func<FittedVehicle, FittedVehicle>> NotSaid, string? At = "1L");

    private const string Truck = "295/80 R22.5 152/148M";
    private const string Spare = "T125/80 D15 95M";
    private const string Dated = "DOT 1AB CDEFHJ 2218";

    private static readonly Func<FittedVehicle, FittedVehicle> Plain = s => s;

    public static IReadOnlyDictionary<string, Case> All { get; } = new Dictionary<string, Case>(StringComparer.Ordinal)
    {
        ["size.placard"] = new(Marked("205/60 R15 91H"), [Plain]),
        ["size.standard"] = new(Placard("205/55 R16 91V", "P205/55 R16 91V"), [Placard("205/55 R16 91V", "205/55 R16 91V")]),
        ["axle.size"] = new(Marked("185/65 R15 91H"), [Plain], "axle 1"),
        ["axle.aspect"] = new(s => Placard("165/80 R13 83T", "165/80 R13 83T")(s).With("1L", a => Bay.On("1L", "165 R13 83T")), [Placard("165/80 R13 83T", "165/80 R13 83T")], "axle 1"),
        ["axle.service"] = new(Marked("195/65 R15 95H"), [Plain], "axle 1"),
        ["axle.season"] = new(Tyre(t => t with { Marks = ["M+S"] }), [Plain], "axle 1"),
        ["load.index"] = new(Marked("195/65 R15 90H"), [Plain, Marked("195/65 R15 92H")]),
        // LI 94 is 670 kg, and a V tyre carries 92.5 % of it at 235 km/h.
        ["load.high-speed"] = new(Fast(1239.6), [Fast(1239.499999), Fast(1239.4)]),
        ["load.range"] = new(Placard("LT245/75 R16 LRE", "LT245/75 R16 LRD"), [Placard("LT245/75 R16 LRE", "LT245/75 R16 LRE")]),
        ["load.extra-load"] = new(Placard("225/45 R17 94W XL", "225/45 R17 91W"), [Placard("225/45 R17 94W XL", "225/45 R17 94W XL")]),
        ["load.extra-load-word"] = new(Placard("225/45 R17 94W XL", "225/45 R17 94W"), [Placard("225/45 R17 94W XL", "225/45 R17 94W XL")]),
        ["load.high-load"] = new(Placard("HL245/40 R19 101Y", "245/40 R19 98Y XL"), [Placard("HL245/40 R19 101Y", "HL245/40 R19 101Y")]),
        ["speed.placard"] = new(Marked("195/65 R15 91T"), [Plain, Marked("195/65 R15 91V")]),
        ["speed.vehicle"] = new(TopSpeed(210.1), [TopSpeed(210), TopSpeed(209.9)]),
        ["speed.winter"] = new(s => Marked("195/65 R15 91T")(s).With("1L", a => a with { Tyre = a.Tyre! with { Marks = ["M+S"] } }), [Tyre(t => t with { Marks = ["M+S"] })]),
        ["spare.excused"] = new(Marked(Spare), [Plain]),
        ["direction.rotation"] = new(Tyre(t => t with { Directional = true, MountedFor = MountedFor.Right }), [Tyre(t => t with { Directional = true, MountedFor = MountedFor.Left })]),
        ["direction.inner-dual"] = new(Duals(MountedFor.Left, 8), [Duals(MountedFor.Right, 8)], "2Li"),
        ["direction.outer-face"] = new(Tyre(t => t with { Asymmetric = true, OuterFaceOut = false }), [Tyre(t => t with { Asymmetric = true, OuterFaceOut = true })]),
        ["rim.diameter"] = new(Rim("6J x 16"), [Plain]),
        ["rim.width"] = new(Rim("7.5J x 15"), [Rim("5.5J x 15"), Rim("7J x 15"), Plain]),
        ["circumference.axle.temporary-spare"] = new(Marked(Spare), [Plain], "axle 1"),
        ["dual.larger-outside"] = new(Duals(null, 8.1), [Duals(null, 8), Duals(null, 7.9)], "2Lo"),
        ["spare.size"] = new(Stowed("T135/80 D15 99M", Bay.Axle()), [Stowed(Spare, Bay.Axle())], "S"),
        ["spare.temporary"] = new(Stowed(Spare, Bay.Axle()), [Stowed(Bay.Size, Bay.Axle())], "S"),
        ["spare.in-use"] = new(Marked(Spare), [Plain]),
        ["spare.wheel"] = new(Stowed(Bay.Size, Bay.Axle() with { Hub = new Hub(null, new BoltCircle(4, Length.FromMillimetres(100))) }), [Stowed(Bay.Size, Bay.Axle())], "S"),
        // LI 95 is 690 kg, two of them 1380 kg.
        ["spare.load"] = new(Stowed(Spare, Bay.Axle(loadKilograms: 1380.1)), [Stowed(Spare, Bay.Axle(loadKilograms: 1380)), Stowed(Spare, Bay.Axle(loadKilograms: 1379.9))], "S"),
        ["hub.bolt-circle"] = new(Wheel(w => w with { BoltCircle = new BoltCircle(5, Length.FromMillimetres(112.36)) }), [Wheel(w => w with { BoltCircle = new BoltCircle(5, Length.FromMillimetres(112.34)) }), Plain]),
        ["hub.bore-small"] = new(Bore(57.04), [Bore(57.05), Plain]),
        ["hub.bore"] = new(Bore(57.31), [Bore(57.3), Plain]),
        ["hub.seat"] = new(Wheel(w => w with { Seat = SeatShape.Ball }), [Plain]),
        ["fixings.count"] = new(Fixings(4), [Fixings(5), Plain], "axle 1"),
        ["hub.ring-on-hub"] = new(Ring(57.31, 63.4), [Ring(57.3, 63.4), Ring(57.1, 63.4), Plain]),
        ["hub.ring-in-wheel"] = new(Ring(57.1, 63.19), [Ring(57.1, 63.2), Ring(57.1, 63.4), Plain]),
        ["wheel.seat-worn"] = new(Wheel(w => w with { SeatWorn = true }), [Wheel(w => w with { SeatWorn = false }), Plain]),
        ["fixings.mixed"] = new(Found(Bolts(4), Bolts(1) with { Seat = SeatShape.Ball }), [Found(Bolts(4), Bolts(1)), Plain]),
        ["fixings.foreign"] = new(Found(Bolts(5) with { Kind = FixingKind.Nut }), [Found(Bolts(5)), Plain]),
        ["fixings.missing"] = new(Found(Bolts(4)), [Found(Bolts(5)), Found(Bolts(3), Bolts(2)), Plain]),
        ["fixings.engagement-maker"] = new(Engaged("7.9 turns", "8 turns"), [Engaged("8 turns", "8 turns"), Engaged("12 mm", "8 turns"), Engaged("7.9 turns", null)], "axle 1"),
        ["fixings.engagement-stripping"] = new(Engaged("9.23 mm", null), [Engaged("9.25 mm", null), Plain], "axle 1"),
        ["fixings.engagement"] = new(Engaged("11.99 mm", null), [Engaged("12 mm", null), Engaged("8 turns", null), Plain], "axle 1"),
        ["wheel.load"] = new(Rated(399.9), [Rated(400), Rated(400.1)]),
        ["wheel.load-placard"] = new(s => NoLoads(Rated(614.9)(s)), [s => NoLoads(Rated(615)(s)), s => NoLoads(Rated(615.1)(s))]),
        ["condemned.tyre"] = new(Tyre(t => t with { Condemned = true }), [Plain]),
        ["condemned.wheel"] = new(Wheel(w => w with { Condemned = true }), [Plain]),
        ["use.restricted"] = new(Tyre(t => t with { Marks = ["NHS"] }), [Plain]),
        ["use.class"] = new(Tyre(t => t with { Marks = ["M/C"] }), [Plain]),
        ["use.class-doubt"] = new(s => Class("car")(Marked("120/70 R17 58W")(s)), [Plain, s => Class("motorcycle")(Marked("120/70 R17 58W")(s))]),
        ["use.class-heavy"] = new(s => Class("bus")(NoPlacards(s)), [Class("bus"), Class("minibus"), NoPlacards, s => Class("bus")(NoPlacards(Marked(Truck)(s)))]),
        ["load.dual-unknown"] = new(DualMarked("215/75 R17.5 126M"), [DualMarked("215/75 R17.5 126/124M"), Plain], "2Li"),
        ["front.remade"] = new(s => Class("bus")(Tyre(t => t with { Marks = ["RETREADED"] })(s)), [s => Class("goods over 3500 kg")(Tyre(t => t with { Marks = ["RETREADED"] })(s)), Class("bus"), s => Class("bus")(s.With("2L", a => a with { Tyre = a.Tyre! with { Marks = ["RETREADED"] } }))]),
        ["regroove.unmarked"] = new(Tyre(t => t with { Marks = ["REGROOVED"] }), [Tyre(t => t with { Marks = ["REGROOVED", "REGROOVABLE"] }), Tyre(t => t with { Marks = ["REGROOVABLE"] }), Plain]),
        ["use.free-rolling"] = new(Tyre(t => t with { Marks = ["FRT"] }), [s => s.With("2L", a => a with { Tyre = a.Tyre! with { Marks = ["FRT"] } })]),
        ["run-flat"] = new(Tyre(t => t with { Marks = ["RUN FLAT"] }), [Plain]),
        ["tread.depth.heavy-band"] = new(s => Class("bus")(Tread(0.9999, 3, 3)(s)), [s => Class("bus")(Tread(1, 3, 3)(s)), s => Class("bus")(Tread(1.0001, 3, 3)(s))]),
        ["tread.beyond-new"] = new(Tread(15, 15, 15.01), [Tread(15, 15, 15), Tread(8, 8, 8)]),
        ["age.unknown-decade"] = new(Tin("DOT A1 B2 CDEF 238"), [Tin(Dated)]),
        ["age.legible"] = new(s => Class("bus")(Tin("DOT 1AB CDEFHJ")(s)), [s => Class("bus")(Tin(Dated)(s)), Tin("DOT 1AB CDEFHJ")]),
        ["age.code"] = new(Tin("DOT 1AB CDEFHJ 5418"), [Tin("DOT 1AB CDEFHJ 5118")]),
        ["damage.cord"] = new(Hurt(DamageKind.Cord, DamagePlace.Sidewall, null), [Plain]),
        ["damage.bulge"] = new(Hurt(DamageKind.Bulge, DamagePlace.Sidewall, null), [Plain]),
        ["damage.cut.side"] = new(Hurt(DamageKind.Cut, DamagePlace.Sidewall, 25), [Hurt(DamageKind.Cut, DamagePlace.Sidewall, 25.01)]),
        ["damage.cut.tread"] = new(Hurt(DamageKind.Cut, DamagePlace.Tread, 25), [Hurt(DamageKind.Cut, DamagePlace.Tread, 25.01)]),
        ["damage.puncture.crown"] = new(Hurt(DamageKind.Puncture, DamagePlace.Tread, 6), [Hurt(DamageKind.Puncture, DamagePlace.Tread, 6.36)]),
        ["damage.puncture.crown-truck"] = new(Hurt(DamageKind.Puncture, DamagePlace.Tread, 9.525, Truck), [Hurt(DamageKind.Puncture, DamagePlace.Tread, 9.53, Truck)]),
        ["damage.puncture.side"] = new(Hurt(DamageKind.Puncture, DamagePlace.Shoulder, 3), [Hurt(DamageKind.Puncture, DamagePlace.Tread, 3)]),
        ["damage.separation"] = new(Hurt(DamageKind.Separation, DamagePlace.Tread, null), [Plain]),
        ["damage.ripple"] = new(Hurt(DamageKind.Ripple, DamagePlace.Sidewall, null), [Plain]),
        ["damage.leak"] = new(s => NoLoads(Class("bus")(Hurt(DamageKind.Leak, DamagePlace.Tread, null)(s))), [Plain]),
        ["damage.run-low-marks"] = new(Hurt(DamageKind.RunLowMarks, DamagePlace.Sidewall, null), [Plain]),
        ["damage.oil"] = new(Hurt(DamageKind.Oil, DamagePlace.Sidewall, null), [Plain]),
        ["damage.chunk"] = new(Hurt(DamageKind.Chunk, DamagePlace.Tread, null), [Plain]),
        ["damage.cut.shallow"] = new(Damaged(Cut(1.5874)), [Damaged(Cut(1.5875))]),
        ["damage.crack.shallow"] = new(Damaged(Crack(1.5874, false)), [Damaged(Crack(1.5875, false)), Damaged(Crack(1, true))]),
        ["damage.puncture.unmeasured"] = new(Hurt(DamageKind.Puncture, DamagePlace.Tread, 0), [Hurt(DamageKind.Puncture, DamagePlace.Tread, 3)]),
        ["damage.puncture.class"] = new(Hurt(DamageKind.Puncture, DamagePlace.Tread, 3, Spare), [Hurt(DamageKind.Puncture, DamagePlace.Tread, 3)]),
        ["damage.puncture.overlap"] = new(Repaired(Bay.Size, 1, p => p with { FromRepair = Length.FromMillimetres(0) }), [Repaired(Bay.Size, 1, p => p with { FromRepair = Length.FromMillimetres(1) })]),
        ["damage.puncture.repairs-table"] = new(Repaired(Bay.Size, 1, p => p), [Repaired("195/65 R15 91V", 1, p => p), Repaired(Bay.Size, 0, p => p)]),
        ["damage.puncture.opposite"] = new(Repaired(Bay.Size, 1, p => p with { RoundFromRepair = Angle.FromDegrees(180) }), [Repaired(Bay.Size, 1, p => p with { RoundFromRepair = Angle.FromDegrees(120) })]),
        ["damage.puncture.ageing"] = new(s => s.With("1L", a => a with { Damage = [Puncture, Crack(1, false)] }), [Damaged(Puncture)]),
        ["damage.puncture.ran-low"] = new(Known(h => h with { RanLow = true }), [Known(h => h with { RanLow = false }), Known(h => h)]),
        ["damage.puncture.run-flat"] = new(Known(h => h with { RunFlat = true }), [Known(h => h with { RunFlat = true, Policy = RepairPolicy.Permitted }), Known(h => h)]),
        ["damage.puncture.self-sealing"] = new(Known(h => h with { SelfSealing = true }), [Known(h => h with { SelfSealing = true, Policy = RepairPolicy.Permitted }), Known(h => h)]),
        ["damage.puncture.maker"] = new(Known(h => h with { Policy = RepairPolicy.NotPermitted }), [Known(h => h with { Policy = RepairPolicy.Permitted }), Known(h => h)]),
        ["repair.improper"] = new(Known(h => h with { Repairs = [new EarlierRepair(DamagePlace.Tread, null, RepairMethod.PlugAlone)] }), [Known(h => h with { Repairs = [new EarlierRepair(DamagePlace.Tread, null, RepairMethod.StemAndPatch)] }), Plain]),
        ["repair.section-front"] = new(Known(h => h with { Repairs = [new EarlierRepair(DamagePlace.Tread, null, RepairMethod.Section)] }), [Known(h => h with { Repairs = [new EarlierRepair(DamagePlace.Tread, null, RepairMethod.StemAndPatch)] }), s => Class("trailer")(Known(h => h with { Repairs = [new EarlierRepair(DamagePlace.Tread, null, RepairMethod.Section)] })(s))]),
        ["pressure.ran-low"] = new(Tyre(t => t with { History = new RepairHistory { RanLow = true } }), [Tyre(t => t with { History = new RepairHistory { RanLow = false } }), Known(h => h with { RanLow = true }), Plain]),
        ["wheel.crack"] = new(Bent(WheelDamageKind.Crack), [Plain]),
        ["wheel.hole"] = new(Bent(WheelDamageKind.ElongatedHole), [Plain]),
        ["wheel.weld"] = new(Bent(WheelDamageKind.Weld), [Plain]),
        ["wheel.lock-ring"] = new(Bent(WheelDamageKind.LockRing), [Plain]),
        ["wheel.bent.heavy"] = new(s => Bent(WheelDamageKind.BentFlange)(Marked(Truck)(s)), [Bent(WheelDamageKind.BentFlange)]),
        ["wheel.bent.small"] = new(Bent(WheelDamageKind.BentFlange, 3.175), [Bent(WheelDamageKind.BentFlange, 3.176)]),
        ["wheel.corrosion"] = new(Bent(WheelDamageKind.Corrosion), [Plain]),
        ["wheel.bore"] = new(Bent(WheelDamageKind.BoreWear), [Plain]),
        ["wheel.other"] = new(Bent(WheelDamageKind.Other), [Plain]),
        ["wheel.pieces-not-known"] = new(Marked("10.00 R20 146/143K"), [s => Wheel(w => w with { MultiPiece = false })(Marked("10.00 R20 146/143K")(s)), s => Wheel(w => w with { MultiPiece = true })(Marked("10.00 R20 146/143K")(s)), Marked(Truck), Plain]),
        ["wheel.multi-piece"] = new(Wheel(w => w with { MultiPiece = true }), [Wheel(w => w with { MultiPiece = false }), Plain]),
        ["valve.state"] = new(Valved(v => v with { State = ValveState.Cracked }), [Valved(v => v with { State = ValveState.Sound }), Plain]),
        ["valve.age"] = new(s => Valved(v => v with { Kind = ValveKind.RubberSnapIn, Renewed = new DateOnly(2018, 6, 2) })(Tin(Dated)(s)), [s => Valved(v => v with { Kind = ValveKind.RubberSnapIn, Renewed = new DateOnly(2018, 6, 3) })(Tin(Dated)(s)), s => Valved(v => v with { Kind = ValveKind.ClampIn, Renewed = new DateOnly(2010, 1, 1) })(Tin(Dated)(s))]),
        ["valve.cap"] = new(Valved(v => v with { Cap = false }), [Valved(v => v with { Cap = true }), Valved(v => v)]),
        ["sensor.not-working"] = new(s => s.With("1L", a => a with { Sensor = SensorState.NotWorking }), [s => s.With("1L", a => a with { Sensor = SensorState.Working }), Plain]),
        ["sensor.battery"] = new(Parts(new SensorParts(SensorBattery.Low, null, null)), [Parts(new SensorParts(SensorBattery.Good, null, null)), Plain]),
        ["sensor.parts"] = new(Parts(new SensorParts(null, true, null)), [Parts(new SensorParts(null, false, false)), Plain]),
        ["damage.crack"] = new(Hurt(DamageKind.Crack, DamagePlace.Sidewall, 1), [Plain]),
        ["damage.bead.small"] = new(Hurt(DamageKind.Bead, DamagePlace.Bead, 1.5875), [Hurt(DamageKind.Bead, DamagePlace.Bead, 1.5876)]),
        ["damage.other"] = new(Hurt(DamageKind.Other, DamagePlace.Tread, null), [Plain]),
        // The placard asks for 230 kPa, and 260 kPa laden.
        ["pressure.low"] = new(Air(222.9), [Air(229), Air(230)]),
        ["pressure.flat"] = new(s => NoLoads(Class("bus")(Air(0)(s))), [s => NoLoads(Class("bus")(Air(1.1)(s)))]),
        // Car tyres are listed up to 350 kPa, temporary spares up to 420.
        ["pressure.placard-doubt"] = new(Asked(350.1), [Asked(350), Asked(349.9), s => Placard(Truck, Truck)(s).With("1L", a => a)]),
        ["axle.wheel-missing"] = new(s => s with { Fitted = [.. s.Fitted.Where(a => a.Position != Bay.At("1R"))] }, [Plain, s => s with { Fitted = [s.Fitted[0]] }], "1R"),
        ["damage.crack.bead"] = new(Damaged(Crack(1, false) with { Place = DamagePlace.Bead }), [Damaged(Crack(1.5875, false) with { Place = DamagePlace.Bead }), Damaged(Crack(1, false))]),
        ["damage.cut.tread.deep"] = new(Grooved(8, 8.01), [Grooved(8, 8), Grooved(8, 7.99)]),
        // Two axles of 2600 kg are over 10 000 lb; 1300 kg on load range E need 506.57 kPa; a gauge is trusted to 1 kPa.
        ["pressure.below-load"] = new(Laden(505.5), [Laden(505.6), Laden(506.6), s => Class("bus")(Air(222.9)(s)), Air(222.9)]),
        ["pressure.high"] = new(Air(260.1), [Air(231), Air(230)]),
        ["pressure.sidewall"] = new(Moulded(300.1), [Moulded(300), Moulded(299.9)]),
        ["pressure.hot"] = new(Air(250, hot: true), [Air(230)]),
        ["pressure.hot-low"] = new(Air(228.9, hot: true), [Air(229, hot: true), Air(230, hot: true)]),
        ["wear.centre"] = new(Tread(5, 3.5, 5), [Tread(5, 4.8, 5)]),
        ["wear.both-shoulders"] = new(Tread(3.5, 5, 3.5), [Tread(4.8, 5, 4.8)]),
        ["wear.one-shoulder"] = new(Tread(5, 5, 3), [Tread(5, 5, 4.8)]),
        ["wear.feather"] = new(Edged(rib: 1.5), [Edged(rib: 0.1)]),
        ["wear.heel-and-toe"] = new(Edged(block: 1.5), [Edged(block: 0.1)]),
        ["wear.cups"] = new(Round((_, i) => i % 2 == 0 ? 5 : 3.5), [Round((_, _) => 5)]),
        ["wear.diagonal"] = new(Round((x, i) => 5 + (2 * Math.Cos(Math.PI * ((i * 60) - (60 * x)) / 60))), [Round((_, _) => 5)]),
        ["wear.flat-spot"] = new(Round((_, i) => i == 2 ? 2.5 : 5), [Round((_, _) => 5)]),
        ["wear.other"] = new(Round((x, i) => x == 0 && i == 3 ? 1 : 5), [Round((_, _) => 5)]),
        ["wear.even"] = new(Tread(5, 5, 4.8), [Tread(5, 5, 3)]),
        ["wear.centre.motorcycle"] = new(Cycle(Tread(5, 3.5, 5)), [Cycle(Tread(5, 4.8, 5))]),
        ["wear.one-shoulder.motorcycle"] = new(Cycle(Tread(5, 5, 3)), [Cycle(Tread(5, 5, 4.8))]),
        ["wear.feather.motorcycle"] = new(Cycle(Edged(rib: 1.5)), [Cycle(Edged(rib: 0.1))]),
        ["wear.heel-and-toe.motorcycle"] = new(Cycle(Edged(block: 1.5)), [Cycle(Edged(block: 0.1))]),
        ["wear.diagonal.motorcycle"] = new(Cycle(Round((x, i) => 5 + (2 * Math.Cos(Math.PI * ((i * 60) - (60 * x)) / 60)))), [Cycle(Round((_, _) => 5))]),
        ["mix.unread"] = new(s => Marked("195/65-15 91H")(s).With("1R", a => Bay.On("1R", "195/65 B15 91H")), [s => Marked("195/65 B15 91H")(s).With("1R", a => Bay.On("1R", "195/65 B15 91H"))], "axle 1"),
    };

    private static Func<FittedVehicle, FittedVehicle> Cycle(Func<FittedVehicle, FittedVehicle> change) => s => change(s) switch { var four => four with { Vehicle = four.Vehicle with { VehicleClass = VehicleClasses.Motorcycle } } };

    private static Func<FittedVehicle, FittedVehicle> Marked(string marking) => s => s.With("1L", a => Bay.On("1L", marking));

    private static Func<FittedVehicle, FittedVehicle> Tyre(Func<FittedTyre, FittedTyre> change) => s => s.With("1L", a => a with { Tyre = change(a.Tyre!) });

    private static Func<FittedVehicle, FittedVehicle> Wheel(Func<Wheel, Wheel> change) => s => s.With("1L", a => a with { Wheel = change(Bay.Wheel) });

    private static Func<FittedVehicle, FittedVehicle> Rim(string stamp) => Wheel(w => w with { Rim = StampReader.Rim(stamp).Value });

    private static Func<FittedVehicle, FittedVehicle> Bore(double millimetres) => Wheel(w => w with { Bore = Length.FromMillimetres(millimetres) });

    private static Func<FittedVehicle, FittedVehicle> Fixings(int count) => s => s with { Vehicle = s.Vehicle with { Axles = [.. s.Vehicle.Axles.Select(a => a with { Fixings = a.Fixings! with { Count = count } })] } };

    /// <summary>A ring between a hub of 57.1 mm and a wheel of 63.4 mm.</summary>
    private static Func<FittedVehicle, FittedVehicle> Ring(double inner, double outer) => Wheel(w => w with
    {
        Bore = Length.FromMillimetres(63.4),
        HubRing = new HubRing(HubRingMaterial.Plastic, Length.FromMillimetres(inner), Length.FromMillimetres(outer)),
    });

    private static FoundFixings Bolts(int count) => new(count, FixingKind.Bolt, SeatShape.Cone, null, false);

    private static Func<FittedVehicle, FittedVehicle> Found(params FoundFixings[] found) => s => s.With("1L", a => a with { Fixings = found });

    private static Func<FittedVehicle, FittedVehicle> Engaged(string found, string? least) => s => s with
    {
        Vehicle = s.Vehicle with
        {
            Axles = [.. s.Vehicle.Axles.Select(a => a with
            {
                Fixings = a.Fixings! with
                {
                    Thread = ThreadDesignation.Read("M12x1.5").Value,
                    Engagement = Engagement.Read(found).Value,
                    LeastEngagement = least is null ? null : Engagement.Read(least).Value,
                },
            })],
        },
    };

    private static Func<FittedVehicle, FittedVehicle> Rated(double kilograms) => Wheel(w => w with { LoadRating = Mass.FromKilograms(kilograms) });

    private static Func<FittedVehicle, FittedVehicle> Class(string word) => s => s with { Vehicle = s.Vehicle with { VehicleClass = word } };

    private static Func<FittedVehicle, FittedVehicle> TopSpeed(double kilometresPerHour) => s => s with { Vehicle = s.Vehicle with { TopSpeed = Speed.FromKilometresPerHour(kilometresPerHour) } };

    private static Func<FittedVehicle, FittedVehicle> Laden(double kilopascals) => s =>
    {
        const string size = "LT245/75 R16 120/116S LRE";
        var axle = Bay.Axle(size, true, true, 2600) with { Placard = new Placard(Bay.Marked(size), GaugePressure.FromKilopascals(450), null) };
        return Class("goods over 3500 kg")(Air(kilopascals)(Bay.Pair(s.Rules, size, size, Bay.Car with { Axles = [axle, axle with { Steered = false }] })));
    };

    private static FittedVehicle NoPlacards(FittedVehicle s) => s with { Vehicle = s.Vehicle with { Axles = [.. s.Vehicle.Axles.Select(a => a with { Placard = null })] } };

    private static Func<FittedVehicle, FittedVehicle> DualMarked(string size) => s => Duals(null, 8)(s) switch { var twins => twins.With("2Li", a => a with { Tyre = new FittedTyre { Marking = Bay.Marked(size) } }) };

    private static FittedVehicle NoLoads(FittedVehicle s) => s with { Vehicle = s.Vehicle with { Axles = [.. s.Vehicle.Axles.Select(a => a with { Load = null })] } };

    private static Func<FittedVehicle, FittedVehicle> Placard(string placard, string fitted) => s => Bay.Pair(s.Rules, fitted, fitted, Bay.Car with { Axles = [Bay.Axle(placard, true, true), Bay.Axle(placard)] }) with { Date = s.Date };

    private static Func<FittedVehicle, FittedVehicle> Fast(double axleKilograms) => s =>
        TopSpeed(235)(Bay.Pair(s.Rules, "195/65 R15 94V", "195/65 R15 94V", Bay.Car with { Axles = [Bay.Axle("195/65 R15 94V", true, true, axleKilograms), Bay.Axle("195/65 R15 94V")] }));

    private static Func<FittedVehicle, FittedVehicle> Stowed(string spare, Axle rear) => s => s with
    {
        Vehicle = Bay.Car with { Axles = [Bay.Axle(steered: true, driven: true), rear], SparePlacard = new Placard(Bay.Marked(Spare), GaugePressure.FromKilopascals(420), null) },
        Fitted = [.. s.Fitted, Bay.On("S", spare)],
    };

    private static Func<FittedVehicle, FittedVehicle> Duals(MountedFor? inner, double innerTread) => s =>
    {
        const string size = "215/75 R17.5 126/124M";
        var lorry = new Vehicle { VehicleClass = "goods over 3500 kg", Drive = Drive.Rear, Axles = [Bay.Axle(size, true), Bay.Axle(size, driven: true) with { Dual = true }] };
        var inside = Bay.On("2Li", size) with { Tread = Flat(innerTread) };
        return s with
        {
            Vehicle = lorry,
            Fitted = [inside with { Tyre = inside.Tyre! with { Directional = inner is not null, MountedFor = inner } }, Bay.On("2Lo", size) with { Tread = Flat(8) }],
        };
    };

    private static Func<FittedVehicle, FittedVehicle> Tin(string tin) => s => Tyre(t => t with { Tin = tin })(s with { Date = new DateOnly(2022, 6, 1) });

    private static Func<FittedVehicle, FittedVehicle> Hurt(DamageKind kind, DamagePlace place, double? millimetres, string marking = Bay.Size) => s =>
        s.With("1L", a => Bay.On("1L", marking) with { Damage = [new Damage(kind, place, millimetres is { } mm ? Length.FromMillimetres(mm) : null)] });

    private static Damage Puncture => new(DamageKind.Puncture, DamagePlace.Tread, Length.FromMillimetres(3));

    private static Damage Cut(double deepMillimetres) => new(DamageKind.Cut, DamagePlace.Sidewall, Length.FromMillimetres(5)) { Depth = Length.FromMillimetres(deepMillimetres) };

    private static Damage Crack(double deepMillimetres, bool joined) => new(DamageKind.Crack, DamagePlace.Sidewall, null) { Depth = Length.FromMillimetres(deepMillimetres), Joined = joined };

    private static Func<FittedVehicle, FittedVehicle> Damaged(Damage damage) => s => s.With("1L", a => a with { Damage = [damage] });

    /// <summary>A puncture in a tyre of which something more is known.</summary>
    private static Func<FittedVehicle, FittedVehicle> Known(Func<RepairHistory, RepairHistory> change) => s => Tyre(t => t with { History = change(t.History) })(Damaged(Puncture)(s));

    private static Func<FittedVehicle, FittedVehicle> Repaired(string marking, int repairs, Func<Damage, Damage> change) => s => s.With("1L", _ =>
    {
        var on = Bay.On("1L", marking) with { Damage = [change(Puncture)] };
        return on with { Tyre = on.Tyre! with { History = new RepairHistory { Repairs = [.. Enumerable.Repeat(new EarlierRepair(DamagePlace.Tread, null, null), repairs)] } } };
    });

    private static Func<FittedVehicle, FittedVehicle> Bent(WheelDamageKind kind, double? millimetres = null) =>
        Wheel(w => w with { Damage = [new WheelDamage(kind, millimetres is { } mm ? Length.FromMillimetres(mm) : null)] });

    private static Func<FittedVehicle, FittedVehicle> Valved(Func<Valve, Valve> change) => s => s.With("1L", a => a with { Valve = change(new Valve()) });

    private static Func<FittedVehicle, FittedVehicle> Parts(SensorParts parts) => s => s.With("1L", a => a with { SensorParts = parts });

    private static PressureReading Reading(double kilopascals, bool hot) => new(GaugePressure.FromKilopascals(kilopascals), null, hot);

    private static Func<FittedVehicle, FittedVehicle> Air(double kilopascals, bool hot = false) => s => s.With("1L", a => a with { Pressure = Reading(kilopascals, hot) });

    private static Func<FittedVehicle, FittedVehicle> Asked(double kilopascals) => s => s with
    {
        Vehicle = s.Vehicle with { Axles = [.. s.Vehicle.Axles.Select(a => a with { Placard = a.Placard! with { Laden = GaugePressure.FromKilopascals(kilopascals) } })] },
    };

    /// <summary>A short cut in the tread of some depth, in which no cord was seen, beside grooves of some depth.</summary>
    private static Func<FittedVehicle, FittedVehicle> Grooved(double millimetres, double deep) => s => s.With("1L", a => a with
    {
        Tread = Flat(millimetres),
        Damage = [new Damage(DamageKind.Cut, DamagePlace.Tread, Length.FromMillimetres(10)) { Depth = Length.FromMillimetres(deep), CordShows = false }],
    });

    private static Func<FittedVehicle, FittedVehicle> Moulded(double kilopascals) => s => Tyre(t => t with { MaximumPressure = GaugePressure.FromKilopascals(300) })(Air(kilopascals)(s));

    private static TreadDepths Flat(double millimetres) => new([Length.FromMillimetres(millimetres)], [Length.FromMillimetres(millimetres)], [Length.FromMillimetres(millimetres)]);

    private static Func<FittedVehicle, FittedVehicle> Tread(double inner, double centre, double outer) => s => s.With("1L", a => a with
    {
        Tread = new TreadDepths([Length.FromMillimetres(inner)], [Length.FromMillimetres(centre)], [Length.FromMillimetres(outer)]),
    });

    /// <summary>Six places around, by a depth for each place across (−1, 0, 1) and around.</summary>
    private static Func<FittedVehicle, FittedVehicle> Round(Func<int, int, double> depth) => s => s.With("1L", a => a with { Tread = new TreadDepths(Row(depth, -1), Row(depth, 0), Row(depth, 1)) });

    private static Length[] Row(Func<int, int, double> depth, int across) => [.. Enumerable.Range(0, 6).Select(i => Length.FromMillimetres(depth(across, i)))];

    private static Func<FittedVehicle, FittedVehicle> Edged(double rib = 0, double block = 0) => s => Round((_, _) => 5)(s).With("1L", a => a with
    {
        Tread = a.Tread! with
        {
            Ribs = [.. Enum.GetValues<TreadPlace>().Select(p => new RibEdges(p, Length.FromMillimetres(5 + rib), Length.FromMillimetres(5)))],
            Blocks = [.. Enum.GetValues<TreadPlace>().Select(p => new BlockEdges(p, Length.FromMillimetres(5 + block), Length.FromMillimetres(5)))],
        },
    });
}
