using Trundle.Engine.Complaint;
using Trundle.Engine.Fixings;
using Trundle.Engine.InUse;
using Trundle.Engine.Sidewall;
using Trundle.Measures;

namespace Trundle.Engine.Vehicles;

/// <summary>Whose in-use rules the vehicle is judged by.</summary>
public enum RuleSet
{
    /// <summary>United States.</summary>
    UnitedStates,

    /// <summary>United Kingdom.</summary>
    UnitedKingdom,

    /// <summary>European Union.</summary>
    EuropeanUnion,
}

/// <summary>Which axles are driven, as a whole.</summary>
public enum Drive
{
    /// <summary>Front.</summary>
    Front,

    /// <summary>Rear.</summary>
    Rear,

    /// <summary>All.</summary>
    All,
}

/// <summary>The shape of the seat under a fixing. They are never mixed.</summary>
public enum SeatShape
{
    /// <summary>60° cone.</summary>
    Cone,

    /// <summary>Ball (radius).</summary>
    Ball,

    /// <summary>Flat, with or without a captive washer.</summary>
    Flat,
}

/// <summary>How the maker wants the thread.</summary>
public enum ThreadCondition
{
    /// <summary>Clean and dry.</summary>
    Dry,

    /// <summary>Oiled as the maker says.</summary>
    Oiled,
}

/// <summary>A nut on a stud, or a bolt into the hub.</summary>
public enum FixingKind
{
    /// <summary>Nut.</summary>
    Nut,

    /// <summary>Bolt.</summary>
    Bolt,
}

/// <summary>A circle of holes: how many, on what diameter.</summary>
public sealed record BoltCircle(int Count, Length Diameter);

/// <summary>The vehicle's own tyre and loading label for one axle or for the spare.</summary>
public sealed record Placard(Marking? Size, GaugePressure? Cold, GaugePressure? Laden);

/// <summary>How the wheels of an axle are fixed. What nobody gave is null and is asked for, never invented.</summary>
public sealed record FixingSet
{
    /// <summary>How many on each wheel.</summary>
    public int? Count { get; init; }

    /// <summary>Nut or bolt.</summary>
    public FixingKind? Kind { get; init; }

    /// <summary>Thread.</summary>
    public ThreadDesignation? Thread { get; init; }

    /// <summary>Property class or grade as typed: 8.8, 10.9, 12.9.</summary>
    public string? PropertyClass { get; init; }

    /// <summary>The vehicle maker's torque, or null.</summary>
    public Torque? Torque { get; init; }

    /// <summary>The fixing's seat.</summary>
    public SeatShape? Seat { get; init; }

    /// <summary>Dry or oiled, as the maker says.</summary>
    public ThreadCondition? Condition { get; init; }

    /// <summary>The maker's own tightening order, 1-based, or empty.</summary>
    public IReadOnlyList<int> Order { get; init; } = [];

    /// <summary>Left-hand thread.</summary>
    public bool LeftHand { get; init; }

    /// <summary>The one side of the vehicle that has left-hand threads, where the two differ; null where they do not.</summary>
    public Side? LeftHandSide { get; init; }

    /// <summary>How far the fixings are on their threads, as counted or measured, or null.</summary>
    public Engagement? Engagement { get; init; }

    /// <summary>The maker's least engagement, or null.</summary>
    public Engagement? LeastEngagement { get; init; }

    /// <summary>The cone's angle and the ball's radius where they are known, or null.</summary>
    public SeatForm? Form { get; init; }

    /// <summary>The seats are worn, galled or pulled in.</summary>
    public bool SeatWorn { get; init; }

    /// <summary>The vehicle maker's own distance to the re-torque, or null.</summary>
    public ReTorque? ReTorque { get; init; }

    /// <summary>The fixings of one wheel: left-hand where its side has such threads.</summary>
    public FixingSet At(Position position) => LeftHandSide is { } side ? this with { LeftHand = position.Side == side, LeftHandSide = null } : this;
}

/// <summary>Some fixings of one kind as they were found on a wheel.</summary>
/// <param name="Count">How many, or null.</param>
/// <param name="Kind">Nut or bolt, or null.</param>
/// <param name="Seat">Their seat, or null.</param>
/// <param name="Thread">Their thread, or null.</param>
/// <param name="LeftHand">Left-hand thread, or null where nobody looked.</param>
public sealed record FoundFixings(int? Count, FixingKind? Kind, SeatShape? Seat, ThreadDesignation? Thread, bool? LeftHand);

/// <summary>A ring that centres a wheel with a wide bore on a narrower hub.</summary>
/// <param name="Material">What it is made of, or null.</param>
/// <param name="Inner">Its own bore, which sits on the hub, or null.</param>
/// <param name="Outer">Its outer diameter, which sits in the wheel's bore, or null.</param>
public sealed record HubRing(HubRingMaterial? Material, Length? Inner, Length? Outer);

/// <summary>What a hub ring is made of.</summary>
public enum HubRingMaterial
{
    /// <summary>Metal.</summary>
    Metal,

    /// <summary>Plastic.</summary>
    Plastic,
}

/// <summary>The hub that the wheel goes on.</summary>
public sealed record Hub(Length? Bore, BoltCircle? BoltCircle);

/// <summary>One axle from the front.</summary>
public sealed record Axle
{
    /// <summary>Steered.</summary>
    public bool Steered { get; init; }

    /// <summary>Driven.</summary>
    public bool Driven { get; init; }

    /// <summary>Two wheels a side.</summary>
    public bool Dual { get; init; }

    /// <summary>The placard for this axle.</summary>
    public Placard? Placard { get; init; }

    /// <summary>The fixings.</summary>
    public FixingSet? Fixings { get; init; }

    /// <summary>The hub.</summary>
    public Hub? Hub { get; init; }

    /// <summary>How far it stands behind the first axle, or null; for the drawing.</summary>
    public Length? BehindFirst { get; init; }

    /// <summary>From the middle of the left wheels to the middle of the right ones, or null; for the drawing.</summary>
    public Length? Track { get; init; }

    /// <summary>The load on this axle (the file's <c>axleLoads</c>), or null.</summary>
    public Mass? Load { get; init; }
}

/// <summary>The vehicle as it stands in the bay.</summary>
public sealed record Vehicle
{
    /// <summary>What people call it.</summary>
    public string? Name { get; init; }

    /// <summary>The vehicle identification number, or null where nobody read it.</summary>
    public Vin? Vin { get; init; }

    /// <summary>What the driver says.</summary>
    public string? Complaint { get; init; }

    /// <summary>What the driver says of it, question by question, or null.</summary>
    public ComplaintDetail? ComplaintDetail { get; init; }

    /// <summary>The vehicle maker's own rotation, as a permutation "1L>2L …" or a pattern's name, or null.</summary>
    public string? MakerRotation { get; init; }

    /// <summary>Which axles are driven.</summary>
    public Drive? Drive { get; init; }

    /// <summary>Distance run.</summary>
    public Length? Odometer { get; init; }

    /// <summary>Axles from the front.</summary>
    public IReadOnlyList<Axle> Axles { get; init; } = [];

    /// <summary>The spare's placard, or null.</summary>
    public Placard? SparePlacard { get; init; }

    /// <summary>Top speed of the vehicle, where known, for the load at high speed.</summary>
    public Speed? TopSpeed { get; init; }

    /// <summary>The class that rules turn on, one of <see cref="VehicleClasses.All"/>.</summary>
    public string VehicleClass { get; init; } = VehicleClasses.Car;

    /// <summary>It stands on air; null where nobody said.</summary>
    public bool? AirSuspension { get; init; }

    /// <summary>One wheel on each axle, in one track: a motorcycle. Its wheels are written on the left or the right, whichever was entered.</summary>
    public bool SingleTrack => VehicleClass == VehicleClasses.Motorcycle;

    /// <summary>A position in words, in a vehicle whose axles are counted: "front left", "rear right outer"; on a motorcycle "front" and "rear".</summary>
    public string InWords(Position position) => position.InWords(Axles.Count, SingleTrack);

    /// <summary>The placard that governs a position, or null.</summary>
    public Placard? PlacardAt(Position position) =>
        position.IsSpare ? SparePlacard : position.Axle <= Axles.Count ? Axles[position.Axle - 1].Placard : null;

    /// <summary>
    /// The placard that governs the pressure of a tyre where it stands, or null: a temporary spare runs at the spare's own pressure wherever it is
    /// fitted, and never at the axle's.
    /// </summary>
    public Placard? PlacardOf(Assembly assembly)
    {
        ArgumentNullException.ThrowIfNull(assembly);
        var governs = PlacardAt(assembly.Position);
        return IsTemporary(assembly.Tyre?.Marking) && !IsTemporary(governs?.Size) ? SparePlacard : governs;
    }

    private static bool IsTemporary(Marking? marking) => marking?.Size.TyreClass == TyreClass.TemporarySpare;

    /// <summary>The axle of a position, or null for the spare.</summary>
    public Axle? AxleAt(Position position) =>
        position.IsSpare || position.Axle > Axles.Count ? null : Axles[position.Axle - 1];
}

/// <summary>Which way a directional tyre was mounted to turn.</summary>
public enum MountedFor
{
    /// <summary>For the left side of the vehicle.</summary>
    Left,

    /// <summary>For the right side of the vehicle.</summary>
    Right,
}

/// <summary>One tyre as it is.</summary>
public sealed record FittedTyre
{
    /// <summary>The workshop's name for it.</summary>
    public string? Id { get; init; }

    /// <summary>What its sidewall says.</summary>
    public Marking? Marking { get; init; }

    /// <summary>Its TIN as typed.</summary>
    public string? Tin { get; init; }

    /// <summary>Further marks, upper case: M+S, 3PMSF, ROTATION, OUTSIDE, TL, MAX PRESS words …</summary>
    public IReadOnlyList<string> Marks { get; init; } = [];

    /// <summary>It has a direction of turning.</summary>
    public bool Directional { get; init; }

    /// <summary>The side it is mounted for, where directional.</summary>
    public MountedFor? MountedFor { get; init; }

    /// <summary>It has an outside and an inside.</summary>
    public bool Asymmetric { get; init; }

    /// <summary>Its outside is outside.</summary>
    public bool? OuterFaceOut { get; init; }

    /// <summary>MAX PRESS of its sidewall, or null.</summary>
    public GaugePressure? MaximumPressure { get; init; }

    /// <summary>The tyre maker's limit for seating the beads, or null.</summary>
    public GaugePressure? SeatingLimit { get; init; }

    /// <summary>It may not be fitted again.</summary>
    public bool Condemned { get; init; }

    /// <summary>Construction read on the sidewall where the size leaves it open.</summary>
    public Construction? ConstructionRead { get; init; }

    /// <summary>What is known of its repairs and of what the tyre's maker says about them.</summary>
    public RepairHistory History { get; init; } = RepairHistory.NotKnown;

    /// <summary>The construction that counts: what was read, else what the size says.</summary>
    public Construction? Construction => ConstructionRead ?? Marking?.Size.Construction;
}

/// <summary>What a wheel is made of.</summary>
public enum WheelMaterial
{
    /// <summary>Steel.</summary>
    Steel,

    /// <summary>Alloy.</summary>
    Alloy,
}

/// <summary>Who made the wheel.</summary>
public enum WheelMaker
{
    /// <summary>The vehicle's maker.</summary>
    Vehicle,

    /// <summary>Somebody else; its maker's own instructions count too.</summary>
    Aftermarket,
}

/// <summary>The stamp of a rim: width, flange letter, diameter.</summary>
/// <param name="Width">Between the flanges.</param>
/// <param name="Flange">J, JJ, B, K …, or empty.</param>
/// <param name="DiameterInches">Diameter code in inches, or null for a millimetre rim.</param>
/// <param name="DiameterMillimetres">Diameter in millimetres where stamped so.</param>
public sealed record RimStamp(Length Width, string Flange, double? DiameterInches, double? DiameterMillimetres)
{
    /// <summary>It is stamped with a '-' between width and diameter, or with SDC or FB: on a large vehicle's wheel a sign of a rim of several pieces.</summary>
    public bool MayBeOfSeveralPieces { get; init; }

    /// <summary>The width with its unit, in the unit of the stamp: <c>6.5 in</c>, <c>165 mm</c>.</summary>
    public string WidthText => DiameterInches is not null ? FormattableString.Invariant($"{Width.Inches:0.##} in") : FormattableString.Invariant($"{Width.Millimetres:0} mm");

    /// <summary>The diameter with its unit, in the unit of the stamp: <c>15 in</c>, <c>390 mm</c>.</summary>
    public string DiameterText => DiameterInches is { } inches ? FormattableString.Invariant($"{inches:0.##} in") : FormattableString.Invariant($"{DiameterMillimetres:0} mm");

    /// <summary>As it is written for a person: <c>6.5J × 16</c> in inches, as every stamp without a unit is; <c>165 mm TR × 390 mm</c> on a millimetre rim.</summary>
    public string Text => DiameterInches is { } inches
        ? FormattableString.Invariant($"{Width.Inches:0.##}{Flange} × {inches:0.##}")
        : $"{WidthText}{(Flange.Length > 0 ? $" {Flange}" : "")} × {DiameterText}";
}

/// <summary>One wheel as it is.</summary>
public sealed record Wheel
{
    /// <summary>The workshop's name for it.</summary>
    public string? Id { get; init; }

    /// <summary>Its stamp.</summary>
    public RimStamp? Rim { get; init; }

    /// <summary>Offset (inset positive).</summary>
    public Length? Offset { get; init; }

    /// <summary>Material.</summary>
    public WheelMaterial? Material { get; init; }

    /// <summary>How many spokes, or null.</summary>
    public int? Spokes { get; init; }

    /// <summary>Who made it.</summary>
    public WheelMaker? Maker { get; init; }

    /// <summary>Centre bore.</summary>
    public Length? Bore { get; init; }

    /// <summary>Bolt circle.</summary>
    public BoltCircle? BoltCircle { get; init; }

    /// <summary>Seat of its holes.</summary>
    public SeatShape? Seat { get; init; }

    /// <summary>The seats of its holes are worn, galled or pulled in; null where nobody looked.</summary>
    public bool? SeatWorn { get; init; }

    /// <summary>The ring in its bore, or null.</summary>
    public HubRing? HubRing { get; init; }

    /// <summary>Load rating.</summary>
    public Mass? LoadRating { get; init; }

    /// <summary>The wheel maker's limit for seating the beads, or null.</summary>
    public GaugePressure? SeatingLimit { get; init; }

    /// <summary>The wheel maker's greatest pressure, or null.</summary>
    public GaugePressure? MaximumPressure { get; init; }

    /// <summary>Its rim is of several pieces: split, or with a lock ring or side ring; null where nobody looked.</summary>
    public bool? MultiPiece { get; init; }

    /// <summary>Damages found on it.</summary>
    public IReadOnlyList<WheelDamage> Damage { get; init; } = [];

    /// <summary>Its well lies nearer the inner side; null where nobody measured.</summary>
    public bool? Reversed { get; init; }

    /// <summary>The aftermarket maker's own rotation, or null.</summary>
    public string? MakerRotation { get; init; }

    /// <summary>It may not be fitted again.</summary>
    public bool Condemned { get; init; }
}

/// <summary>A pressure as read from a gauge.</summary>
/// <param name="Value">What the gauge showed.</param>
/// <param name="Temperature">Of the tyre where it is hot, else of the air around; or null.</param>
/// <param name="Hot">The tyre had been running.</param>
public sealed record PressureReading(GaugePressure Value, Temperature? Temperature, bool Hot);

/// <summary>The pressure sensor in a wheel, as it was found before any work.</summary>
public enum SensorState
{
    /// <summary>There is one and it works.</summary>
    Working,

    /// <summary>There is one and it does not work.</summary>
    NotWorking,

    /// <summary>There is none in this wheel.</summary>
    Absent,
}

/// <summary>One tyre mounted on one wheel, with what was found on it.</summary>
public sealed record Assembly
{
    /// <summary>Where it sits.</summary>
    public required Position Position { get; init; }

    /// <summary>The tyre.</summary>
    public FittedTyre? Tyre { get; init; }

    /// <summary>The wheel.</summary>
    public Wheel? Wheel { get; init; }

    /// <summary>Tread depths.</summary>
    public TreadDepths? Tread { get; init; }

    /// <summary>The pressure found.</summary>
    public PressureReading? Pressure { get; init; }

    /// <summary>Damages found.</summary>
    public IReadOnlyList<Damage> Damage { get; init; } = [];

    /// <summary>The fixings as they were found on this wheel, alike ones together; empty where nobody looked.</summary>
    public IReadOnlyList<FoundFixings> Fixings { get; init; } = [];

    /// <summary>What this tyre carries as weighed, or null.</summary>
    public Mass? Load { get; init; }

    /// <summary>What tyre and wheel weigh together, or null.</summary>
    public Mass? Mass { get; init; }

    /// <summary>The wheel's pressure sensor, or null where nobody looked.</summary>
    public SensorState? Sensor { get; init; }

    /// <summary>The parts of the sensor, as far as somebody looked.</summary>
    public SensorParts? SensorParts { get; init; }

    /// <summary>The valve, or null where nobody looked.</summary>
    public Valve? Valve { get; init; }
}

/// <summary>A vehicle with what is fitted to it, the rules it is judged by, and today's date.</summary>
/// <param name="Vehicle">The vehicle.</param>
/// <param name="Fitted">One assembly a position.</param>
/// <param name="Rules">Whose rules, or null: then only the trade rules are applied.</param>
/// <param name="Date">Today, or null where no age can be told.</param>
public sealed record FittedVehicle(Vehicle Vehicle, IReadOnlyList<Assembly> Fitted, RuleSet? Rules, DateOnly? Date)
{
    /// <summary>The air's temperature in the bay, to count a hot reading back to; null where nobody gave it.</summary>
    public Temperature? Ambient { get; init; }

    /// <summary>The country whose own rules count beside those of the rule set, two letters; null where nobody said.</summary>
    public string? Country { get; init; }

    /// <summary>The rules with what the workshop added and put right.</summary>
    public RulesInForce InForce { get; init; } = RulesInForce.Carried;

    /// <summary>The assembly at a position, or null.</summary>
    public Assembly? At(Position position) => Fitted.FirstOrDefault(a => a.Position == position);

    /// <summary>The assemblies of an axle, 1-based, left before right, inner before outer.</summary>
    public IReadOnlyList<Assembly> OnAxle(int axle) =>
        [.. Fitted.Where(a => a.Position.Axle == axle).OrderBy(a => a.Position.Side).ThenBy(a => a.Position.Dual)];
}
