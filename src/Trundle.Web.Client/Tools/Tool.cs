using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;
using Trundle.Web.Client.Tools.Balancer;
using Trundle.Web.Client.Tools.Match;
using Trundle.Web.Client.Tools.Runout;

namespace Trundle.Web.Client.Tools;

/// <summary>One computation with a page of its own, beside any visit or at a visit's wheel.</summary>
/// <param name="Key">In the address, and the key of its part in a visit's file.</param>
/// <param name="Title">What the page is called.</param>
/// <param name="Line">What it is for, in a few words.</param>
/// <param name="Operation">What it asks.</param>
public sealed record Tool(string Key, string Title, string Line, Operation Operation)
{
    /// <summary>The drawings that belong to its answer.</summary>
    public Func<FileNode, ToolForm, IReadOnlyList<Drawing>> Draw { get; init; } = (_, _) => [];

    /// <summary>True where a form takes so long to reckon that it waits to be asked.</summary>
    public Func<ToolForm, bool> IsLong { get; init; } = _ => false;

    /// <summary>True where a form takes long enough to be felt: the page says that it reckons, and then does.</summary>
    public Func<ToolForm, bool> IsSlow { get; init; } = _ => false;

    /// <summary>The parts of its file that are each answered by themselves; none where the whole is.</summary>
    public IReadOnlyList<ToolPart> Parts { get; init; } = [];

    /// <summary>How angles count on its page; null where there are none.</summary>
    public string? Angles { get; init; } = "from the valve, clockwise";

    /// <summary>What its page shows in the reader's own unit, and that unit.</summary>
    public Func<UnitHabits, (string What, string Unit)> InUnit { get; init; } = units => ("weights in", units.Mass);

    /// <summary>True where it may be kept at a visit's wheel.</summary>
    public bool AtWheel { get; init; } = true;

    /// <summary>True where it is about the whole vehicle of a visit, on the leg of its plan.</summary>
    public bool AtVehicle { get; init; }

    /// <summary>All, in the order in which they are offered.</summary>
    public static IReadOnlyList<Tool> All { get; } =
    [
        new("why", "Not to zero", "why it does not come to zero", OperationList.Of("balance why")),
        new("runout", "Runout", "dial readings around", OperationList.Of("runout")) { Draw = (file, form) => RunoutDrawing.Of(file, DialUnit.Of(form)) },
        new("match", "Match mounting", "turn the tyre on its wheel", OperationList.Of("match")) 
        {
            Draw = (_, form) => form.Answer!.Drawings(),
            IsSlow = form => Math.Max(form.Count("tyres"), form.Count("wheels")) >= MatchKind.SlowSet,
            IsLong = form => Math.Max(form.Count("tyres"), form.Count("wheels")) > MatchKind.LargeSet,
        },
        new("trial", "Trial mass", "on the vehicle", OperationList.Of("balance trial")) { Draw = (file, _) => TrialDrawing.Of(file), Angles = "in one sense throughout" },
        new("calibrate", "Known masses", "calibrate a balancer", OperationList.Of("balance calibrate")) { Draw = (_, form) => CalibrateDrawing.Of(form.Body!), Angles = "from the wheel’s zero, clockwise", AtWheel = false },
        new("leak", "Loss of air", "how fast, and until the warning", OperationList.Of("leak")) { Draw = (file, form) => LeakDrawing.Of(file, form.Units.Pressure), Angles = null, InUnit = units => ("pressures in", units.Pressure) },
        new("replace", "Stand-in size", "instead of the placard’s", OperationList.Of("replace")) { Angles = null, InUnit = units => ("pressures in", units.Pressure), AtWheel = false, AtVehicle = true },
        new(BalancerTest.Tool, "Test the balancer", "is it right in itself?", OperationList.Of("balance machine"))
        {
            Draw = (file, form) => MachineDrawing.Of(file, form.Units.Mass), Angles = "clockwise", AtWheel = false, Parts = [.. BalancerTest.All.Select(t => new ToolPart(t.Part, t.Besides))],
        },
        new("capture", "Recorded spin", "CSV or WAV of one spin", OperationList.Of("balance capture")) { Draw = (_, form) => CaptureDrawing.Of(form.Body!, form.Units.Mass), AtWheel = false },
    ];

    /// <summary>The one of a key, or null.</summary>
    public static Tool? Of(string? key) => All.FirstOrDefault(t => t.Key == key);
}

/// <summary>A part of a tool's file that is answered by itself.</summary>
/// <param name="Path">Its path.</param>
/// <param name="Besides">The paths of fields elsewhere that it alone reads.</param>
public sealed record ToolPart(string Path, IReadOnlyList<string> Besides)
{
    /// <summary>True where no other part reads a field.</summary>
    public bool Owns(string field)
    {
        ArgumentNullException.ThrowIfNull(field);
        return Besides.Append(Path).Any(p => field == p || field.StartsWith(p + ".", StringComparison.Ordinal));
    }
}
