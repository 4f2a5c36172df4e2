using Trundle.Engine.Fitment;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.InUse;

/// <summary>Where on a vehicle a limit holds.</summary>
public enum RulePlace
{
    /// <summary>Everywhere.</summary>
    Anywhere,

    /// <summary>The first axle of a vehicle that is no trailer.</summary>
    FrontAxleButOfATrailer,

    /// <summary>Every axle but the first, and every axle of a trailer.</summary>
    OtherAxlesAndTrailers,

    /// <summary>The first axle where it is steered.</summary>
    SteeredFrontAxle,

    /// <summary>Any steered axle.</summary>
    SteeredAxle,

    /// <summary>Wheels that are not one of a dual pair.</summary>
    SingleWheels,

    /// <summary>A vehicle with all wheels driven.</summary>
    AllWheelsDriven,

    /// <summary>A driven axle of a vehicle with another that is not.</summary>
    OneDrivenAxle,

    /// <summary>Tyres of an outside diameter under 30 in.</summary>
    DiameterUnderThirtyInches,

    /// <summary>From 30 in, under 40 in.</summary>
    DiameterThirtyToFortyInches,

    /// <summary>From 40 in to 50 in.</summary>
    DiameterFortyToFiftyInches,

    /// <summary>Over 50 in.</summary>
    DiameterOverFiftyInches,

    /// <summary>Truck and bus tyres, by their marking.</summary>
    TruckTyre,

    /// <summary>Car, van and light truck tyres, and those whose marking nobody entered.</summary>
    LighterTyre,

    /// <summary>Of these, marked widths to 155 mm.</summary>
    LighterTyreNarrow,

    /// <summary>Over 155 to 200 mm.</summary>
    LighterTyreMiddle,

    /// <summary>Over 200 mm.</summary>
    LighterTyreWide,

    /// <summary>Car tyres by their marking, or by the placard's where nobody entered it; a temporary spare is none.</summary>
    CarTyre,

    /// <summary>Temporary spares by their marking.</summary>
    TemporarySpareTyre,

    /// <summary>Tyres of speed symbol V and above.</summary>
    SpeedSymbolVOrAbove,

    /// <summary>Wheels with a rubber snap-in valve.</summary>
    RubberValve,

    /// <summary>Wheels with a snap-in valve for higher pressure.</summary>
    HighPressureValve,
}

/// <summary>What a limit is held against: which wheel of which vehicle, and what is known of it.</summary>
/// <param name="Subject">The vehicle with what is fitted.</param>
/// <param name="Position">The wheel, or null for the vehicle or an axle as a whole.</param>
/// <param name="Diameter">The outside diameter of the tyres, or null where it does not count.</param>
public sealed record RulePoint(FittedVehicle Subject, Position? Position, Length? Diameter = null);

/// <summary>The vehicles and the places that a limit holds for.</summary>
/// <param name="Classes">Vehicle classes, or the two weight words; empty for all.</param>
/// <param name="Place">Where on the vehicle.</param>
public sealed record RuleScope(IReadOnlyList<string> Classes, RulePlace Place)
{
    /// <summary>The word for vehicles above the weight from which the US rules for heavy vehicles hold.</summary>
    public const string Heavy = "over 10000 lb";

    /// <summary>The word for the others.</summary>
    public const string Light = "to 10000 lb";

    /// <summary>Every place with its word.</summary>
    public static IReadOnlyList<(string Word, RulePlace Value)> Places { get; } =
    [
        ("", RulePlace.Anywhere),
        ("front axle but of a trailer", RulePlace.FrontAxleButOfATrailer),
        ("other axles, and a trailer's", RulePlace.OtherAxlesAndTrailers),
        ("steered front axle", RulePlace.SteeredFrontAxle),
        ("steered axle", RulePlace.SteeredAxle),
        ("single wheels", RulePlace.SingleWheels),
        ("all wheels driven", RulePlace.AllWheelsDriven),
        ("one driven axle", RulePlace.OneDrivenAxle),
        ("diameter under 30 in", RulePlace.DiameterUnderThirtyInches),
        ("diameter 30 to 40 in", RulePlace.DiameterThirtyToFortyInches),
        ("diameter 40 to 50 in", RulePlace.DiameterFortyToFiftyInches),
        ("diameter over 50 in", RulePlace.DiameterOverFiftyInches),
        ("truck tyre", RulePlace.TruckTyre),
        ("lighter tyre", RulePlace.LighterTyre),
        ("lighter tyre to 155 mm", RulePlace.LighterTyreNarrow),
        ("lighter tyre over 155 to 200 mm", RulePlace.LighterTyreMiddle),
        ("lighter tyre over 200 mm", RulePlace.LighterTyreWide),
        ("car tyre", RulePlace.CarTyre),
        ("temporary spare", RulePlace.TemporarySpareTyre),
        ("speed symbol V or above", RulePlace.SpeedSymbolVOrAbove),
        ("rubber snap-in valve", RulePlace.RubberValve),
        ("high-pressure snap-in valve", RulePlace.HighPressureValve),
    ];

    /// <summary>The place's word.</summary>
    public string PlaceWord => Places.Single(p => p.Value == Place).Word;

    /// <summary>True where a limit of this scope holds at a point.</summary>
    public bool Holds(RulePoint at)
    {
        ArgumentNullException.ThrowIfNull(at);
        return OfClass(Classes, at.Subject.Vehicle) && AtPlace(at);
    }

    /// <summary>True where two may hold at one place of one vehicle, as far as their words tell.</summary>
    public bool Meets(RuleScope other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return ClassesMeet(Classes, other.Classes) && !Apart(Place, other.Place) && !Apart(other.Place, Place);
    }

    private static bool ClassesMeet(IReadOnlyList<string> some, IReadOnlyList<string> others) =>
        some.Count == 0 || others.Count == 0 || some.Any(a => others.Any(b => a == b || MayWeigh(a, b) || MayWeigh(b, a)));

    /// <summary>A class beside a word of weight: cars and motorcycles are light, any other may be either.</summary>
    private static bool MayWeigh(string weight, string vehicleClass) =>
        vehicleClass is not (Heavy or Light) && (weight == Light || (weight == Heavy && vehicleClass is not (VehicleClasses.Car or "motorcycle")));

    private static bool Apart(RulePlace one, RulePlace other) => one != other && (one, other) switch
    {
        (RulePlace.FrontAxleButOfATrailer or RulePlace.SteeredFrontAxle, RulePlace.OtherAxlesAndTrailers) => true,
        (RulePlace.AllWheelsDriven, RulePlace.OneDrivenAxle) => true,
        (>= RulePlace.DiameterUnderThirtyInches and <= RulePlace.DiameterOverFiftyInches, >= RulePlace.DiameterUnderThirtyInches and <= RulePlace.DiameterOverFiftyInches) => true,
        (RulePlace.TruckTyre, >= RulePlace.LighterTyre and <= RulePlace.LighterTyreWide) => true,
        (>= RulePlace.LighterTyreNarrow and <= RulePlace.LighterTyreWide, >= RulePlace.LighterTyreNarrow and <= RulePlace.LighterTyreWide) => true,
        (RulePlace.CarTyre, RulePlace.TemporarySpareTyre or RulePlace.TruckTyre) => true,
        (RulePlace.TemporarySpareTyre, RulePlace.TruckTyre or (>= RulePlace.LighterTyre and <= RulePlace.LighterTyreWide)) => true,
        (RulePlace.RubberValve, RulePlace.HighPressureValve) => true,
        _ => false,
    };

    /// <summary>True where the vehicle is of one of the classes, or where none is named.</summary>
    internal static bool OfClass(IReadOnlyList<string> classes, Vehicle vehicle) =>
        classes.Count == 0 || classes.Contains(vehicle.VehicleClass) || classes.Contains(Drivetrain.HeavyByUnitedStatesRules(vehicle) ? Heavy : Light);

    private bool AtPlace(RulePoint at)
    {
        var vehicle = at.Subject.Vehicle;
        var front = at.Position is { Axle: 1 };
        return Place switch
        {
            RulePlace.Anywhere => true,
            RulePlace.FrontAxleButOfATrailer => front && !VehicleClasses.IsTrailer(vehicle.VehicleClass),
            RulePlace.OtherAxlesAndTrailers => !front || VehicleClasses.IsTrailer(vehicle.VehicleClass),
            RulePlace.SteeredFrontAxle => front && Steered(at),
            RulePlace.SteeredAxle => Steered(at),
            RulePlace.SingleWheels => at.Position is { IsSpare: false, Dual: DualPlace.Single },
            RulePlace.AllWheelsDriven => Drivetrain.AllWheelsDriven(vehicle),
            RulePlace.OneDrivenAxle => !Drivetrain.AllWheelsDriven(vehicle),
            RulePlace.DiameterUnderThirtyInches => at.Diameter is { Inches: < 30 },
            RulePlace.DiameterThirtyToFortyInches => at.Diameter is { Inches: >= 30 and < 40 },
            RulePlace.DiameterFortyToFiftyInches => at.Diameter is { Inches: >= 40 and <= 50 },
            RulePlace.DiameterOverFiftyInches => at.Diameter is { Inches: > 50 },
            RulePlace.TruckTyre => Class(at) == TyreClass.Truck,
            RulePlace.LighterTyre => IsLighter(at),
            RulePlace.LighterTyreNarrow => IsLighter(at) && Width(at) is <= 155 + InUseLimit.Hair,
            RulePlace.LighterTyreMiddle => IsLighter(at) && Width(at) is > 155 + InUseLimit.Hair and <= 200 + InUseLimit.Hair,
            RulePlace.LighterTyreWide => IsLighter(at) && Width(at) is > 200 + InUseLimit.Hair,
            RulePlace.CarTyre => (Class(at) ?? PlacardClass(at)) == TyreClass.Passenger,
            RulePlace.TemporarySpareTyre => (Class(at) ?? PlacardClass(at)) == TyreClass.TemporarySpare,
            RulePlace.SpeedSymbolVOrAbove => Tyre(at)?.Marking?.Service.SpeedSymbol is { } letter && SpeedSymbols.Of(letter) is { } symbol && symbol >= SpeedSymbols.Of("V")!,
            RulePlace.RubberValve => Fitted(at)?.Valve?.Kind == ValveKind.RubberSnapIn,
            RulePlace.HighPressureValve => Fitted(at)?.Valve?.Kind == ValveKind.HighPressureSnapIn,
        };
    }

    private static Assembly? Fitted(RulePoint at) => at.Position is { } position ? at.Subject.At(position) : null;

    private static FittedTyre? Tyre(RulePoint at) => Fitted(at)?.Tyre;

    private static TyreClass? Class(RulePoint at) => Tyre(at)?.Marking?.Size.TyreClass;

    private static TyreClass? PlacardClass(RulePoint at) => at.Position is { } position ? at.Subject.Vehicle.PlacardAt(position)?.Size?.Size.TyreClass : null;

    /// <summary>A tyre whose marking nobody entered is held against the lower limits.</summary>
    private static bool IsLighter(RulePoint at) => at.Position is not null && Class(at) is null or TyreClass.Passenger or TyreClass.LightTruck or TyreClass.Commercial;

    private static double? Width(RulePoint at) => Tyre(at)?.Marking?.Size.SectionWidth?.Millimetres;

    private static bool Steered(RulePoint at) => at.Position is { } position && at.Subject.Vehicle.AxleAt(position) is { Steered: true };

    /// <summary>The classes of a table's cell.</summary>
    internal static IReadOnlyList<string> ClassesOf(string cell) => cell.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
}
