using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Uniformity;
using Trundle.Engine.Uniformity.Matching;
using Trundle.Measures;

namespace Trundle.Visits.Files;

/// <summary>Reads the file of <c>match</c>: tyres and wheels with what was measured of each, or mountings of one assembly.</summary>
public static class MatchFileReader
{
    private const int MostParts = 60;
    private const int MostMountings = 36;

    /// <summary>Reads a file's root; null where a problem was added.</summary>
    public static MatchFile? Read(FileNode root, List<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(root);
        ArgumentNullException.ThrowIfNull(problems);
        var o = new FileObject(root, problems);
        var on = o.Require("on", "say what is matched on: forceVariation, runout or unbalance")
            ? o.Word("on", ("forceVariation", MatchQuantity.ForceVariation), ("runout", MatchQuantity.Runout), ("unbalance", MatchQuantity.Unbalance))
            : null;
        var aim = o.Word("objective", ("worst", MatchAim.WorstThenSum), ("sum", MatchAim.Sum)) ?? MatchAim.WorstThenSum;
        var peakToPeak = o.Word("amplitude", ("zeroToPeak", false), ("peakToPeak", true)) ?? false;
        var studs = o.Whole("studs", 2, 20);
        var step = o.Quantity<Angle>("turnStep", "°", Angle.FromDegrees(0.5), Angle.FromDegrees(180));
        if (studs is not null && step is not null)
        {
            o.Wrong("turnStep", "turns-told-twice", "A wheel on a hub turns by whole studs: give 'studs' or 'turnStep', not both.");
        }

        var stiffness = ReadStiffness(o);
        o.Knows("keepUnlessGain", "makerLimit", "makerLimitSource", "mountings", "repeatability");
        var (tyres, wheels) = (new List<MatchItem>(), new List<MatchItem>());
        if (o.Has("mountings"))
        {
            foreach (var key in new[] { "tyres", "wheels", "studs", "keepUnlessGain" }.Where(o.Has))
            {
                o.Wrong(key, "mountings-or-parts", $"'{key}' does not belong to a file with 'mountings': those are of one tyre on one wheel.");
            }
        }
        else
        {
            tyres = ReadItems(o, "tyres", true);
            wheels = ReadItems(o, "wheels", false);
            NamesAgree(o, tyres, wheels);
        }

        var (tyre, wheel) = (o.Object("tyre") is { } t ? VisitFileReader.ReadTyre(t) : null, o.Object("wheel") is { } w ? VisitFileReader.ReadWheel(w) : null);
        if (!o.Has("mountings") && (tyre is not null || wheel is not null))
        {
            o.Wrong(tyre is not null ? "tyre" : "wheel", "mountings-or-parts", "'tyre' and 'wheel' at the root belong to 'mountings'; in a set they stand in each of 'tyres' and 'wheels'.");
        }

        o.Done();
        if (problems.Count > 0 || on is not { } quantity)
        {
            return null;
        }

        var file = new MatchFile
        {
            On = quantity,
            Aim = aim,
            PeakToPeak = peakToPeak,
            TurnStep = studs is { } s ? Angle.FromDegrees(360.0 / s) : step,
            Studs = studs,
            Stiffness = stiffness,
            Tyres = tyres,
            Wheels = wheels,
            Root = o,
        };
        return o.Has("mountings") ? file with { Root = o, Tyres = [], Wheels = [new MatchItem("1", "") { Tyre = tyre, Wheel = wheel }] } : file;
    }

    /// <summary>The problem of a set in its quantity, where every part has it; null where a problem was added.</summary>
    internal static MatchProblem<T>? Problem<T>(MatchFile file, string unit, string key, Func<MatchItem, MeasuredPart<T>?> of) where T : struct, IQuantity<T>
    {
        var o = file.Root;
        var keep = o.Quantity<T>("keepUnlessGain", unit, T.FromSi(0), Quantity.Of<T>(10_000_000, unit));
        foreach (var item in file.Tyres.Concat(file.Wheels).Where(i => of(i) is null))
        {
            o.Problems.Add(new Problem(item.Path, "missing", key == "force"
                ? $"'force' is missing: give {{\"amplitude\": \"80 N\", \"highPoint\": 130}}, or 'runout' here and 'radialStiffness' for the set."
                : $"'{key}' is missing: everything is matched on it, so each tyre and wheel needs it."));
        }

        if (o.Problems.Count > 0)
        {
            return null;
        }

        var wheels = file.Wheels.Select(w => new MatchPart<T>(w.Name, of(w)!.Planes, of(w)!.PlaceKnown)).ToList();
        int Wheel(string name) => wheels.FindIndex(w => w.Name == name);
        var tyres = file.Tyres.Select(t => new MatchPart<T>(t.Name, of(t)!.Planes, of(t)!.PlaceKnown)
        {
            SitsOn = t.SitsOn is { } sits ? Wheel(sits) : null,
            MayGoOn = t.MayGoOn is { } may ? [.. may.Select(Wheel)] : null,
        }).ToList();
        var planes = wheels[0].Planes.Count;
        foreach (var (part, path) in tyres.Zip(file.Tyres, (p, i) => (p, i.Path)).Concat(wheels.Zip(file.Wheels, (p, i) => (p, i.Path))))
        {
            if (part.Planes.Count != planes)
            {
                o.Problems.Add(new Problem($"{path}.{key}", "planes-differ", "Some parts have their unbalance in two planes and some in one; give all alike."));
            }
            else if (!part.PlaceKnown && (planes > 1 || file.TurnStep is not null || tyres.Any(t => t.SitsOn is not null)))
            {
                o.Problems.Add(new Problem($"{path}.{key}", "place-needed", "Its place is needed here (with two planes, steps of turning, or tyres that sit on their wheels): give its angle."));
            }
        }

        return o.Problems.Count > 0 ? null : new MatchProblem<T> { Tyres = tyres, Wheels = wheels, Aim = file.Aim, TurnStep = file.TurnStep, KeepUnlessGain = keep };
    }

    /// <summary>Mountings of one assembly; null where a problem was added.</summary>
    internal static (IReadOnlyList<Mounting<T>> Mountings, T? Repeatability)? Mountings<T>(MatchFile file, string unit) where T : struct, IQuantity<T>
    {
        var o = file.Root;
        var repeatability = o.Quantity<T>("repeatability", unit, T.FromSi(0), Quantity.Of<T>(1_000_000, unit));
        var mountings = new List<Mounting<T>>();
        var seen = 0;
        foreach (var m in o.Objects("mountings").Take(MostMountings))
        {
            var turn = m.Require("turn", "say how far the tyre stands turned on the wheel since the first mounting, clockwise as seen from outside; 0 for the first") ? RunoutFileReader.Place(m, "turn") : null;
            RunoutFileReader.FirstIsZero(m, turn, seen++);
            if (m.Require("assembly", "give the assembly's first harmonic and its place") && m.Object("assembly") is { } a)
            {
                var vector = ReadVector<T>(a, unit);
                a.Done();
                if (vector is { PlaceKnown: false })
                {
                    a.Wrong(AngleKey<T>(), "missing", $"'{AngleKey<T>()}' is missing: parting tyre and wheel needs the place.");
                }

                if (vector is not null && turn is { } t)
                {
                    mountings.Add(new Mounting<T>(Angle.FromDegrees(t.Degrees), vector.Planes[0]));
                }
            }

            m.Done();
        }

        if (o.Problems.Count == 0 && mountings.Count < 2)
        {
            o.Wrong("mountings", "too-few-mountings", "Parting tyre and wheel takes at least two mountings with the tyre turned in between.");
        }

        return o.Problems.Count > 0 ? null : (mountings, repeatability);
    }

    /// <summary>The maker's limit in the set's quantity, or null.</summary>
    internal static Limit? MakerLimit<T>(FileObject o, string unit, int decimals) where T : struct, IQuantity<T>
    {
        var limit = o.Quantity<T>("makerLimit", unit, T.FromSi(0), Quantity.Of<T>(10_000_000, unit));
        return limit is { } l ? new Limit(Amount.Of(l, unit, decimals), Source.Entered(o.Text("makerLimitSource") ?? "the maker's own limit, as entered")) : null;
    }

    internal static Problem TooSmall<T>(PartingOutcome<T>.TurnTooSmall small) where T : struct, IQuantity<T> => new(
        "", "turn-too-small", $"The tyre was turned too little between the mountings to part it from the wheel: turn it by {Quantity.Number(small.Least.Degrees, 0)}° at least, best by half a turn.");

    internal static Problem WithinRepeatability(string difference) => new(
        "", "within-repeatability", $"The mountings differ by no more than {difference}, less than the gauge repeats: they tell nothing of tyre and wheel apart.");

    private static SourcedStiffness? ReadStiffness(FileObject o)
    {
        var given = o.Quantity<Stiffness>("radialStiffness", "N/mm", Stiffness.FromNewtonsPerMillimetre(10), Stiffness.FromNewtonsPerMillimetre(5000));
        SourcedStiffness? estimate = null;
        if (o.Object("stiffnessFrom") is { } from)
        {
            var marking = from.Require("marking", "give the tyre's marking, for example \"205/55 R16 91V\"") ? from.Reference("marking", MarkingReader.Read) : null;
            var pressure = from.Require("pressure", "give the pressure at which the tyre runs, for example \"220 kPa\"")
                ? from.Quantity<GaugePressure>("pressure", "kPa", GaugePressure.FromKilopascals(50), GaugePressure.FromKilopascals(1000))
                : null;
            from.Done();
            if (given is not null)
            {
                o.Wrong("stiffnessFrom", "stiffness-twice", "Give 'radialStiffness' where it is known, or 'stiffnessFrom' to estimate it, not both.");
            }
            else if (marking is not null && pressure is { } p)
            {
                estimate = RadialStiffness.Estimate(marking.Size, p);
                if (estimate is null)
                {
                    from.Wrong("marking", "size-tells-too-little", "The stiffness cannot be estimated from this size, which lacks width, aspect ratio or rim: give 'radialStiffness'.");
                }
            }
        }

        return given is { } k ? new SourcedStiffness(k, Source.Entered("radial stiffness, as entered")) : estimate;
    }

    private static List<MatchItem> ReadItems(FileObject o, string key, bool tyres)
    {
        var items = new List<MatchItem>();
        if (!o.Require(key, tyres ? "list the tyres with what was measured of each" : "list the wheels with what was measured of each"))
        {
            return items;
        }

        foreach (var item in o.Objects(key).Take(MostParts + 1))
        {
            var id = item.Require("id", "give it a name that stands on it in chalk") ? item.Text("id") : null;
            var read = new MatchItem(id ?? "", item.Path)
            {
                Force = item.Object("force") is { } f ? Whole<Force>(f, "N") : null,
                Runout = item.Object("runout") is { } r ? Whole<Length>(r, "mm") : null,
                Unbalance = item.Object("unbalance") is { } u ? ReadUnbalance(u) : null,
                SitsOn = tyres ? item.Text("sitsOn") : null,
                MayGoOn = tyres && item.Has("mayGoOn") ? item.Texts("mayGoOn") : null,
                Lateral = tyres && item.Object("lateralForce") is { } l ? ReadLateral(l) : null,
                Tyre = tyres && item.Object("tyre") is { } t ? VisitFileReader.ReadTyre(t) : null,
                Wheel = !tyres && item.Object("wheel") is { } w ? VisitFileReader.ReadWheel(w) : null,
            };
            item.Done();
            items.Add(read);
        }

        if (items.Count is 0 or > MostParts)
        {
            o.Wrong(key, items.Count == 0 ? "empty" : "too-many", string.Create(CultureInfo.InvariantCulture, $"There should be 1 to {MostParts} {key}."));
        }

        return items;
    }

    private static void NamesAgree(FileObject o, List<MatchItem> tyres, List<MatchItem> wheels)
    {
        foreach (var list in new[] { tyres, wheels })
        {
            foreach (var twice in list.GroupBy(i => i.Name, StringComparer.Ordinal).Where(g => g.Key.Length > 0 && g.Count() > 1))
            {
                o.Problems.Add(new Problem($"{twice.Last().Path}.id", "id-twice", $"'{NumberText.Shown(twice.Key)}' stands twice; give each a name of its own."));
            }
        }

        foreach (var tyre in tyres)
        {
            foreach (var (key, name) in (tyre.MayGoOn ?? []).Select(n => ("mayGoOn", n)).Concat(tyre.SitsOn is { } s ? [("sitsOn", s)] : []))
            {
                if (wheels.All(w => w.Name != name))
                {
                    o.Problems.Add(new Problem($"{tyre.Path}.{key}", "wheel-unknown", $"'{NumberText.Shown(name)}' is not one of the wheels, {ChoiceText.Of(wheels.Take(10).Select(w => w.Name), "and")}."));
                }
            }
        }

        foreach (var twice in tyres.Where(t => t.SitsOn is not null).GroupBy(t => t.SitsOn!, StringComparer.Ordinal).Where(g => g.Count() > 1))
        {
            o.Problems.Add(new Problem($"{twice.Last().Path}.sitsOn", "wheel-taken", $"Another tyre sits on wheel '{NumberText.Shown(twice.Key)}' already."));
        }
    }

    private static MeasuredPart<T>? Whole<T>(FileObject o, string unit) where T : struct, IQuantity<T>
    {
        var part = ReadVector<T>(o, unit);
        o.Done();
        return part;
    }

    private static MeasuredPart<Unbalance>? ReadUnbalance(FileObject o)
    {
        if (!o.Has("inner") && !o.Has("outer"))
        {
            return Whole<Unbalance>(o, "g·mm");
        }

        var planes = new List<HarmonicVector<Unbalance>>();
        foreach (var key in new[] { "inner", "outer" })
        {
            if (o.Require(key, "give both planes, or one 'amount' and 'heavyPoint' for the static part") && o.Object(key) is { } plane && ReadVector<Unbalance>(plane, "g·mm") is { } read)
            {
                plane.Done();
                planes.AddRange(read.Planes);
                if (!read.PlaceKnown)
                {
                    plane.Wrong("heavyPoint", "missing", "'heavyPoint' is missing: with two planes the place is needed.");
                }
            }
        }

        o.Done();
        return planes.Count == 2 ? new MeasuredPart<Unbalance>(planes, true) : null;
    }

    private static string AngleKey<T>() => typeof(T) == typeof(Unbalance) ? "heavyPoint" : "highPoint";

    private static MeasuredPart<T>? ReadVector<T>(FileObject o, string unit) where T : struct, IQuantity<T>
    {
        var key = typeof(T) == typeof(Unbalance) ? "amount" : "amplitude";
        var amount = o.Require(key, $"give its size, for example \"10 {unit}\"") ? o.Quantity<T>(key, unit, T.FromSi(0), Quantity.Of<T>(10_000_000, unit)) : null;
        var place = RunoutFileReader.Place(o, AngleKey<T>());
        return amount is { } a ? new MeasuredPart<T>([HarmonicVector<T>.At(a, place ?? default)], place is not null || a.Si == 0) : null;
    }

    private static LateralForceParts? ReadLateral(FileObject o)
    {
        var most = Force.FromKilonewtons(100);
        var one = o.Require("clockwise", "give the mean lateral force turning clockwise") ? o.Quantity("clockwise", "N", (Force?)(-1 * most), most) : null;
        var other = o.Require("anticlockwise", "give the mean lateral force turning anticlockwise, in the same direction") ? o.Quantity("anticlockwise", "N", (Force?)(-1 * most), most) : null;
        o.Done();
        return one is { } c && other is { } a ? LateralForceParts.Of(c, a) : null;
    }
}
