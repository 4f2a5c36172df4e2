using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Replacement;

/// <summary>The vehicle as it would be with other tyres on, and how many of them there must be and where they go.</summary>
public static class ReplacementPlaces
{
    private static readonly Source Industry = new("advice of the tyre industry: the deeper tread goes to the rear", SourceStatus.SecondHand);

    /// <summary>Every place on the axles that are asked for.</summary>
    /// <param name="subject">The vehicle.</param>
    /// <param name="axles">The axles, from 1.</param>
    /// <source>calculated</source>
    public static IReadOnlyList<Position> On(FittedVehicle subject, IReadOnlyList<int> axles)
    {
        ArgumentNullException.ThrowIfNull(subject);
        ArgumentNullException.ThrowIfNull(axles);
        return [.. axles.SelectMany(axle => subject.OnAxle(axle) is { Count: > 0 } fitted ? fitted.Select(a => a.Position) : Empty(subject.Vehicle, axle))];
    }

    /// <summary>The vehicle with a candidate at some places; what was measured of the old tyres there is gone.</summary>
    /// <param name="subject">The vehicle before.</param>
    /// <param name="places">The places that get the candidate.</param>
    /// <param name="candidate">The candidate.</param>
    /// <param name="newTread">Its tread depth, or null.</param>
    /// <source>calculated</source>
    public static FittedVehicle With(FittedVehicle subject, IReadOnlyCollection<Position> places, ReplacementCandidate candidate, Measures.Length? newTread)
    {
        ArgumentNullException.ThrowIfNull(subject);
        ArgumentNullException.ThrowIfNull(places);
        ArgumentNullException.ThrowIfNull(candidate);
        return subject with
        {
            Fitted =
            [
                .. subject.Fitted.Where(a => !places.Contains(a.Position)),
                .. places.Select(p => new Assembly
                {
                    Position = p,
                    Tyre = new FittedTyre { Marking = candidate.Marking, Marks = candidate.Marks },
                    Wheel = WheelAt(subject.At(p)?.Wheel, candidate),
                    Tread = newTread is { } depth ? new TreadDepths([], [depth], []) : null,
                    Sensor = subject.At(p)?.Sensor,
                }),
            ],
        };
    }

    /// <summary>How many tyres are changed at once at least, and on which axle a new pair goes.</summary>
    /// <param name="subject">The vehicle with what is on it now, tread depths where they were measured.</param>
    /// <param name="newTread">Tread depth of the new tyres, or null.</param>
    /// <source>rolling alike: the rules of <see cref="FitmentCheck"/>; the deeper tread to the rear: advice of the tyre industry (second-hand)</source>
    public static ReplacementScope Scope(FittedVehicle subject, Measures.Length? newTread)
    {
        ArgumentNullException.ThrowIfNull(subject);
        var vehicle = subject.Vehicle;
        var (pairAxle, pairWhy, pairSource) = NewPair(vehicle);
        if (vehicle.SingleTrack)
        {
            return new ReplacementScope("one", "Front and rear are each their own; the maker's pairing of front and rear tyres comes first.", Source.CommonPractice, null, "A motorcycle's tyres are made for front or rear.", Source.CommonPractice, []);
        }

        if (!Drivetrain.AllWheelsDriven(vehicle))
        {
            var duals = vehicle.Axles.Any(a => a.Dual);
            return new ReplacementScope("pair", duals ? "Both tyres of an axle are changed together, and both of a dual pair, so that they roll and brake alike." : "Both tyres of an axle are changed together, so that they roll and brake alike.", Source.CommonPractice, pairAxle, pairWhy, pairSource, []);
        }

        // The vehicle's own fitment rule judges a new pair beside what is on: the tread is all that differs.
        var axle = pairAxle ?? vehicle.Axles.Count;
        if (newTread is null || subject.Fitted.Where(a => !a.Position.IsSpare && a.Position.Axle != axle).Any(a => Tread.Mean(a) is null) || vehicle.Axles[axle - 1].Placard?.Size is not { } size)
        {
            return new ReplacementScope("all", "All wheels are driven and roll alike or their drive suffers; whether a pair is enough, the tread depths of the others and of the new tyres tell.", Source.CommonPractice, pairAxle, pairWhy, pairSource,
                [new Need(null, "tread depths of the tyres that stay and of the new ones (replace.newTread), and the vehicle maker's own limit", "whether a new pair rolls like the tyres that stay")]);
        }

        var with = With(subject, On(subject, [axle]), new ReplacementCandidate(size, [], null, false), newTread);
        var rolling = FitmentCheck.Run(with).Findings.Where(f => f.Rule.StartsWith("circumference.", StringComparison.Ordinal)).OrderByDescending(f => f.Category).FirstOrDefault();
        return rolling is { Category: > Category.None }
            ? new ReplacementScope("all", $"All wheels are driven, and a new pair beside the tyres that stay differs by {rolling.Measured.Text}: change all of them.", rolling.Source, pairAxle, pairWhy, pairSource, [])
            : new ReplacementScope("pair", "All wheels are driven; a new pair rolls near enough to the tyres that stay, unless the vehicle's maker asks for closer.", rolling?.Source ?? Source.CommonPractice, pairAxle, pairWhy, pairSource, []);
    }

    private static (int? Axle, string Why, Source Source) NewPair(Vehicle vehicle)
    {
        var sizes = vehicle.Axles.Select(a => a.Placard?.Size?.Size).ToList();
        if (vehicle.Axles.Count != 2 || vehicle.Axles.Any(a => a.Dual) || sizes.Any(s => s is null))
        {
            return (null, "Each axle keeps its own tyres; ask the vehicle's maker where a new pair goes.", Source.CommonPractice);
        }

        return Fitment.SizeMatch.Relation(sizes[0]!, sizes[1]!) == SizeRelation.Same
            ? (2, "The new pair goes to the rear and the better worn pair to the front, whichever axle is driven: a rear axle that loses its grip in the wet first makes the vehicle spin.", Industry)
            : (null, "Front and rear have sizes of their own: the new pair goes where its size belongs. With less tread behind than in front, drive with care in the wet and change the rear soon.", Source.CommonPractice);
    }

    /// <summary>The wheel stays where its rim has the tyre's diameter; else only what the candidate says of its rim is known.</summary>
    private static Wheel? WheelAt(Wheel? fitted, ReplacementCandidate candidate) =>
        candidate.Rim is { } rim ? (fitted?.Rim == rim ? fitted : new Wheel { Rim = rim })
        : fitted?.Rim is { } own && own.DiameterInches == candidate.Marking.Size.RimDiameterInches && own.DiameterMillimetres == candidate.Marking.Size.RimDiameterMillimetres ? fitted
        : null;

    private static IEnumerable<Position> Empty(Vehicle vehicle, int axle) => vehicle.SingleTrack
        ? [Position.On(axle, Side.Left)]
        : new[] { Side.Left, Side.Right }.SelectMany(side => vehicle.Axles[axle - 1].Dual
            ? new[] { Position.On(axle, side, DualPlace.Inner), Position.On(axle, side, DualPlace.Outer) }
            : [Position.On(axle, side)]);
}

/// <summary>How many tyres at least, and where a new pair goes.</summary>
/// <param name="HowMany"><c>one</c>, <c>pair</c> or <c>all</c>.</param>
/// <param name="Why">Why so many.</param>
/// <param name="Source">Where that comes from.</param>
/// <param name="NewPairAxle">The axle that gets the new pair, or null where that is not free to choose.</param>
/// <param name="NewPairWhy">Why there.</param>
/// <param name="NewPairSource">Where that comes from.</param>
/// <param name="Needs">What would tell more.</param>
public sealed record ReplacementScope(string HowMany, string Why, Source Source, int? NewPairAxle, string NewPairWhy, Source NewPairSource, IReadOnlyList<Need> Needs);
