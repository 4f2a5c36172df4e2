using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Engine.Fixings;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Operations;

/// <summary>How the fixings of a wheel are tightened: <c>trundle fixings</c>.</summary>
public static class FixingsOperation
{
    private const int MostStages = 10;

    /// <summary>The operation.</summary>
    public static Operation Operation { get; } = new("fixings", "Tightening sequence, stages, wrench setting, clamp and cautions for the fixings of a wheel.", Run)
    {
        Options =
        [
            new("--count", "count", "How many fixings the wheel has, for example 5. Required."),
            new("--torque", "torque", "The vehicle maker's torque, for example \"110 N·m\" or \"80 lbf·ft\" (a bare number is N·m). Without it there is none."),
            new("--stages", "stages", "Shares of the torque in percent, for example 50,100 (the default).") { IsList = true },
            new("--thread", "thread", "Thread with its pitch, for example M12x1.5 or 1/2-20."),
            new("--property-class", "propertyClass", "8.8, 10.9, 12.9, \"grade 5\" or \"grade 8\"."),
            new("--order", "order", "The maker's own order by place, clockwise from 1, for example 1,3,5,2,4.") { IsList = true },
            new("--seat", "seat", "cone, ball or flat."),
            new("--condition", "condition", "dry or oiled, as the maker says."),
            new("--nut-factor", "nutFactor", "K where it is known, for example 0.20."),
            new("--wrench-length", "wrenchLength", "Middle of the grip to the square drive, for example \"450 mm\" (a bare number is mm)."),
            new("--adapter", "adapter", "Square drive to the middle of the fixing, for example \"60 mm\" (a bare number is mm)."),
            new("--adapter-angle", "adapterAngle", "Turn of the adapter from the wrench's line in degrees: 0 straight on, 180 folded back."),
            new("--seat-angle", "seatAngle", "Included angle of a cone seat where it is not 60°, for example 90."),
            new("--ball-radius", "ballRadius", "Radius of a ball seat, for example \"13 mm\" (a bare number is mm)."),
            new("--seat-state", "seatState", "sound or worn: a worn seat is a stop, and lowers the low end of the clamp."),
            new("--engagement", "engagement", "How far the fixings are on their threads, for example \"7 turns\" or \"10.5 mm\"."),
            new("--least-engagement", "leastEngagement", "The maker's least engagement, likewise."),
            new("--wrench-least", "wrenchLeast", "The lowest mark of the wrench's scale, for example \"40 N·m\" (a bare number is N·m)."),
            new("--wrench-most", "wrenchMost", "The highest mark of the wrench's scale, for example \"200 N·m\"."),
            new("--wrench-deviation", "wrenchDeviation", "What its last check found, in per cent shown less reference, for example 2.5,-4.8.") { IsList = true },
            new("--left-hand-side", "leftHandSide", "left or right: the one side of the vehicle that has left-hand threads."),
            new("--re-torque-from", "reTorqueFrom", "The vehicle maker's own distance to the re-torque, its near end, for example \"50 km\" (a bare number is km)."),
            new("--re-torque-to", "reTorqueTo", "Its far end."),
            new("--class", "class", "Class of the vehicle as in a visit's file, for example \"goods over 3500 kg\": changes the re-torque distance."),
        ],
    };

    private static Reading<Answer> Run(FileNode body)
    {
        var problems = new List<Problem>();
        var question = Read(new FileObject(body, problems));
        if (problems.Count > 0)
        {
            return AnswerJson.Wrong(problems);
        }

        var plan = FixingPlanner.Plan(question);
        return Reading<Answer>.Of(new Answer(AnswerJson.IsNo(plan.Findings), FixingPlanAnswer.Json(plan), [.. FixingPlanAnswer.Lines(plan)]));
    }

    private static FixingQuestion Read(FileObject o)
    {
        o.Require("count", "say how many fixings the wheel has, for example 5");
        var propertyClass = o.Reference("propertyClass", PropertyClass.Read);
        var stages = ReadStages(o);
        var nutFactor = o.Number("nutFactor", 0.03, 1);
        var adapter = ReadAdapter(o);
        var wrench = ReadWrench(o);
        var vehicleClass = VisitFileReader.ReadVehicleClass(o, "class");
        var fixings = VisitFileReader.ReadFixings(o) with { PropertyClass = propertyClass?.Name };
        return new FixingQuestion(fixings) { StagePercents = stages, NutFactor = nutFactor, Adapter = adapter, Wrench = wrench, Heavy = IsHeavy(vehicleClass) };
    }

    /// <summary>True for the classes whose re-torque is that of heavy vehicles.</summary>
    internal static bool IsHeavy(string vehicleClass) => vehicleClass is "goods over 3500 kg" or "bus";

    private static List<double> ReadStages(FileObject o)
    {
        var stages = new List<double>();
        var items = o.Items("stages");
        if (items.Count > MostStages)
        {
            o.Wrong("stages", "stages-too-many", string.Create(CultureInfo.InvariantCulture, $"There are {items.Count} stages; at most {MostStages} are taken."));
            return stages;
        }

        foreach (var item in items)
        {
            var text = item.Kind is NodeKind.Text or NodeKind.Number ? item.Text.Trim().TrimEnd('%', '\u00a0', ' ') : "";
            var read = NumberText.Read(text);
            if (!read.IsRead)
            {
                o.Problems.Add(new Problem(item.Path, "stage-unreadable", $"'{NumberText.Shown(item.Text)}' is not a share of the torque in percent, such as 50."));
            }
            else if (read.Value is <= 0 or > 100 || (stages.Count > 0 && read.Value < stages[^1]))
            {
                o.Problems.Add(new Problem(item.Path, "stage-out-of-range", $"'{NumberText.Shown(item.Text)}' should be above 0, at most 100, and not below the stage before it."));
            }
            else
            {
                stages.Add(read.Value);
            }
        }

        if (items.Count > 0 && stages.Count == items.Count && stages[^1] != 100)
        {
            o.Wrong("stages", "stage-last", "The last stage is the whole torque: end with 100, for example 50,100.");
        }

        if (o.Node("stages") is { Kind: NodeKind.Array } && items.Count == 0)
        {
            o.Wrong("stages", "stages-none", "There is no stage here; give shares in percent that end with 100, or leave it out for 50,100.");
        }

        return stages;
    }

    /// <summary>Reads the wrench's scale and what its last check found, from <c>wrenchLeast</c>, <c>wrenchMost</c> and <c>wrenchDeviation</c>; null where nothing is told of it.</summary>
    public static TorqueWrench? ReadWrench(FileObject o, string leastKey = "wrenchLeast", string mostKey = "wrenchMost", string deviationKey = "wrenchDeviation")
    {
        ArgumentNullException.ThrowIfNull(o);
        Torque? smallest = Torque.FromNewtonMetres(0.1);
        Torque? greatest = Torque.FromNewtonMetres(5000);
        var least = o.Quantity(leastKey, "N·m", smallest, greatest);
        var most = o.Quantity(mostKey, "N·m", smallest, greatest);
        var deviations = new List<double>();
        foreach (var item in o.Items(deviationKey))
        {
            var text = item.Kind is NodeKind.Text or NodeKind.Number ? item.Text.Trim().TrimEnd('%', '\u00a0', ' ').Replace('−', '-') : "";
            if (NumberText.Read(text) is { IsRead: true, Value: > -50 and < 50 } read)
            {
                deviations.Add(read.Value);
            }
            else
            {
                o.Problems.Add(new Problem(item.Path, "deviation-unreadable", $"'{NumberText.Shown(item.Text)}' is no deviation in per cent between -50 and 50, such as -2.5."));
            }
        }

        if (least is { } low && most is { } high && low >= high)
        {
            o.Wrong(leastKey, "out-of-range", $"The lowest mark, {low.Text("N·m", 1)}, is not below the highest, {high.Text("N·m", 1)}.");
        }

        return least is null && most is null && deviations.Count == 0 ? null : new TorqueWrench(least, most, deviations);
    }

    /// <summary>Reads what lengthens the wrench, from <c>wrenchLength</c>, <c>adapter</c> and <c>adapterAngle</c>; null where nothing does.</summary>
    public static WrenchAdapter? ReadAdapter(FileObject o)
    {
        ArgumentNullException.ThrowIfNull(o);
        var wrench = o.Quantity<Length>("wrenchLength", "mm", Length.FromMillimetres(50), Length.FromMillimetres(3000));
        var adapter = o.Quantity<Length>("adapter", "mm", Length.FromMillimetres(0), Length.FromMillimetres(3000));
        var angle = o.Quantity<Angle>("adapterAngle", "°", Angle.FromDegrees(-180), Angle.FromDegrees(180));
        if (!o.Has("wrenchLength") && !o.Has("adapter") && !o.Has("adapterAngle"))
        {
            return null;
        }

        if (!o.Has("wrenchLength"))
        {
            o.Wrong("wrenchLength", "missing", "'wrenchLength' is missing: with an adapter the wrench's own length is needed, middle of the grip to the square drive.");
        }

        if (!o.Has("adapter"))
        {
            if (o.Has("adapterAngle"))
            {
                o.Wrong("adapter", "missing", "'adapter' is missing: an angle needs the adapter's length, square drive to the middle of the fixing.");
            }

            return null;
        }

        if (wrench is not { } w || adapter is not { } a)
        {
            return null;
        }

        var lengthened = new WrenchAdapter(w, a, angle ?? Angle.FromDegrees(0)) { TurnAssumed = angle is null };
        if (!lengthened.LeavesAnArm)
        {
            o.Wrong("adapterAngle", "adapter-leaves-no-arm", "An adapter as long as the wrench, folded back on it, leaves no arm: no setting gives the torque. Turn it, or use a longer wrench.");
            return null;
        }

        return lengthened;
    }
}
