using Trundle.Engine.Balance;
using Trundle.Engine.Reference;
using Trundle.Engine.Uniformity;
using Trundle.Measures;

namespace Trundle.Engine.Practice.Bench;

/// <summary>A weight on the practice wheel.</summary>
/// <param name="Fitted">What was meant: side, kind, mass, place.</param>
/// <param name="Landed">Where the hand put it.</param>
/// <param name="AfterSpin">After which spin, from 1.</param>
public sealed record BenchWeight(FittedWeight Fitted, WheelAngle Landed, int AfterSpin);

/// <summary>
/// The practice bench as it stands: a value, and each act gives the next one. Nothing here tells the trainee what is hidden but the spin's display, the gauges and
/// the dial.
/// </summary>
public sealed record PracticeBench
{
    /// <summary>A wheel that comes to the bench. Where only the static part is practised it is clamped and set already.</summary>
    public static PracticeBench For(PracticeWheel wheel)
    {
        ArgumentNullException.ThrowIfNull(wheel);
        var bench = new PracticeBench { Wheel = wheel, Entered = wheel.LeftAt, InnerKind = wheel.InnerKind, OuterKind = wheel.OuterKind, Gains = wheel.Gains };
        return wheel.StaticOnly ? bench.Clamp(new Clamping(CentringCones.Set.First(c => c.Suits(wheel.Bore)), true, true)) with { Acts = [] } : bench;
    }

    /// <summary>The wheel.</summary>
    public required PracticeWheel Wheel { get; init; }

    /// <summary>The settings as entered.</summary>
    public required BalancerSettings Entered { get; init; }

    /// <summary>The kind of weight entered for the inner side.</summary>
    public required WeightKind InnerKind { get; init; }

    /// <summary>The kind of weight entered for the outer side.</summary>
    public required WeightKind OuterKind { get; init; }

    /// <summary>What each transducer shows of what is there.</summary>
    public required (double First, double Second) Gains { get; init; }

    /// <summary>How it is clamped; null while it is not.</summary>
    public Clamping? Clamped { get; init; }

    /// <summary>How often it was clamped.</summary>
    public int Clampings { get; init; }

    /// <summary>Where it sits off the axis.</summary>
    public (Length Off, WheelAngle Towards) Seat { get; init; }

    /// <summary>How far the tyre was turned on the wheel, clockwise as seen from outside.</summary>
    public Angle TyreTurn { get; init; }

    /// <summary>What is fitted.</summary>
    public IReadOnlyList<BenchWeight> Weights { get; init; } = [];

    /// <summary>How many weights were ever fitted: each has its own error of the hand.</summary>
    public int EverFitted { get; init; }

    /// <summary>Every spin.</summary>
    public IReadOnlyList<SpinShown> Spins { get; init; } = [];

    /// <summary>After which spins the weights that are on were fitted: a side that was begun again counts once.</summary>
    public IReadOnlyList<int> FittedAfter => [.. Weights.Select(w => w.AfterSpin).Distinct()];

    /// <summary>Something was changed since the last spin.</summary>
    public bool ChangedSinceSpin { get; init; } = true;

    /// <summary>The machine was calibrated anew.</summary>
    public bool CalibratedAnew { get; init; }

    /// <summary>What the trainee named as wrong.</summary>
    public BenchFault Named { get; init; }

    /// <summary>What ended the attempt, or null.</summary>
    public SafetyStop? Stop { get; init; }

    /// <summary>Everything that was done, in order, as <see cref="BenchActs"/> writes it: done again it comes to this same bench.</summary>
    public IReadOnlyList<string> Acts { get; init; } = [];

    /// <summary>Puts the wheel on the shaft, or on it again.</summary>
    public PracticeBench Clamp(Clamping clamping) => this with
    {
        Clamped = clamping,
        Clampings = Clampings + 1,
        Seat = CentringCones.SeatOf(clamping, Wheel.Bore, Wheel.Seed, Clampings),
        ChangedSinceSpin = true,
        Acts = [.. Acts, BenchActs.Clamp(clamping)],
    };

    /// <summary>Enters settings and kinds of weight.</summary>
    public PracticeBench Enter(BalancerSettings settings, WeightKind inner, WeightKind outer) => this with { Entered = settings, InnerKind = inner, OuterKind = outer, ChangedSinceSpin = true, Acts = [.. Acts, BenchActs.Enter(settings, inner, outer)] };

    /// <summary>The planes by what is entered; null where they do not lie apart.</summary>
    public PlanePair? EnteredPlanes
    {
        get
        {
            var (inner, outer) = (Wheel.Profile.PlaceOf(Entered, PlaneSide.Inner, InnerKind), Wheel.Profile.PlaceOf(Entered, PlaneSide.Outer, OuterKind));
            return inner is not null && outer is not null && PlanePair.LieApart(inner, outer) ? new PlanePair(inner, outer) : null;
        }
    }

    /// <summary>Spins the wheel.</summary>
    /// <param name="guardDown">The guard is down.</param>
    /// <param name="eyesProtected">Eye protection is on.</param>
    /// <returns>The bench with one more spin, or with its safety stop; a problem where it cannot spin.</returns>
    public Reading<PracticeBench> Spin(bool guardDown = true, bool eyesProtected = true)
    {
        if (Clamped is null)
        {
            return Reading<PracticeBench>.Failed("not-clamped", "The wheel is not clamped: choose a cone and run the nut up.");
        }

        IReadOnlyList<string> acts = [.. Acts, BenchActs.Spin(guardDown, eyesProtected)];
        if (!guardDown || !eyesProtected)
        {
            return Reading<PracticeBench>.Of(this with
            {
                Acts = acts,
                Stop = guardDown
                    ? new SafetyStop("eyes", "The wheel was spun without eye protection. A stone or a weight that lets go flies at the speed of the tread: protect the eyes before every spin.")
                    : new SafetyStop("guard", "The wheel was spun with the guard up. A weight that lets go leaves along the rim towards whoever stands there: guard down before every spin."),
            });
        }

        return EnteredPlanes is { } planes
            ? Reading<PracticeBench>.Of(this with { Spins = [.. Spins, SimulatedBalancer.Spin(OnTheShaft(), planes, Gains, Wheel.Profile)], ChangedSinceSpin = false, Acts = acts })
            : Reading<PracticeBench>.Failed("planes-together", "With these settings both planes lie at one place, and two planes at one place cannot carry a couple: measure the rim width again.");
    }

    /// <summary>Fits a weight by hand.</summary>
    /// <param name="side">Which side.</param>
    /// <param name="kind">Clip or adhesive.</param>
    /// <param name="mass">Its mass.</param>
    /// <param name="place">Where the hand means it to go.</param>
    public PracticeBench Fit(PlaneSide side, WeightKind kind, Mass mass, WheelAngle place)
    {
        var most = (int)Math.Round(10 * Figures.Of("practice.hand-angle").Value);
        var hand = Angle.FromDegrees(SeedStream.Of(Wheel.Seed, "hand", EverFitted).Between(-most, most) / 10.0);
        return this with
        {
            Weights = [.. Weights, new BenchWeight(new FittedWeight(side, kind, mass, place, [mass], null), place + hand, Spins.Count)],
            EverFitted = EverFitted + 1,
            ChangedSinceSpin = true,
            Acts = [.. Acts, BenchActs.Fit(side, kind, mass, place)],
        };
    }

    /// <summary>Takes a weight off.</summary>
    public PracticeBench TakeOff(int index) => this with { Weights = [.. Weights.Where((_, i) => i != index)], ChangedSinceSpin = true, Acts = [.. Acts, BenchActs.TakeOff(index)] };

    /// <summary>Deflates, breaks the beads, turns the tyre on the wheel and seats it again: all weights are off, and the wheel has to be clamped anew.</summary>
    /// <param name="turn">How far further, clockwise as seen from outside.</param>
    public PracticeBench TurnTyre(Angle turn) => this with
    {
        TyreTurn = Angle.FromDegrees((((TyreTurn + turn).Degrees % 360) + 360) % 360),
        Weights = [],
        Clamped = null,
        ChangedSinceSpin = true,
        Acts = [.. Acts, BenchActs.Turn(turn)],
    };

    /// <summary>The machine's own calibration is run anew.</summary>
    public PracticeBench Calibrate() => this with { Gains = (1, 1), CalibratedAnew = true, ChangedSinceSpin = true, Acts = [.. Acts, BenchActs.Calibrate] };

    /// <summary>Says what is wrong beside the unbalance.</summary>
    public PracticeBench Name(BenchFault fault) => this with { Named = fault, Acts = [.. Acts, BenchActs.Name(fault)] };

    /// <summary>What a dial on the middle of the tread reads around.</summary>
    public IReadOnlyList<DialReading> Dial(int places = 12)
    {
        var runout = Runout;
        return [.. Enumerable.Range(0, places).Select(i => WheelAngle.FromDegrees(360.0 * i / places))
            .Select(a => new DialReading(a, Length.FromMillimetres(Math.Round(100 * runout.Amount.Millimetres * Math.Cos((a - runout.HighPoint).Radians), MidpointRounding.AwayFromZero) / 100)))];
    }

    /// <summary>The assembly's radial runout with the tyre as it stands.</summary>
    internal HarmonicVector<Length> Runout => Wheel.TyreRunout.Turned(TyreTurn) + Wheel.WheelRunout;

    /// <summary>Everything that the machine feels: the assembly, the weights where they landed, and what it sits off the axis.</summary>
    internal IEnumerable<UnbalanceAlong> OnTheShaft() => [.. OnTheWheel(), new UnbalanceAlong(Eccentric, MassCentre)];

    /// <summary>The same without the seat on this shaft: what the wheel takes with it to the vehicle.</summary>
    internal IEnumerable<UnbalanceAlong> OnTheWheel()
    {
        var (planes, heavy) = (Wheel.Planes, Wheel.Heavy(TyreTurn));
        yield return new UnbalanceAlong(heavy.Inner, planes.Inner.Axial);
        yield return new UnbalanceAlong(heavy.Outer, planes.Outer.Axial);
        foreach (var weight in Weights)
        {
            var place = Wheel.Profile.PlaceOf(Wheel.Gauged, weight.Fitted.Plane, weight.Fitted.Kind)!;
            yield return new UnbalanceAlong(UnbalanceVector.OfMass(weight.Fitted.ActsAs(place.Radius), place.Radius, weight.Landed), place.Axial);
        }
    }

    /// <summary>The unbalance of sitting off the axis: mass times eccentricity.</summary>
    internal UnbalanceVector Eccentric => UnbalanceVector.OfMass(Wheel.Mass, Seat.Off, Seat.Towards);

    /// <summary>Half-way between the flanges.</summary>
    internal Length MassCentre => Wheel.Profile.DistanceZero + Wheel.Gauged.RimDistance + (Wheel.Gauged.RimWidth / 2);
}
