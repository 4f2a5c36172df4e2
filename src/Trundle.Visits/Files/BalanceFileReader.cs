using System.Globalization;
using Trundle.Engine.Balance;
using Trundle.Engine.Findings;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Visits.Files;

/// <summary>Reads the file of <c>balance solve</c>, which is also the <c>balance</c> part of an assembly in a visit.</summary>
public static class BalanceFileReader
{
    internal static readonly (string, WeightKind)[] KindWords = [("clip", WeightKind.Clip), ("adhesive", WeightKind.Adhesive)];
    internal static readonly Length LeastAxial = Length.FromMillimetres(-3000);
    internal static readonly Length MostAxial = Length.FromMillimetres(3000);
    private static readonly Mass NoMass = Mass.FromGrams(0);

    /// <summary>Reads one wheel's part.</summary>
    /// <param name="node">The root of a file, or the part of an assembly.</param>
    /// <param name="assembly">The assembly in a visit, whose marking and stamp the settings are held against; null for a file of its own.</param>
    /// <param name="problems">Gathers every problem.</param>
    /// <returns>The part; null where a problem was added.</returns>
    public static BalanceFile? Read(FileNode node, Assembly? assembly, List<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(node);
        ArgumentNullException.ThrowIfNull(problems);
        var before = problems.Count;
        var o = new FileObject(node, problems);
        var wheel = o.Object("wheel") is { } w ? ReadWheel(w) : new WheelPart();
        var profile = o.Object("balancer") is { } b ? ReadProfile(b, out var unit) : ReadNoProfile(out unit);
        var settings = o.Object("settings") is { } s ? ReadSettings(s, unit) : null;
        var findings = Findings(wheel, settings, assembly).Select(f => f with { Position = assembly?.Position.ToString() }).ToList();
        var (inner, outer) = ReadPlanes(o, settings, profile);
        var stock = o.Require("stock", "list what the drawer holds, for example {\"clip\": [\"5 g\", \"10 g\"], \"adhesive\": [\"5 g\"]}") && o.Object("stock") is { } st ? BalanceStockReader.ReadStock(st, inner, outer) : null;
        var readingPlanes = o.Object("readingPlanes") is { } rp ? ReadReadingPlanes(rp) : null;
        var planes = inner is not null && outer is not null ? Apart(o, "planes", inner.Place, outer.Place) : null;

        // Without readings there is still something to say before the spin: whether the settings can be right.
        var spun = settings is null || o.Has("readings");
        var readings = spun && o.Require("readings", "give what the balancer shows: the mass to add and its angle, inner and outer") && o.Object("readings") is { } r
            ? ReadReadings(r, readingPlanes ?? planes) : null;
        var tolerance = BalanceToleranceReader.Read(o, wheel.Mass, out var perPlane);
        var problem = new BalanceProblem
        {
            Inner = inner ?? Unread,
            Outer = outer ?? Unread,
            ReadingPlanes = readingPlanes,
            Readings = readings ?? default,
            Spokes = wheel.Spokes,
            Stock = stock ?? new WeightStock([], []),
            Tolerance = tolerance ?? BalanceTolerance.WhereNoneGiven,
            MaxPieces = o.Whole("maxPieces", 0, 60),
            MaxMass = o.Quantity<Mass>("maxMass", "g", NoMass, Mass.FromKilograms(20)),
            AngleStep = o.Quantity<Angle>("angleStep", "°", Angle.FromDegrees(0.25), Angle.FromDegrees(180)),
            Forbidden = BalanceStockReader.ReadForbidden(o),
        };
        problem = problem with
        {
            Aims = BalanceStockReader.ReadAims(o),
            MassPenaltyPerGram = o.Number("massPenalty", 0, 100) ?? problem.MassPenaltyPerGram,
        };
        if ((inner?.BehindSpokes == true || outer?.BehindSpokes == true) && wheel.Spokes is null && problems.Count == before)
        {
            problems.Add(new Problem(o.PathOf("wheel.spokes"), "missing", "'spokes' is missing: places behind spokes need {\"count\": 5, \"first\": 12}, the first spoke's angle from the valve."));
        }

        o.Done();
        return problems.Count == before && planes is not null ? new BalanceFile(spun ? problem : null, planes, findings, perPlane, profile)
        {
            ProfileAssumed = !o.Has("balancer") && settings is { Distance: not null, Diameter: not null, Width: not null } && !HaveOwnPlaces(node),
        }
        : null;
    }

    /// <summary>Both planes were measured themselves, so that no setting was turned into a place.</summary>
    private static bool HaveOwnPlaces(FileNode node) =>
        new[] { "inner", "outer" }.All(side => new[] { "radius", "axial" }.All(key => node.Member("planes")?.Member(side)?.Member(key) is { Kind: not NodeKind.Null }));

    private static readonly WeightPlane Unread = new(WeightKind.Clip, new PlanePlace(default, default), false);

    private sealed record WheelPart
    {
        public Length? Diameter { get; init; }

        public Length? Width { get; init; }

        public Mass? Mass { get; init; }

        public SpokePlaces? Spokes { get; init; }

        public RimStamp? Rim { get; init; }

        public Marking? Marking { get; init; }
    }

    private sealed record SettingsPart(Length? Distance, Length? Diameter, Length? Width, string Path);

    private static WheelPart ReadWheel(FileObject o)
    {
        var wheel = new WheelPart
        {
            Diameter = Diameter(o),
            Width = Width(o),
            Mass = o.Quantity<Mass>("mass", "kg", Mass.FromGrams(100), Mass.FromKilograms(1000)),
            Spokes = o.Object("spokes") is { } spokes ? ReadSpokes(spokes) : null,
            Rim = o.Reference("rim", StampReader.Rim),
            Marking = o.Reference("marking", MarkingReader.Read),
        };
        o.Done();
        return wheel;
    }

    internal static Length? Diameter(FileObject o) => o.Quantity<Length>("rimDiameter", "in", Length.FromMillimetres(100), Length.FromMillimetres(1500));

    internal static Length? Width(FileObject o) => o.Quantity<Length>("rimWidth", "in", Length.FromMillimetres(25), Length.FromMillimetres(800));

    private const int MostSpokes = 60;

    private static SpokePlaces? ReadSpokes(FileObject o) => o.Has("angles") ? ReadUnevenSpokes(o) : ReadEvenSpokes(o);

    /// <summary>Each spoke by its own angle: twin and Y spokes stand in groups.</summary>
    private static SpokePlaces? ReadUnevenSpokes(FileObject o)
    {
        var before = o.Problems.Count;
        WheelAngle[] places = [.. o.Quantities<Angle>("angles", "°", Angle.FromDegrees(-360), Angle.FromDegrees(360)).Select(a => WheelAngle.FromDegrees(a.Degrees)).OrderBy(a => a.Degrees)];
        foreach (var key in new[] { "count", "first" }.Where(o.Has))
        {
            o.Wrong(key, "one-of-two", "Give every spoke's angle in 'angles', or 'count' and 'first' where they are even, one of the two.");
        }

        o.Knows("count", "first");
        o.Done();
        if (o.Problems.Count == before && places.Length is 0 or > MostSpokes)
        {
            o.Wrong("angles", "out-of-range", string.Create(CultureInfo.InvariantCulture, $"There should be 1 to {MostSpokes} angles; there are {places.Length}."));
        }

        if (places.Where((a, i) => places.Length > 1 && Math.Abs((a - places[(i + 1) % places.Length]).Degrees) < 1).Any())
        {
            o.Wrong("angles", "spokes-at-one-place", "Two spokes stand at one place, less than a degree apart: give each spoke once.");
        }

        return o.Problems.Count == before ? SpokePlaces.At(places) : null;
    }

    private static SpokePlaces? ReadEvenSpokes(FileObject o)
    {
        var count = o.Require("count", "say how many spokes there are") ? o.Whole("count", 1, MostSpokes) : null;
        var first = o.Require("first", "give the first spoke's angle from the valve, clockwise seen from outside") ? Place(o, "first") : null;
        o.Done();
        return count is { } c && first is { } f ? new SpokePlaces(c, f) : null;
    }

    /// <summary>A place around the wheel in degrees from the valve; −10 may be written for 350.</summary>
    internal static WheelAngle? Place(FileObject o, string key) =>
        o.Quantity<Angle>(key, "°", Angle.FromDegrees(-360), Angle.FromDegrees(360)) is { } angle ? WheelAngle.FromDegrees(angle.Degrees) : null;

    internal static BalancerProfile ReadNoProfile(out string unit)
    {
        unit = "mm";
        return new BalancerProfile();
    }

    internal static BalancerProfile ReadProfile(FileObject o, out string unit)
    {
        string[] units = ["mm", "cm", "in"];
        unit = units[o.Word("distanceUnit", ("mm", 0), ("cm", 1), ("in", 2)) ?? 0];
        var places = o.Object("weightPlaces");
        var profile = new BalancerProfile
        {
            DistanceZero = o.Quantity<Length>("distanceZero", "mm", LeastAxial, MostAxial) ?? default,
            InnerClip = Offset(places, "innerClip"),
            OuterClip = Offset(places, "outerClip"),
            InnerAdhesive = Offset(places, "innerAdhesive"),
            OuterAdhesive = Offset(places, "outerAdhesive"),
            DisplayStep = o.Quantity<Mass>("displayStep", "g", NoMass, Mass.FromGrams(100)),
            DisplayHidesBelow = o.Quantity<Mass>("displayHidesBelow", "g", NoMass, Mass.FromGrams(100)),
            DisplayAngleStep = o.Quantity<Angle>("displayAngleStep", "°", Angle.FromDegrees(0), Angle.FromDegrees(90)),
            Instrument = o.Text("instrument"),
        };
        places?.Done();
        o.Done();
        return profile;
    }

    private static WeightPlaceOffset? Offset(FileObject? places, string key)
    {
        if (places?.Object(key) is not { } o)
        {
            return null;
        }

        var radial = o.Require("radial", "from half the rim diameter, outwards positive") ? o.Quantity<Length>("radial", "mm", LeastAxial, MostAxial) : null;
        var axial = o.Require("axial", "from the flange of its side, positive towards the outer side") ? o.Quantity<Length>("axial", "mm", LeastAxial, MostAxial) : null;
        o.Done();
        return radial is { } r && axial is { } a ? new WeightPlaceOffset(r, a) : null;
    }

    private static SettingsPart ReadSettings(FileObject o, string unit)
    {
        var settings = new SettingsPart(o.Quantity<Length>("rimDistance", unit, LeastAxial, MostAxial), Diameter(o), Width(o), o.Path);
        o.Done();
        return settings;
    }

    private static List<Finding> Findings(WheelPart wheel, SettingsPart? settings, Assembly? assembly)
    {
        var known = new List<KnownRim>();
        if ((wheel.Rim ?? assembly?.Wheel?.Rim) is { } rim)
        {
            known.Add(KnownRim.Of(rim));
        }

        if ((wheel.Marking ?? assembly?.Tyre?.Marking) is { } marking)
        {
            known.Add(KnownRim.Of(marking));
        }

        return
        [
            .. SettingsCheck.Findings("The balancer's setting", settings?.Diameter, settings?.Width, [.. known, new KnownRim("the wheel's own entry", wheel.Diameter, wheel.Width)]),
            .. SettingsCheck.Findings("The wheel's entry", wheel.Diameter, wheel.Width, known),
        ];
    }

    private static (WeightPlane? Inner, WeightPlane? Outer) ReadPlanes(FileObject o, SettingsPart? settings, BalancerProfile profile)
    {
        if (!o.Require("planes", "say where weights may be fixed, inner and outer") || o.Object("planes") is not { } planes)
        {
            return (null, null);
        }

        var inner = ReadPlane(planes, "inner", PlaneSide.Inner, settings, profile);
        var outer = ReadPlane(planes, "outer", PlaneSide.Outer, settings, profile);
        planes.Done();
        return (inner, outer);
    }

    private static WeightPlane? ReadPlane(FileObject planes, string key, PlaneSide side, SettingsPart? settings, BalancerProfile profile)
    {
        if (!planes.Require(key, "say what holds a weight there: {\"kind\": \"clip\", \"radius\": \"203 mm\", \"axial\": \"0 mm\"}") || planes.Object(key) is not { } o)
        {
            return null;
        }

        var kind = o.Require("kind", "clip or adhesive") ? o.Word("kind", KindWords) : null;
        var places = o.Word("places", ("anywhere", false), ("behindSpokes", true)) ?? false;
        var bySettings = kind is { } k && settings is { Distance: { } d, Diameter: { } e, Width: { } f }
            ? profile.PlaceOf(new BalancerSettings(d, e, f), side, k)
            : null;
        var place = ReadPlace(o, bySettings, settings, kind);
        o.Done();
        return kind is { } read && place is not null ? new WeightPlane(read, place, places) : null;
    }

    private static PlanePlace? ReadPlace(FileObject o, PlanePlace? bySettings, SettingsPart? settings, WeightKind? kind)
    {
        var radius = o.Quantity<Length>("radius", "mm", Length.FromMillimetres(20), Length.FromMillimetres(1000));
        var axial = o.Quantity<Length>("axial", "mm", LeastAxial, MostAxial);
        foreach (var (key, given) in new[] { ("radius", o.Has("radius")), ("axial", o.Has("axial")) })
        {
            if (given || bySettings is not null)
            {
                continue;
            }

            o.Wrong(key, "missing", settings is null
                ? $"'{key}' is missing: measure it at the middle of the weight, or give the balancer's three settings."
                : kind == WeightKind.Adhesive && settings is { Distance: not null, Diameter: not null, Width: not null }
                    ? $"'{key}' is missing: an adhesive weight does not sit at the flange, so measure it, or give its place in balancer.weightPlaces."
                    : $"'{key}' is missing, and the settings need rimDistance, rimDiameter and rimWidth to tell it.");
        }

        if (bySettings is not null && radius is null && bySettings.Radius < Length.FromMillimetres(20))
        {
            o.Wrong("radius", "out-of-range", $"The settings and the profile put this plane at a radius of {bySettings.Radius.Text("mm", 1)}, which cannot be.");
            return null;
        }

        return (radius ?? bySettings?.Radius) is { } r && (axial ?? bySettings?.Axial) is { } a ? new PlanePlace(r, a) : null;
    }

    private static PlanePair? ReadReadingPlanes(FileObject o)
    {
        var places = new[] { "inner", "outer" }.Select(key =>
        {
            if (!o.Require(key, "say where the machine measured: radius and axial") || o.Object(key) is not { } p)
            {
                return null;
            }

            p.Knows("kind", "places");
            var place = ReadPlace(p, null, null, null);
            p.Done();
            return place;
        }).ToList();
        o.Done();
        return places[0] is { } inner && places[1] is { } outer ? Apart(o, "", inner, outer) : null;
    }

    private static PlanePair? Apart(FileObject o, string key, PlanePlace inner, PlanePlace outer)
    {
        if (PlanePair.LieApart(inner, outer))
        {
            return new PlanePair(inner, outer);
        }

        var path = key.Length == 0 ? o.Path : o.PathOf(key);
        o.Problems.Add(new Problem($"{path}.outer.axial", "planes-not-apart", string.Create(CultureInfo.InvariantCulture,
            $"Axial distances grow from the inner to the outer side: the outer plane at {outer.Axial.Millimetres:G6} mm should lie beyond the inner one at {inner.Axial.Millimetres:G6} mm.")));
        return null;
    }

    internal static UnbalancePair? ReadReadings(FileObject o, PlanePair? planes)
    {
        var inner = ReadReading(o, "inner", planes?.Inner);
        var outer = ReadReading(o, "outer", planes?.Outer);
        o.Done();
        return inner is { } i && outer is { } u ? new UnbalancePair(i, u) : null;
    }

    internal static UnbalanceVector? ReadReading(FileObject readings, string key, PlanePlace? plane)
    {
        if (!readings.Require(key, "give the mass to add and its angle: {\"mass\": \"48 g\", \"angle\": 115}") || readings.Object(key) is not { } o)
        {
            return null;
        }

        var mass = o.Require("mass", "give the mass that the balancer shows, \"0 g\" where it shows none") ? o.Quantity<Mass>("mass", "g", NoMass, Mass.FromKilograms(20)) : null;
        var angle = AngleOf(o, mass);
        o.Done();
        return mass is { } m && plane is not null && (angle is not null || m.Si == 0) ? UnbalanceVector.OfMass(m, plane.Radius, angle ?? default) : null;
    }

    /// <summary>The place of a mass: degrees from the valve, or where the valve stands; it may be absent where the mass is nothing.</summary>
    internal static WheelAngle? AngleOf(FileObject o, Mass? mass)
    {
        if (o.Node("angle") is { Kind: NodeKind.Object } told)
        {
            var clock = new FileObject(told, o.Problems);
            var place = clock.Require("valveAt", "say where the valve stands when the place to add is at twelve, for example \"4:30\"") ? clock.Value("valveAt", ClockFace.PlaceAtTwelve) : null;
            clock.Done();
            return place;
        }

        return mass is { Si: 0 } || o.Require("angle", "degrees from the valve, clockwise seen from outside, or {\"valveAt\": \"4:30\"}") ? Place(o, "angle") : null;
    }
}
