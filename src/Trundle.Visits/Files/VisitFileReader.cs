using System.Globalization;
using Trundle.Engine.Fixings;
using Trundle.Engine.InUse;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Operations;
using Trundle.Visits.Paper;
using Trundle.Visits.Procedures;

namespace Trundle.Visits.Files;

/// <summary>
/// Reads a visit's file: the vehicle, what is fitted, and what was found. It reads as much as there is and gathers every problem with its
/// path, so that the bay can say each at its field and the command can say the first.
/// </summary>
public static class VisitFileReader
{
    /// <summary>The words of the rule sets.</summary>
    public static IReadOnlyList<(string Word, RuleSet Value)> RuleWords { get; } =
        [.. Enum.GetValues<RuleSet>().Select(set => (RuleSetWords.Of(set), set))];

    internal static readonly (string, SeatShape)[] SeatWords = [("cone", SeatShape.Cone), ("ball", SeatShape.Ball), ("flat", SeatShape.Flat)];
    private static readonly (string, Construction)[] ConstructionWords = [("radial", Construction.Radial), ("diagonal", Construction.Diagonal), ("bias-belted", Construction.BiasBelted)];

    /// <summary>Reads a file's root.</summary>
    /// <param name="root">The root object.</param>
    /// <param name="problems">Gathers every problem; the file may be used for a record only where none was added.</param>
    public static VisitFile Read(FileNode root, List<Problem> problems)
    {
        var file = new FileObject(root, problems);
        var rules = file.Word("rules", [.. RuleWords]);
        var date = file.Date("date");
        var country = file.Reference("country", ReadCountry);
        var inForce = file.Object("shopRules") is { } own ? ShopRulesReader.Read(own) : RulesInForce.Carried;
        var procedure = file.Node(WorkshopProcedure.Root) is { } laid ? WorkshopProcedure.ReadKept(laid, problems).Procedure : Procedure.BuiltIn;
        var vehicle = file.Object("vehicle") is { } v ? ReadVehicle(v) : new Vehicle();
        var fitted = new List<Assembly>();
        var balance = new Dictionary<Position, FileNode>();
        var studies = new Dictionary<(Position, string), FileNode>();
        foreach (var item in file.Objects("fitted"))
        {
            var assembly = ReadAssembly(item, vehicle, out var balanceNode);
            if (assembly is null)
            {
                continue;
            }

            if (assembly.Valve?.Renewed is { } renewed && date is { } today && renewed > today)
            {
                item.Wrong("valve.renewed", "in-future", FormattableString.Invariant($"{renewed:yyyy-MM-dd} is after the file's date, {today:yyyy-MM-dd}: write the day on which the valve was fitted."));
            }

            if (fitted.Any(a => a.Position == assembly.Position))
            {
                item.Wrong("position", "position-twice", $"{assembly.Position} stands twice in 'fitted'; one assembly sits at one position.");
                continue;
            }

            Twice(item, "tyre", assembly.Tyre?.Id, assembly.Position, fitted.Select(a => (a.Position, a.Tyre?.Id)));
            Twice(item, "wheel", assembly.Wheel?.Id, assembly.Position, fitted.Select(a => (a.Position, a.Wheel?.Id)));
            fitted.Add(assembly);
            if (balanceNode is not null)
            {
                balance[assembly.Position] = balanceNode;
            }

            foreach (var (key, _) in WheelStudies.All)
            {
                if (item.Node(key) is { } study)
                {
                    studies[(assembly.Position, key)] = study;
                }
            }
        }

        var conditions = file.Object("conditions") is { } c ? ReadConditions(c) : new Conditions(null, null, null, null, false);
        var arrival = file.Object("arrival") is { } came ? ArrivalReader.Read(came) : ArrivalRecord.Nothing;
        var work = file.Node("work");
        file.Knows("rotation", "ahead", "replace");
        file.Done();
        return new VisitFile(new FittedVehicle(vehicle, fitted, rules, date) { Ambient = conditions.Ambient, Country = country, InForce = inForce }, balance, studies, conditions, work) { Arrival = arrival, Procedure = procedure };
    }

    /// <summary>A country's two letters.</summary>
    internal static Reading<string> ReadCountry(string text) => text.Length == 2 && text.All(char.IsAsciiLetter)
        ? Reading<string>.Of(text.ToUpperInvariant())
        : Reading<string>.Failed("country-unreadable", $"'{NumberText.Shown(text)}' is not a country; write its two letters (ISO 3166-1), for example AT.");

    /// <summary>One tyre and one wheel sit at one place: a second assembly of the same name is a slip in one of the two.</summary>
    private static void Twice(FileObject item, string part, string? id, Position position, IEnumerable<(Position Position, string? Id)> before)
    {
        if (id is not null && before.FirstOrDefault(b => b.Id is { } other && CondemnedNames.Key(other) == CondemnedNames.Key(id)) is { Id: not null } twice)
        {
            item.Wrong($"{part}.id", $"{part}-twice", $"The {part} '{NumberText.Shown(id)}' stands at {twice.Position} and at {position}; one {part} sits at one place. Put one of the two names right.");
        }
    }

    private static Conditions ReadConditions(FileObject o)
    {
        Temperature? least = Temperature.FromDegreesCelsius(-60);
        Temperature? most = Temperature.FromDegreesCelsius(70);
        Length? low = Length.FromMetres(-450);
        Length? high = Length.FromMetres(6000);
        var conditions = new Conditions(
            o.Quantity<Temperature>("ambient", "°C", least, most),
            o.Quantity<Temperature>("expected", "°C", least, most),
            o.Quantity<Length>("altitudeSet", "m", low, high),
            o.Quantity<Length>("altitudeUsed", "m", low, high),
            o.Flag("laden") ?? false);
        o.Done();
        return conditions;
    }

    private static Vehicle ReadVehicle(FileObject o)
    {
        var axles = o.Objects("axles").Select(ReadAxle).ToList();
        if (axles.Count > Position.MostAxles)
        {
            o.Wrong("axles", "too-many-axles", $"At most {Position.MostAxles.ToString(CultureInfo.InvariantCulture)} axles are counted.");
        }

        var loads = o.Quantities<Mass>("axleLoads", "kg", Mass.FromKilograms(1), Mass.FromKilograms(40_000));
        if (loads.Count > 0 && loads.Count != axles.Count && o.Items("axleLoads").Count != axles.Count)
        {
            o.Wrong("axleLoads", "axle-loads-count", string.Create(CultureInfo.InvariantCulture, $"There are {o.Items("axleLoads").Count} axle loads for {axles.Count} axles; give one for each, from the front."));
        }
        else if (loads.Count == axles.Count)
        {
            axles = [.. axles.Select((axle, i) => axle with { Load = loads[i] })];
        }

        var drive = o.Word("drive", ("front", Drive.Front), ("rear", Drive.Rear), ("all", Drive.All));
        var vehicle = new Vehicle
        {
            Name = o.Text("name"),
            Vin = o.Reference("vin", Vin.From),
            Complaint = o.Text("complaint"),
            ComplaintDetail = o.Object(ComplaintReader.Key) is { } detail ? ComplaintReader.Read(detail) : null,
            MakerRotation = o.Text("makerRotation"),
            Drive = drive,
            Odometer = o.Quantity<Length>("odometer", "km", Length.FromKilometres(0), Length.FromKilometres(10_000_000)),
            Axles = axles,
            SparePlacard = o.Object("spare") is { } spare ? ReadSpare(spare) : null,
            TopSpeed = o.Quantity<Speed>("topSpeed", "km/h", Speed.FromKilometresPerHour(5), Speed.FromKilometresPerHour(450)),
            VehicleClass = ReadVehicleClass(o, "class"),
            AirSuspension = o.Flag("airSuspension"),
        };
        o.Done();
        return vehicle;
    }

    /// <summary>Reads the class of a vehicle under a key; a car where none is given.</summary>
    public static string ReadVehicleClass(FileObject o, string key)
    {
        ArgumentNullException.ThrowIfNull(o);
        return o.Word(key, [.. VehicleClasses.All.Select((word, i) => (word, i))]) is { } index ? VehicleClasses.All[index] : VehicleClasses.Car;
    }

    private static Placard? ReadSpare(FileObject o)
    {
        var placard = o.Object("placard") is { } p ? ReadPlacard(p) : null;
        o.Done();
        return placard;
    }

    private static Axle ReadAxle(FileObject o)
    {
        var axle = new Axle
        {
            Steered = o.Flag("steered") ?? false,
            Driven = o.Flag("driven") ?? false,
            Dual = o.Flag("dual") ?? false,
            BehindFirst = o.Quantity<Length>("behindFirst", "mm", Length.FromMillimetres(0), Length.FromMetres(30)),
            Track = o.Quantity<Length>("track", "mm", Length.FromMillimetres(300), Length.FromMetres(4)),
            Placard = o.Object("placard") is { } placard ? ReadPlacard(placard) : null,
            Fixings = o.Object("fixings") is { } fixings ? ReadFixings(fixings) : null,
            Hub = o.Object("hub") is { } hub ? ReadHub(hub) : null,
        };
        o.Done();
        return axle;
    }

    private static Hub ReadHub(FileObject o)
    {
        var hub = new Hub(Bore(o), o.Reference("boltCircle", StampReader.Circle));
        o.Done();
        return hub;
    }

    private static Length? Bore(FileObject o) => o.Quantity<Length>("bore", "mm", Length.FromMillimetres(20), Length.FromMillimetres(400));

    private static GaugePressure? Pressure(FileObject o, string key) =>
        o.Quantity<GaugePressure>(key, "kPa", GaugePressure.FromKilopascals(0), GaugePressure.FromKilopascals(1400));

    /// <summary>Reads a placard.</summary>
    public static Placard ReadPlacard(FileObject o)
    {
        ArgumentNullException.ThrowIfNull(o);
        var placard = new Placard(o.Reference("size", MarkingReader.Read), Pressure(o, "cold"), Pressure(o, "laden"));
        o.Done();
        return placard;
    }

    /// <summary>Reads the fixings of an axle; also the body of the <c>fixings</c> operation holds them so.</summary>
    public static FixingSet ReadFixings(FileObject o)
    {
        ArgumentNullException.ThrowIfNull(o);
        var count = o.Whole("count", 1, 20);
        var order = new List<int>();
        foreach (var item in o.Items("order"))
        {
            if (NumberText.Read(item.Text) is { IsRead: true } n && n.Value == Math.Floor(n.Value) && n.Value is >= 1 and <= 20)
            {
                order.Add((int)n.Value);
            }
            else
            {
                o.Wrong("order", "order-unreadable", "The maker's order is a list of fixing numbers, clockwise from 1, such as [1, 3, 5, 2, 4].");
            }
        }

        if (order.Count > 0 && count is { } c && !order.Order().SequenceEqual(Enumerable.Range(1, c)))
        {
            o.Wrong("order", "order-incomplete", $"The maker's order names each of the {c.ToString(CultureInfo.InvariantCulture)} fixings once, from 1 to {c.ToString(CultureInfo.InvariantCulture)}.");
        }

        var fixings = new FixingSet
        {
            Count = count,
            Kind = o.Word("kind", ("nut", FixingKind.Nut), ("bolt", FixingKind.Bolt)),
            Thread = o.Reference("thread", ThreadDesignation.Read),
            PropertyClass = o.Text("propertyClass"),
            Torque = o.Quantity<Torque>("torque", "N·m", Torque.FromNewtonMetres(1), Torque.FromNewtonMetres(2000)),
            Seat = o.Word("seat", SeatWords),
            Condition = o.Word("condition", ("dry", ThreadCondition.Dry), ("oiled", ThreadCondition.Oiled)),
            Order = order,
            LeftHand = o.Flag("leftHand") ?? false,
        };
        fixings = FixingsReader.Further(o, fixings);
        if (fixings is { Thread: { } thread, PropertyClass: { } propertyClass } && PropertyClass.Read(propertyClass) is { IsRead: true } strength && strength.Value.Contradiction(thread) is { } contradiction)
        {
            o.Wrong("propertyClass", "property-class-contradicts", contradiction);
        }

        o.Done();
        return fixings;
    }

    private static Assembly? ReadAssembly(FileObject o, Vehicle vehicle, out FileNode? balance)
    {
        balance = null;
        var position = o.Require("position", "say where this assembly sits, for example 1L") ? o.Value("position", Position.Read) : null;
        if (position is { IsSpare: false } p && vehicle.Axles.Count > 0)
        {
            if (p.Axle > vehicle.Axles.Count)
            {
                o.Wrong("position", "position-no-axle", string.Create(CultureInfo.InvariantCulture, $"{p} is on axle {p.Axle}, but the vehicle has {vehicle.Axles.Count}."));
            }
            else if (vehicle.Axles[p.Axle - 1].Dual != (p.Dual != DualPlace.Single))
            {
                o.Wrong("position", "position-dual", vehicle.Axles[p.Axle - 1].Dual
                    ? $"Axle {p.Axle.ToString(CultureInfo.InvariantCulture)} has dual wheels: write {p}i for the inner or {p}o for the outer one."
                    : $"{p} names a dual wheel, but axle {p.Axle.ToString(CultureInfo.InvariantCulture)} is not dual.");
            }
        }

        balance = o.Node("balance");
        o.Knows([.. WheelStudies.All.Select(s => s.Key)]);
        var read = new
        {
            Tyre = o.Object("tyre") is { } tyre ? ReadTyre(tyre) : null,
            Wheel = o.Object("wheel") is { } wheel ? ReadWheel(wheel) : null,
            Tread = o.Object("tread") is { } tread ? TreadReader.Read(tread) : null,
            Pressure = o.Object("pressure") is { } pressure ? ReadPressure(pressure) : null,
            Damage = o.Objects("damage").Select(InspectionFileReader.ReadDamage).OfType<Damage>().ToList(),
            Fixings = o.Objects("fixings").Select(FixingsReader.Found).ToList(),
            Load = o.Quantity<Mass>("load", "kg", Mass.FromKilograms(1), Mass.FromKilograms(20_000)),
            Mass = o.Quantity<Mass>("mass", "kg", Mass.FromKilograms(1), Mass.FromKilograms(2000)),
            Sensor = o.Word("sensor", ("working", SensorState.Working), ("not working", SensorState.NotWorking), ("none", SensorState.Absent)),
            SensorParts = o.Object("sensorParts") is { } parts ? InspectionFileReader.ReadSensorParts(parts) : null,
            Valve = o.Object("valve") is { } valve ? InspectionFileReader.ReadValve(valve) : null,
        };
        o.Done();
        return position is null ? null : new Assembly
        {
            Position = position.Value,
            Tyre = read.Tyre,
            Wheel = read.Wheel,
            Tread = read.Tread,
            Pressure = read.Pressure,
            Damage = read.Damage,
            Fixings = read.Fixings,
            Load = read.Load,
            Sensor = read.Sensor,
            SensorParts = read.SensorParts,
            Valve = read.Valve,
            Mass = read.Mass,
        };
    }

    /// <summary>Reads one tyre.</summary>
    public static FittedTyre ReadTyre(FileObject o)
    {
        ArgumentNullException.ThrowIfNull(o);
        var tyre = new FittedTyre
        {
            Id = o.Text("id"),
            Marking = o.Reference("marking", MarkingReader.Read),
            Tin = o.Reference("tin", t => TinReader.Read(t))?.Typed,
            Marks = [.. o.Texts("marks").Select(m => m.ToUpperInvariant())],
            Directional = o.Flag("directional") ?? false,
            MountedFor = o.Word("mountedFor", ("left", MountedFor.Left), ("right", MountedFor.Right)),
            Asymmetric = o.Flag("asymmetric") ?? false,
            OuterFaceOut = o.Flag("outerFaceOut"),
            MaximumPressure = Pressure(o, "maximumPressure"),
            SeatingLimit = Pressure(o, "seatingLimit"),
            Condemned = o.Flag("condemned") ?? false,
            ConstructionRead = o.Word("construction", ConstructionWords),
            History = InspectionFileReader.ReadHistory(o),
        };
        if (tyre is { ConstructionRead: { } read, Marking.Size: { ConstructionToBeRead: false } size } && size.Construction != read)
        {
            o.Wrong("construction", "construction-contradicts", $"The marking '{NumberText.Shown(tyre.Marking.Typed)}' says {SidewallOperation.ConstructionWord(size.Construction)}, and '{SidewallOperation.ConstructionWord(read)}' stands here; look at the tyre again and put one of them right.");
        }

        o.Done();
        return tyre;
    }

    /// <summary>Reads one wheel.</summary>
    public static Wheel ReadWheel(FileObject o)
    {
        ArgumentNullException.ThrowIfNull(o);
        var wheel = new Wheel
        {
            Id = o.Text("id"),
            Rim = o.Reference("rim", StampReader.Rim),
            Offset = o.Quantity<Length>("offset", "mm", Length.FromMillimetres(-300), Length.FromMillimetres(300)),
            Material = o.Word("material", ("steel", WheelMaterial.Steel), ("alloy", WheelMaterial.Alloy)),
            Spokes = o.Whole("spokes", 0, 60),
            Maker = o.Word("maker", ("vehicle", WheelMaker.Vehicle), ("aftermarket", WheelMaker.Aftermarket)),
            Bore = Bore(o),
            BoltCircle = o.Reference("boltCircle", StampReader.Circle),
            Seat = o.Word("seat", SeatWords),
            SeatWorn = o.Word("seatState", FixingsReader.SeatStates),
            HubRing = o.Object("hubRing") is { } ring ? FixingsReader.Ring(ring) : null,
            LoadRating = o.Quantity<Mass>("loadRating", "kg", Mass.FromKilograms(20), Mass.FromKilograms(20_000)),
            SeatingLimit = Pressure(o, "seatingLimit"),
            MaximumPressure = Pressure(o, "maximumPressure"),
            MakerRotation = o.Text("makerRotation"),
            MultiPiece = o.Flag("multiPiece"),
            Damage = InspectionFileReader.ReadWheelDamage(o),
            Condemned = o.Flag("condemned") ?? false,
            Reversed = o.Flag("reversed"),
        };
        o.Done();
        return wheel;
    }

    /// <summary>Reads a pressure reading.</summary>
    public static PressureReading? ReadPressure(FileObject o)
    {
        ArgumentNullException.ThrowIfNull(o);
        var value = o.Require("value", "say what the gauge showed, for example \"225 kPa\"") ? Pressure(o, "value") : null;
        var temperature = o.Quantity<Temperature>("temperature", "°C", Temperature.FromDegreesCelsius(-60), Temperature.FromDegreesCelsius(150));
        var hot = o.Flag("hot") ?? false;
        o.Done();
        return value is { } v ? new PressureReading(v, temperature, hot) : null;
    }
}
