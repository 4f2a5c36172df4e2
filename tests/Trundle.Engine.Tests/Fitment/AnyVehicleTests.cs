using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Fitment;

/// <summary>Vehicles put together at random (seeded): the checks answer for each of them, twice the same, and never lean on what was left out.</summary>
public sealed class AnyVehicleTests
{
    private static readonly string[] Markings =
    [
        "195/65 R15 91H", "195/65 D15 91H", "195/65-15 91H", "P205/55 R16 89V", "LT245/75 R16 120/116S LRE", "215/75 R17.5 126/124M", "T125/80 D15 95M", "H78-15", "HR78-15",
        "31x10.50 R15 LT", "7.00-15", "190/65 HR390 TRX", "235-700 R450 AC", "120/70 ZR17 M/C (58W)", "ST205/75 R15 LRD", "HL245/40 R19 101Y", "315/80 R22.5 156/150L", "165 R13 82T", "205/55 ZR16",
    ];

    private static readonly string[] Classes = ["car", "van", "goods over 3500 kg", "bus", "minibus", "motorcycle", "trailer"];

    [Fact]
    public void Every_vehicle_gets_an_answer_and_twice_the_same()
    {
        var random = new Random(20260314);
        var categories = new HashSet<Category>();
        for (var i = 0; i < 2000; i++)
        {
            var subject = Any(random);
            var fitment = FitmentCheck.Run(subject);
            var condition = ConditionCheck.Run(subject);
            FitmentCheck.Run(subject).Findings.ShouldBe(fitment.Findings, new SameFinding());
            ConditionCheck.Run(subject).Findings.ShouldBe(condition.Findings, new SameFinding());
            categories.UnionWith(fitment.With(condition).Findings.Select(f => f.Category));
            fitment.Findings.Any(f => f.Action.Length == 0 || f.Measured.Text.Length == 0 || f.Source.Text.Length == 0).ShouldBeFalse();
        }

        categories.Count.ShouldBe(5);
    }

    private sealed class SameFinding : IEqualityComparer<Finding>
    {
        public bool Equals(Finding? x, Finding? y) => x!.Key == y!.Key && x.Category == y.Category && x.Measured == y.Measured && x.Limit == y.Limit && x.Action == y.Action;

        public int GetHashCode(Finding obj) => obj.Key.GetHashCode(StringComparison.Ordinal);
    }

    private static FittedVehicle Any(Random random)
    {
        var axles = Enumerable.Range(0, random.Next(0, 5)).Select(_ => new Axle
        {
            Steered = Coin(random),
            Driven = Coin(random),
            Dual = random.Next(4) == 0,
            Placard = Coin(random) ? new Placard(Coin(random) ? Marked(random) : null, Coin(random) ? GaugePressure.FromKilopascals(random.Next(1, 900)) : null, null) : null,
            Fixings = Coin(random) ? new FixingSet { Count = random.Next(3, 11), Seat = Coin(random) ? (SeatShape)random.Next(3) : null } : null,
            Hub = Coin(random) ? new Hub(Coin(random) ? Length.FromMillimetres(random.Next(50, 90)) : null, Coin(random) ? new BoltCircle(random.Next(3, 11), Length.FromMillimetres(112)) : null) : null,
            Load = Coin(random) ? Mass.FromKilograms(random.Next(100, 12000)) : null,
        }).ToList();
        var vehicle = new Vehicle
        {
            Axles = axles,
            Drive = random.Next(4) is var d and < 3 ? (Drive)d : null,
            VehicleClass = Classes[random.Next(Classes.Length)],
            TopSpeed = Coin(random) ? Speed.FromKilometresPerHour(random.Next(20, 350)) : null,
            SparePlacard = Coin(random) ? new Placard(Marked(random), null, null) : null,
        };
        var fitted = new List<Assembly>();
        for (var axle = 1; axle <= Math.Max(axles.Count, 2); axle++)
        {
            foreach (var side in (Side[])[Side.Left, Side.Right])
            {
                foreach (var dual in axle <= axles.Count && axles[axle - 1].Dual ? (DualPlace[])[DualPlace.Inner, DualPlace.Outer] : [DualPlace.Single])
                {
                    if (random.Next(5) > 0)
                    {
                        fitted.Add(AnyAssembly(random, Position.On(axle, side, dual)));
                    }
                }
            }
        }

        if (Coin(random))
        {
            fitted.Add(AnyAssembly(random, Position.Spare));
        }

        return new FittedVehicle(vehicle, fitted, random.Next(4) is var r and < 3 ? (RuleSet)r : null, Coin(random) ? new DateOnly(2026, 3, 14) : null);
    }

    private static Assembly AnyAssembly(Random random, Position position) => new()
    {
        Position = position,
        Tyre = random.Next(8) == 0 ? null : new FittedTyre
        {
            Marking = random.Next(8) == 0 ? null : Marked(random),
            Tin = random.Next(4) switch { 0 => "DOT 1AB CDEFHJ 2218", 1 => "DOT A1 B2 CDEF 238", 2 => "??", _ => null },
            Directional = Coin(random),
            MountedFor = Coin(random) ? (MountedFor)random.Next(2) : null,
            Asymmetric = Coin(random),
            OuterFaceOut = Coin(random) ? Coin(random) : null,
            Marks = random.Next(6) switch { 0 => ["NHS"], 1 => ["M+S"], 2 => ["FRT"], 3 => ["MAX LOAD 500 KG"], _ => [] },
            Condemned = random.Next(20) == 0,
            History = Coin(random) ? RepairHistory.NotKnown : History(random),
        },
        Wheel = random.Next(4) == 0 ? null : new Wheel
        {
            Rim = Coin(random) ? StampReader.Rim(random.Next(3) switch { 0 => "6J x 15", 1 => "6J x 16.5", _ => "160 x 390" }).Value : null,
            Bore = Coin(random) ? Length.FromMillimetres(random.Next(50, 90)) : null,
            BoltCircle = Coin(random) ? new BoltCircle(5, Length.FromMillimetres(112)) : null,
            Seat = Coin(random) ? (SeatShape)random.Next(3) : null,
            LoadRating = Coin(random) ? Mass.FromKilograms(random.Next(100, 4000)) : null,
            MultiPiece = Coin(random) ? Coin(random) : null,
            Damage = [.. Enumerable.Range(0, random.Next(3)).Select(_ => new WheelDamage((WheelDamageKind)random.Next(9), Coin(random) ? Length.FromMillimetres(random.Next(0, 10)) : null))],
        },
        Valve = Coin(random) ? null : new Valve { Kind = Coin(random) ? (ValveKind)random.Next(3) : null, State = (ValveState)random.Next(4), Renewed = Coin(random) ? new DateOnly(2019, 1, 1) : null, Rating = Coin(random) ? GaugePressure.FromKilopascals(random.Next(100, 900)) : null, Cap = Coin(random) },
        Sensor = Coin(random) ? (SensorState)random.Next(3) : null,
        SensorParts = Coin(random) ? new SensorParts((SensorBattery)random.Next(2), Coin(random), Coin(random)) : null,
        Tread = Coin(random) ? new TreadDepths(Depths(random), Depths(random), Depths(random)) : null,
        Pressure = Coin(random) ? new PressureReading(GaugePressure.FromKilopascals(random.Next(0, 900)), null, Coin(random)) : null,
        Damage = [.. Enumerable.Range(0, random.Next(3)).Select(_ => new Damage((DamageKind)random.Next(12), (DamagePlace)random.Next(4), Coin(random) ? Length.FromMillimetres(random.Next(0, 60)) : null)
        {
            Depth = Coin(random) ? Length.FromMillimetres(random.Next(0, 6)) : null,
            CordShows = Coin(random) ? Coin(random) : null,
            Joined = Coin(random) ? Coin(random) : null,
            Lean = Coin(random) ? Angle.FromDegrees(random.Next(0, 60)) : null,
            FromMiddle = Coin(random) ? Length.FromMillimetres(random.Next(0, 200)) : null,
            FromRepair = Coin(random) ? Length.FromMillimetres(random.Next(0, 900)) : null,
            RoundFromRepair = Coin(random) ? Angle.FromDegrees(random.Next(0, 181)) : null,
        })],
    };

    private static RepairHistory History(Random random) => new()
    {
        Repairs = Coin(random) ? [.. Enumerable.Range(0, random.Next(3)).Select(_ => new EarlierRepair((DamagePlace)random.Next(4), null, Coin(random) ? (RepairMethod)random.Next(4) : null))] : null,
        Policy = Coin(random) ? (RepairPolicy)random.Next(2) : null,
        RunFlat = Coin(random),
        SelfSealing = Coin(random),
        RanLow = Coin(random) ? Coin(random) : null,
    };

    private static List<Length> Depths(Random random) => [.. Enumerable.Range(0, random.Next(0, 5)).Select(_ => Length.FromMillimetres(random.Next(0, 90) / 10.0))];

    private static Marking Marked(Random random) => MarkingReader.Read(Markings[random.Next(Markings.Length)]).Value;

    private static bool Coin(Random random) => random.Next(2) == 0;
}
