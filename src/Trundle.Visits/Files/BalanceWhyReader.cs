using System.Globalization;
using Trundle.Engine.Balance;
using Trundle.Engine.Balance.Machine;
using Trundle.Engine.Balance.Why;
using Trundle.Measures;

namespace Trundle.Visits.Files;

/// <summary>Reads the file of <c>balance why</c>.</summary>
internal static class BalanceWhyReader
{
    private static readonly Mass LeastRepeatability = Mass.FromGrams(0.001);
    private const int MostSpins = 40;
    private const int MostWeights = 80;
    private static readonly (string, PlaneSide)[] PlaneWords = [("inner", PlaneSide.Inner), ("outer", PlaneSide.Outer)];

    /// <summary>Reads a file's root; null where a problem was added.</summary>
    public static WhyProblem? Read(FileNode root, List<Problem> problems)
    {
        var o = new FileObject(root, problems);
        var unit = "mm";
        var profile = o.Object("balancer") is { } b ? BalanceFileReader.ReadProfile(b, out unit) : BalanceFileReader.ReadNoProfile(out unit);
        var entered = o.Require("entered", "give the settings entered: {\"rimDistance\": \"60 mm\", \"rimDiameter\": \"16 in\", \"rimWidth\": \"7 in\"}") && o.Object("entered") is { } e
            ? ReadEntered(e, unit) : null;
        var planes = entered is null ? null : Planes(o, entered, profile);
        var machine = o.Require("machine", "give the balancer's {\"repeatability\": \"1.5 g\"}, and its \"transducers\" where known") && o.Object("machine") is { } m
            ? ReadMachine(m) : null;
        var again = o.Object("measuredAgain") is { } a ? ReadAgain(a, unit) : MeasuredAgain.Nothing;
        var wheelMass = o.Object("wheel") is { } w ? ReadWheel(w) : null;
        var spins = o.Require("spins", "list the spins in order, each with its display and what was fitted after it") ? ReadSpins(o, planes) : [];
        o.Done();
        var (step, from) = profile.DisplayStep is { } told ? (told, DisplayStepFrom.Told)
            : TypedDigits.CoarseStep(root) is { } coarse ? (coarse, DisplayStepFrom.Values)
            : (TypedDigits.MassStep(root), DisplayStepFrom.Digits);
        return problems.Count == 0 && entered is not null && machine is { Repeatability: { } repeatability }
            ? new WhyProblem
            {
                Entered = entered.Settings,
                InnerKind = entered.Inner,
                OuterKind = entered.Outer,
                Units = entered.Units,
                Profile = profile with { DisplayStep = step },
                DisplayStepFrom = from,
                AngleStep = TypedDigits.AngleStep(root),
                Transducers = machine.Transducers,
                Repeatability = repeatability,
                WheelMass = wheelMass,
                MeasuredAgain = again,
                Spins = spins,
            }
            : null;
    }

    private sealed record Entered(BalancerSettings Settings, WeightKind Inner, WeightKind Outer, (string, string, string) Units);

    private sealed record Machine(Mass? Repeatability, (Length, Length)? Transducers);

    private static Entered? ReadEntered(FileObject o, string unit)
    {
        var distance = o.Require("rimDistance", "give what the distance scale was set to, for example \"60 mm\"") ? Distance(o, unit) : null;
        var diameter = o.Require("rimDiameter", "give the rim diameter entered, for example \"16 in\"") ? BalanceFileReader.Diameter(o) : null;
        var width = o.Require("rimWidth", "give the rim width entered, for example \"7 in\"") ? BalanceFileReader.Width(o) : null;
        var inner = o.Word("inner", BalanceFileReader.KindWords) ?? WeightKind.Clip;
        var outer = o.Word("outer", BalanceFileReader.KindWords) ?? WeightKind.Clip;
        var units = (UnitOf(o, "rimDistance", unit), UnitOf(o, "rimDiameter", "in"), UnitOf(o, "rimWidth", "in"));
        o.Done();
        return distance is { } d && diameter is { } e && width is { } w ? new Entered(new BalancerSettings(d, e, w), inner, outer, units) : null;
    }

    private static Length? Distance(FileObject o, string unit) => o.Quantity<Length>("rimDistance", unit, BalanceFileReader.LeastAxial, BalanceFileReader.MostAxial);

    /// <summary>The unit that a length was typed in, so that the true setting is told in it.</summary>
    private static string UnitOf(FileObject o, string key, string bare)
    {
        var text = o.Node(key)?.Text.TrimEnd() ?? "";
        return text.Length == 0 || char.IsAsciiDigit(text[^1]) ? bare
            : text.EndsWith("cm", StringComparison.OrdinalIgnoreCase) ? "cm"
            : text.EndsWith("mm", StringComparison.OrdinalIgnoreCase) ? "mm"
            : text.EndsWith("in", StringComparison.OrdinalIgnoreCase) || text.EndsWith('"') || text.EndsWith('″') || text.EndsWith('”') || text.Contains("inch", StringComparison.OrdinalIgnoreCase) ? "in"
            : bare;
    }

    private static PlanePair? Planes(FileObject o, Entered entered, BalancerProfile profile)
    {
        foreach (var (key, side, kind) in new[] { ("inner", PlaneSide.Inner, entered.Inner), ("outer", PlaneSide.Outer, entered.Outer) })
        {
            var place = profile.PlaceOf(entered.Settings, side, kind);
            if (place is null)
            {
                o.Problems.Add(new Problem($"entered.{key}", "place-unknown", $"An adhesive weight does not sit at the flange: give its place in balancer.weightPlaces.{key}Adhesive."));
                return null;
            }

            if (place.Radius < Length.FromMillimetres(20))
            {
                o.Problems.Add(new Problem("entered.rimDiameter", "out-of-range", $"The settings and the profile put the {key} plane at a radius of {place.Radius.Text("mm", 1)}, which cannot be."));
                return null;
            }
        }

        var planes = WhyProblem.Planes(entered.Settings, profile, entered.Inner, entered.Outer);
        if (planes is null || planes.Apart < Length.FromMillimetres(10))
        {
            o.Problems.Add(new Problem("entered.rimWidth", "planes-not-apart", "The settings and the profile put the outer plane less than 10 mm beyond the inner one; two planes so near cannot be told apart."));
            return null;
        }

        return planes;
    }

    private static Machine ReadMachine(FileObject o)
    {
        var repeatability = o.Has("check") ? Repeatability(o)
            : o.Require("repeatability", "give one standard deviation of what the display shows, for example \"1.5 g\": spin one wheel ten times, change nothing, and see by how much it differs; or give those spins as 'check'")
            ? o.Quantity<Mass>("repeatability", "g", LeastRepeatability, Mass.FromGrams(1000)) : null;
        var transducers = o.Quantities<Length>("transducers", "mm", BalanceFileReader.LeastAxial, BalanceFileReader.MostAxial);
        if (o.Has("transducers") && o.Node("transducers")!.Kind == NodeKind.Array && (o.Node("transducers")!.Items.Count != 2 || (transducers.Count == 2 && Math.Abs((transducers[0] - transducers[1]).Millimetres) < 1)))
        {
            o.Wrong("transducers", "two-transducers", "Here should stand the distances of two transducers along the shaft, not at one place, for example [\"-120 mm\", \"-280 mm\"].");
        }

        o.Done();
        return new Machine(repeatability, transducers.Count == 2 ? (transducers[0], transducers[1]) : null);
    }

    /// <summary>The repeatability of the plane that repeats worse, by a file of <c>balance machine</c> that holds a repeat-spin study.</summary>
    private static Mass? Repeatability(FileObject o)
    {
        var node = o.Node("check")!;
        if (o.Has("repeatability"))
        {
            o.Wrong("check", "one-of-two", "Give 'repeatability', or the 'check' that it follows from, one of the two.");
            return null;
        }

        if (MachineFileReader.Read(node, o.Problems) is not { Spins: var spins })
        {
            return null;
        }

        if (spins.Repeats.Count == 0)
        {
            o.Wrong("check.repeat", "missing", "'repeat' is missing: the displays of one assembly, spun one after the other with nothing changed, tell the repeatability.");
            return null;
        }

        var worse = new[] { (PlaneSide.Inner, spins.InnerRadius), (PlaneSide.Outer, spins.OuterRadius) }
            .Max(s => Mass.FromGrams(RepeatStudy.Of([.. spins.Repeats.Select(r => r.At(s.Item1))]).StandardDeviation.GramMillimetres / s.Item2.Millimetres));
        if (worse < LeastRepeatability)
        {
            o.Wrong("check.repeat", "no-scatter", "The spins of 'repeat' do not differ at all: the display is too coarse to tell its repeatability. Give 'repeatability' as the display's step divided by 3.5, or more.");
            return null;
        }

        return worse;
    }

    private static MeasuredAgain ReadAgain(FileObject o, string unit)
    {
        var again = new MeasuredAgain(Distance(o, unit), BalanceFileReader.Diameter(o), BalanceFileReader.Width(o));
        o.Done();
        return again;
    }

    private static Mass? ReadWheel(FileObject o)
    {
        var mass = o.Quantity<Mass>("mass", "kg", Mass.FromGrams(100), Mass.FromKilograms(1000));
        o.Done();
        return mass;
    }

    private static List<WhySpin> ReadSpins(FileObject o, PlanePair? planes)
    {
        var spins = new List<WhySpin>();
        var items = o.Objects("spins");
        if (o.Node("spins") is { Kind: NodeKind.Array } && items.Count is 0 or > MostSpins)
        {
            o.Wrong("spins", items.Count == 0 ? "missing" : "too-many", string.Create(CultureInfo.InvariantCulture,
                $"There {(items.Count == 1 ? "is 1 spin" : $"are {items.Count} spins")}; from 1 to {MostSpins} are read. Give those since the wheel was put on."));
            return spins;
        }

        foreach (var spin in items)
        {
            var display = spin.Require("display", "give what the balancer showed: the mass to add and its angle, inner and outer") && spin.Object("display") is { } d
                ? BalanceFileReader.ReadReadings(d, planes) : null;
            List<WeightFitted> fitted = [.. spin.Objects("fittedAfter").Select(ReadFitted).OfType<WeightFitted>()];
            spin.Done();
            spins.Add(new WhySpin(display ?? default, fitted));
        }

        if (spins.Sum(s => s.FittedAfter.Count) > MostWeights)
        {
            o.Wrong("spins", "too-many", string.Create(CultureInfo.InvariantCulture, $"More than {MostWeights} fitted weights are not read; take them off and begin anew."));
        }

        return spins;
    }

    private static WeightFitted? ReadFitted(FileObject o)
    {
        var plane = o.Require("plane", "inner or outer") ? o.Word("plane", PlaneWords) : null;
        var mass = o.Require("mass", "give the mass read on the weight") ? o.Quantity<Mass>("mass", "g", Mass.FromGrams(0), Mass.FromKilograms(20)) : null;
        var angle = BalanceFileReader.AngleOf(o, mass);
        var kind = o.Word("kind", BalanceFileReader.KindWords);
        o.Done();
        return plane is { } p && mass is { } m && (angle is not null || m.Si == 0) ? new WeightFitted(p, m, angle ?? default, kind) : null;
    }
}
