using System.Globalization;
using Trundle.Engine.Balance;
using Trundle.Engine.Balance.Machine;
using Trundle.Measures;

namespace Trundle.Visits.Files;

/// <summary>The tests of a balancer as read.</summary>
/// <param name="Spins">The tests.</param>
/// <param name="Assembly">Mass of the assembly that was spun, or null where nobody gave it.</param>
/// <param name="InertiaDifference">Its moment of inertia about the shaft less that about a diameter, or null.</param>
/// <param name="Apart">Distance of the planes, or null where nobody gave where they lie.</param>
/// <param name="Permissible">The unbalance that wheels are passed with on this machine, a plane, or null.</param>
internal sealed record MachineFile(MachineSpins Spins, Mass? Assembly, MomentOfInertia? InertiaDifference, Length? Apart, Mass? Permissible);

/// <summary>Reads the file of <c>balance machine</c>.</summary>
internal static class MachineFileReader
{
    private const int MostSpins = 400;
    private static readonly string[] Tests = ["traverse", "knownMass", "index", "repeat", "shop"];
    private static readonly Mass LeastMass = Mass.FromGrams(0.001);
    private static readonly Mass MostMass = Mass.FromKilograms(20);

    /// <summary>Reads a file's root; null where a problem was added.</summary>
    public static MachineFile? Read(FileNode root, List<Problem> problems)
    {
        var before = problems.Count;
        var o = new FileObject(root, problems);
        var (inner, outer, apart) = o.Require("planes", "give the radius at which the masses sit: {\"inner\": {\"radius\": \"200 mm\"}, \"outer\": {\"radius\": \"200 mm\"}}") && o.Object("planes") is { } p
            ? ReadPlanes(p) : default;
        var rotor = o.Object("rotor");
        var assembly = rotor?.Quantity<Mass>("mass", "kg", Mass.FromGrams(10), Mass.FromKilograms(10_000));
        var inertia = rotor?.Quantity<MomentOfInertia>("inertiaDifference", "kg·m²", MomentOfInertia.FromKilogramSquareMetres(-1000), MomentOfInertia.FromKilogramSquareMetres(1000));
        rotor?.Done();
        var profile = o.Object("balancer") is { } b ? BalanceFileReader.ReadProfile(b, out _) : new BalancerProfile();
        var spins = new MachineSpins { InnerRadius = inner, OuterRadius = outer, Profile = profile };
        spins = o.Object("traverse") is { } t ? spins with { Traverse = ReadTraverse(t, spins) } : spins;
        if (o.Object("knownMass") is { } k)
        {
            spins = spins with { ReductionPercent = k.Percent("reductionRatio", 0, 100), Known = ReadKnown(k, spins) };
            k.Done();
        }

        if (o.Object("index") is { } i)
        {
            spins = spins with { FixtureLimit = i.Quantity<Mass>("limit", "g", LeastMass, MostMass), Index = ReadIndex(i, spins) };
            i.Done();
        }

        if (o.Object("repeat") is { } r)
        {
            spins = spins with { RepeatLimit = r.Quantity<Mass>("limit", "g", LeastMass, MostMass), Repeats = ReadSpins(r, "spins", spins, 3) };
            r.Done();
        }

        spins = o.Object("shop") is { } s ? spins with { Shop = ReadShop(s, spins) } : spins;
        var permissible = o.Quantity<Mass>("permissible", "g", LeastMass, MostMass);
        o.Done();

        // Last, so that the name of a test with a letter missing is answered by the name meant.
        if (problems.Count == before && Tests.All(t => !o.Has(t)))
        {
            o.Wrong(Tests[^1], "missing", "There is no test here; give at least one of traverse, knownMass, index, repeat and shop.");
        }

        return problems.Count == before ? new MachineFile(spins, assembly, inertia, apart, permissible) : null;
    }

    private static (Length Inner, Length Outer, Length? Apart) ReadPlanes(FileObject o)
    {
        var (inner, innerAxial) = Plane("inner");
        var (outer, outerAxial) = Plane("outer");
        o.Done();
        if (innerAxial is not null && outerAxial is not null && outerAxial <= innerAxial)
        {
            o.Wrong("outer.axial", "planes-not-apart", "The outer plane lies further out than the inner one: axial grows from the inner to the outer side.");
        }

        return (inner, outer, outerAxial - innerAxial);

        (Length Radius, Length? Axial) Plane(string side)
        {
            if (!o.Require(side, "give its radius: {\"radius\": \"200 mm\"}") || o.Object(side) is not { } plane)
            {
                return default;
            }

            var radius = plane.Require("radius", "from the axis to the middle of the mass, for example \"200 mm\"")
                ? plane.Quantity<Length>("radius", "mm", Length.FromMillimetres(10), Length.FromMillimetres(3000)) : null;
            var axial = plane.Quantity<Length>("axial", "mm", Length.FromMillimetres(-3000), Length.FromMillimetres(3000));
            plane.Done();
            return (radius ?? default, axial);
        }
    }

    private static Dictionary<PlaneSide, TraverseSpins> ReadTraverse(FileObject o, MachineSpins radii)
    {
        var found = new Dictionary<PlaneSide, TraverseSpins>();
        foreach (var (key, side) in new[] { ("inner", PlaneSide.Inner), ("outer", PlaneSide.Outer) })
        {
            if (o.Object(key) is not { } plane)
            {
                continue;
            }

            var mass = plane.Require("testMass", "give the mass that was put at the twelve places: ten times the least unbalance that the machine should reach, over the radius")
                ? plane.Quantity<Mass>("testMass", "g", LeastMass, MostMass) : null;
            var claim = plane.Quantity<Unbalance>("minimumAchievable", "g·mm", Unbalance.FromGramMillimetres(0.001), Unbalance.FromKilogramMetres(1));
            if (plane.Require("shown", "list the twelve amounts in order of their places"))
            {
                var shown = plane.Quantities<Mass>("shown", "g", default(Mass), MostMass);
                if (plane.Items("shown").Count != TraverseTest.Places)
                {
                    plane.Wrong("shown", "not-twelve", string.Create(CultureInfo.InvariantCulture, $"There are {plane.Items("shown").Count} amounts; the test takes {TraverseTest.Places}, 30° apart."));
                }
                else if (mass is { } m)
                {
                    found[side] = new TraverseSpins(m, shown);
                }
            }

            if (claim is { } stated && mass is { } put && o.Problems.Count == 0 && radii.RadiusOf(side) is var radius
                && Math.Abs((put.Grams * radius.Millimetres / (10 * stated.GramMillimetres)) - 1) > 0.02)
            {
                plane.Wrong("testMass", "not-ten-times", string.Create(CultureInfo.InvariantCulture,
                    $"{put} is not ten times {stated} at {radius.Millimetres:0.#} mm; put {10 * stated.GramMillimetres / radius.Millimetres:0.##} g there, or leave minimumAchievable out."));
            }

            plane.Done();
        }

        o.Done();
        if (found.Count == 0 && o.Problems.Count == 0)
        {
            o.Problems.Add(new Problem(o.Path, "missing", "Give the inner or the outer plane, or both: {\"inner\": {\"testMass\": \"20 g\", \"shown\": [twelve amounts]}}."));
        }

        return found;
    }

    private static List<KnownSpin> ReadKnown(FileObject o, MachineSpins radii)
    {
        var known = new List<KnownSpin>();
        var plain = o.Require("base", "give what the machine showed before any mass went on") && o.Object("base") is { } b ? ReadDisplay(b, radii) : null;
        if (o.Require("spins", "list the spins, each with the masses that were on"))
        {
            foreach (var spin in o.Objects("spins").Take(MostSpins))
            {
                var added = ReadAdded(spin, radii);
                var found = spin.Require("display", "give what the machine showed: {\"inner\": {\"mass\": …, \"angle\": …}, \"outer\": {…}}") && spin.Object("display") is { } d ? ReadDisplay(d, radii) : null;
                spin.Done();
                if (added is { } a && found is { } f && plain is { } before)
                {
                    known.Add(new KnownSpin(a, f - before));
                }
            }

            if (o.Items("spins").Count == 0)
            {
                o.Wrong("spins", "too-few-spins", "There should be at least one spin with a known mass.");
            }
        }

        return known;
    }

    /// <summary>The unbalance of the masses listed under <c>added</c>; several in one plane add up.</summary>
    internal static UnbalancePair? ReadAdded(FileObject spin, MachineSpins radii)
    {
        if (!spin.Require("added", "list what was on: [{\"plane\": \"inner\", \"mass\": \"85 g\", \"angle\": 90}]"))
        {
            return null;
        }

        var sum = default(UnbalancePair);
        var whole = true;
        foreach (var o in spin.Objects("added"))
        {
            if (ReadMass(o, radii) is not { } one)
            {
                whole = false;
                continue;
            }

            sum += one.Side == PlaneSide.Inner ? new UnbalancePair(one.Unbalance, default) : new UnbalancePair(default, one.Unbalance);
        }

        if (spin.Items("added").Count == 0)
        {
            spin.Wrong("added", "missing", "Nothing was added; list the masses, or leave the spin out.");
            return null;
        }

        return whole ? sum : null;
    }

    private static (PlaneSide Side, UnbalanceVector Unbalance)? ReadMass(FileObject o, MachineSpins radii)
    {
        var plane = o.Require("plane", "inner or outer") ? o.Word("plane", ("inner", PlaneSide.Inner), ("outer", PlaneSide.Outer)) : null;
        var mass = o.Require("mass", "for example \"85 g\"") ? o.Quantity<Mass>("mass", "g", LeastMass, MostMass) : null;
        var angle = o.Require("angle", "degrees, clockwise seen from outside") ? o.Quantity<Angle>("angle", "°", Angle.FromDegrees(-720), Angle.FromDegrees(720)) : null;
        o.Done();
        return plane is { } p && mass is { } m && angle is { } a ? (p, UnbalanceVector.OfMass(m, radii.RadiusOf(p), WheelAngle.FromDegrees(a.Degrees))) : null;
    }

    private static List<(Angle, UnbalancePair)> ReadIndex(FileObject o, MachineSpins radii)
    {
        var fromValve = o.Require("anglesFrom", "say whether the angles shown count from the shaft or from the wheel's valve: \"shaft\" or \"valve\"") ? o.Word("anglesFrom", ("shaft", false), ("valve", true)) : null;
        var spins = new List<(Angle Turned, UnbalancePair)>();
        if (!o.Require("spins", "list the spins, each with how far the wheel was turned on the shaft"))
        {
            return spins;
        }

        foreach (var spin in o.Objects("spins").Take(MostSpins))
        {
            var turned = spin.Require("turned", "by how many degrees the wheel is turned on the shaft from the first spin, clockwise seen from outside") ? spin.Quantity<Angle>("turned", "°", Angle.FromDegrees(-720), Angle.FromDegrees(720)) : null;
            var found = spin.Require("display", "give what the machine showed") && spin.Object("display") is { } d ? ReadDisplay(d, radii) : null;
            spin.Done();
            if (turned is { } t && found is { } f)
            {
                spins.Add((t, fromValve == true ? new UnbalancePair(Turned(f.Inner, t), Turned(f.Outer, t)) : f));
            }
        }

        if (o.Problems.Count == 0 && (spins.Count < 2 || spins.All(s => Math.Abs((WheelAngle.FromDegrees(s.Turned.Degrees) - WheelAngle.FromDegrees(spins[0].Turned.Degrees)).Degrees) <= 1)))
        {
            o.Wrong("spins", "index-not-turned", "The wheel sat in one position on the shaft in every spin: that says nothing of the fixture. Turn it on the shaft, best by 180°, and spin again.");
        }

        return spins;

        // From the valve to the shaft: the valve itself stands at the turn.
        static UnbalanceVector Turned(UnbalanceVector of, Angle turn) => UnbalanceVector.At(of.Amount, of.Place + turn);
    }

    private static ShopSpins ReadShop(FileObject o, MachineSpins radii)
    {
        var empty = o.Object("empty") is { } e ? ReadDisplay(e, radii) : null;
        var added = o.Object("added") is { } a ? ReadMass(a, radii) : null;
        var found = o.Object("display") is { } d ? ReadDisplay(d, radii) : null;
        if (o.Has("added") != o.Has("display"))
        {
            o.Wrong(o.Has("added") ? "display" : "added", "missing", "'added' and 'display' belong together: the mass that was put on the balanced wheel, and what the machine then showed.");
        }

        var shop = new ShopSpins { Empty = empty, Added = added, Found = found, Repeats = ReadSpins(o, "repeats", radii, 5), Quarters = ReadSpins(o, "fourPlaces", radii, 4) };
        o.Done();
        if (o.Problems.Count == 0 && shop is { Empty: null, Added: null, Repeats.Count: 0, Quarters.Count: 0 })
        {
            o.Problems.Add(new Problem(o.Path, "missing", "Give at least one part of the test: empty, added with display, repeats, fourPlaces."));
        }

        return shop;
    }

    private static List<UnbalancePair> ReadSpins(FileObject o, string key, MachineSpins radii, int least)
    {
        var spins = new List<UnbalancePair>();
        foreach (var item in o.Objects(key).Take(MostSpins))
        {
            if (ReadDisplay(item, radii) is { } found)
            {
                spins.Add(found);
            }
        }

        var given = o.Items(key).Count;
        if (given < least && (given > 0 || key == "spins"))
        {
            o.Wrong(key, "too-few-spins", string.Create(CultureInfo.InvariantCulture, $"There {(given == 1 ? "is 1 spin" : $"are {given} spins")}; at least {least} are needed."));
        }

        return spins;
    }

    /// <summary>What the machine shows is what to ADD; the unbalance found is opposite.</summary>
    private static UnbalancePair? ReadDisplay(FileObject o, MachineSpins radii)
    {
        var inner = BalanceFileReader.ReadReading(o, "inner", new PlanePlace(radii.InnerRadius, default));
        var outer = BalanceFileReader.ReadReading(o, "outer", new PlanePlace(radii.OuterRadius, default));
        o.Done();
        return inner is { } i && outer is { } u ? new UnbalancePair(i, u).Opposite : null;
    }
}
