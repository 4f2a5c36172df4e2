using System.Globalization;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;

namespace Trundle.Visits.Procedures;

/// <summary>The carried procedure with what a workshop laid over it.</summary>
/// <param name="Procedure">What holds.</param>
/// <param name="Changes">What the workshop's file changes, a sentence each.</param>
/// <param name="Kept">What the file leaves out and what holds nevertheless, a sentence each.</param>
public sealed record LaidOver(Procedure Procedure, IReadOnlyList<string> Changes, IReadOnlyList<string> Kept)
{
    /// <summary>Words of the file that a person reads again, each with its place: a 'not' beside a protected act, a pressure above the ceiling away from the seating.</summary>
    public IReadOnlyList<Problem> Warnings { get; init; } = [];
}

/// <summary>
/// Lays a workshop's own file over the carried procedure. A step that the file does not name stays; a caution is added to and never taken away; a
/// hold point may be made and never lifted; what is entered at a carried step stays as it is, since it is judged. The words that keep people whole
/// stay as they are written: <see cref="SafetyWords"/>.
/// </summary>
public static class WorkshopProcedure
{
    /// <summary>The key of the workshop's own part.</summary>
    public const string Key = "workshop";

    /// <summary>The name under which it stands in a visit's file.</summary>
    public const string Root = "procedure";

    private static readonly StepEntry[] Offered = [StepEntry.Confirm, StepEntry.Choice, StepEntry.Pressure, StepEntry.Text];

    /// <summary>Reads a workshop's file and lays it over the carried procedure.</summary>
    /// <param name="root">The file's root.</param>
    /// <param name="problems">Gathers every problem, each with its place.</param>
    public static LaidOver Read(FileNode root, List<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(root);
        ArgumentNullException.ThrowIfNull(problems);
        var file = PartFileReader.Read(root, problems);
        if (file.Of is { } of && of != Procedure.BuiltIn.Edition)
        {
            problems.Add(new Problem(PathOf(root, "of"), "edition-not-carried", $"This was written over edition '{NumberText.Shown(of)}' of the carried procedure, and this program carries edition {Procedure.BuiltIn.Edition}; open it in the program that carries it, or look through it again and write \"of\": \"{Procedure.BuiltIn.Edition}\"."));
        }

        return Lay(file, problems);
    }

    /// <summary>
    /// Reads the file that a visit took along, or that a workshop keeps, which nobody can mend any more where it stands: what it says against the safety words is left
    /// out, a caution at the step and in <see cref="Procedure.LeftOut"/> tells it, and the carried words stand.
    /// </summary>
    /// <param name="root">The file's root.</param>
    /// <param name="problems">Gathers every other problem.</param>
    public static LaidOver ReadKept(FileNode root, List<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(root);
        ArgumentNullException.ThrowIfNull(problems);
        var file = PartFileReader.Read(root, problems);
        var leftOut = new List<string>();
        if (file.Of is { } of && of != Procedure.BuiltIn.Edition)
        {
            leftOut.Add($"It was laid over edition '{NumberText.Shown(of)}' of the carried procedure; here it is read over edition {Procedure.BuiltIn.Edition}, whose words stand.");
        }

        var steps = file.Steps.Select(s => KeptWords.Without(s, leftOut)).ToList();
        var laid = Lay(file with { Steps = steps }, problems);
        return laid with { Procedure = laid.Procedure with { LeftOut = leftOut } };
    }

    /// <summary>True for a field of the procedure that a visit took along.</summary>
    public static bool IsField(string field)
    {
        ArgumentNullException.ThrowIfNull(field);
        return field == Root || field.StartsWith(Root + ".", StringComparison.Ordinal);
    }

    /// <summary>The fields with which a visit takes a procedure along: the edition of the carried one, and what the workshop laid over it.</summary>
    /// <param name="procedure">The procedure.</param>
    /// <param name="edition">The number of the workshop's edition, or null where it has none.</param>
    /// <param name="problems">Gathers what is longer than a field may be.</param>
    public static IReadOnlyList<(string Field, string Typed)> Fields(Procedure procedure, string? edition, List<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(procedure);
        ArgumentNullException.ThrowIfNull(problems);
        var json = ProcedureText.OwnOnly(procedure);
        if (edition is not null)
        {
            json["edition"] = edition;
        }

        var fields = new List<(string, string)>();
        FileFields.Flatten(FileNode.From(json), Root, fields, problems);
        return fields;
    }

    private static LaidOver Lay(PartFile file, List<Problem> problems)
    {
        var built = Procedure.BuiltIn;
        var composition = new Composition(built.Steps);
        var changes = new List<string>();
        var kept = new List<string>();
        var warnings = new List<Problem>();
        foreach (var step in file.Steps.Select(Own))
        {
            var before = problems.Count;
            if (composition.Find(step.Id) is { } there)
            {
                var changed = Over(there, step, problems, kept);
                SafetyWords.NotDenied(there, there.Leg, step, problems, warnings);
                if (changed is not null && problems.Count == before)
                {
                    composition.Replace(changed);
                    changes.Add($"{there.Title}: {Told(there, changed)}.");
                }
            }
            else if (New(composition, step, problems, warnings) is { } made && problems.Count == before)
            {
                composition.Insert(made, step.After!);
                changes.Add($"{made.Title}: a new step after '{composition.Find(step.After!)!.Title}'{(made.HoldPoint ? ", a hold point" : "")}.");
            }
        }

        changes.AddRange(file.Machines.Select(m => $"{m.Name}: its maker's own instruction comes first at the mounting machine."));
        var parts = changes.Count == 0 && file.Edition is null ? built.Parts : [.. built.Parts, new ProcedurePart(Key, file.Name ?? "The workshop's own", file.Edition ?? "not numbered", [])];
        return new LaidOver(new Procedure(parts, composition.Steps, file.Machines), changes, kept) { Warnings = warnings };

        static PartStep Own(PartStep step) => step with
        {
            Also = [.. step.Also.Select(s => s with { OfTheWorkshop = true })],
            Cautions = [.. step.Cautions.Select(s => s with { OfTheWorkshop = true })],
        };
    }

    /// <summary>What a file says against the safety words of one step, by itself.</summary>
    internal static IReadOnlyList<Problem> AgainstSafety(PartStep part)
    {
        var problems = new List<Problem>();
        if (Procedure.BuiltIn.Find(part.Id) is { } there)
        {
            Over(there, part, problems, []);
            SafetyWords.NotDenied(there, there.Leg, part, problems, []);
        }
        else
        {
            SafetyWords.NotElsewhere(part, problems);
            SafetyWords.NotDenied(null, part.After is { } after ? Procedure.BuiltIn.Find(after)?.Leg ?? part.Leg : part.Leg, part, problems, []);
        }

        return [.. problems.Where(p => KeptWords.Codes.Contains(p.Code))];
    }

    /// <summary>A carried step with the workshop's words; null where the file says nothing else than what stands.</summary>
    private static ProcedureStep? Over(ProcedureStep there, PartStep part, List<Problem> problems, List<string> kept)
    {
        Fixed("after", part.After is { } after && after != CarriedAfter(there.Id), CarriedAfter(there.Id) is { } place ? $"behind '{place}'" : "where it stands");
        Fixed("leg", part.Leg is { } leg && leg != there.Leg, there.Leg.Key());
        Fixed("at", part.PerWheel is { } at && at != there.PerWheel, there.PerWheel ? "wheel" : "vehicle");
        Fixed("job", part.Job is { } job && job != there.Job, PartFileReader.JobWords.First(w => w.Value == there.Job).Word);
        Fixed("enter", part.Entry is { } entry && entry != there.Entry, PartFileReader.EntryWords.First(w => w.Value == there.Entry).Word);
        Fixed("choices", part.Choices.Count > 0 && !part.Choices.SequenceEqual(there.Choices), string.Join(" / ", there.Choices));
        Fixed("passing", part.Passing.Count > 0 && !part.Passing.SequenceEqual(there.Passing), string.Join(" / ", there.Passing));
        Fixed("act", part.Act is { } act && act != there.Act, there.Act?.Key() ?? "none");
        if (part.When.Count > 0 && !part.When.SequenceEqual(there.When) && (Says(part.Title, there.Title) ?? Says(part.Text, there.Text) ?? Says(part.Why, there.Why) ?? Says(part.Stop, there.Stop)) is not null)
        {
            problems.Add(new Problem($"{part.Path}.when", "words-hold-everywhere", $"The words of the carried step '{there.Id}' hold at every wheel; for what holds there only, write 'also' or 'cautions'."));
        }

        if (part.HoldPoint == false && there.HoldPoint)
        {
            problems.Add(new Problem($"{part.Path}.hold", "hold-point-stays", $"'{there.Title}' is a hold point of the carried procedure; a workshop may make more hold points and lifts none. Leave 'hold' out, or write true."));
        }

        if (part.AtMachine == false && there.AtMachine)
        {
            problems.Add(new Problem($"{part.Path}.machine", "machine-stays", $"'{there.Title}' is done at the mounting machine, whose maker's instruction comes first; leave 'machine' out, or write true."));
        }

        SafetyWords.Held(there, part, problems);
        SafetyWords.NotElsewhere(part, problems);
        if (part.SaysCautions)
        {
            kept.AddRange(there.Cautions.Where(c => !part.Cautions.Any(p => p.Text == c.Text)).Select(c => $"{there.Title}: the file leaves out a caution of the carried procedure; it stays: “{c.Text}”"));
        }

        var tools = SafetyWords.Tools(there, part.Tools);
        if (part.Tools.Count > 0)
        {
            kept.AddRange(tools.Except(part.Tools, StringComparer.Ordinal).Select(t => $"{there.Title}: the file leaves out a tool of a hold point; it stays: “{t}”"));
        }

        var changed = Composition.With(there, part) with
        {
            Title = part.Title ?? there.Title,
            Text = part.Text ?? there.Text,
            Why = part.Why ?? there.Why,
            Tools = tools,
            Stop = part.Stop ?? there.Stop,
            HoldPoint = there.HoldPoint || part.HoldPoint == true,
            AtMachine = there.AtMachine || part.AtMachine == true,
        };
        return Told(there, changed).Length == 0 ? null : changed with { OfTheWorkshop = true };

        static string? Says(string? own, string? carried) => own is null || own == carried ? null : own;

        void Fixed(string key, bool differs, string carried)
        {
            if (differs)
            {
                problems.Add(new Problem($"{part.Path}.{key}", "carried-stays", $"'{key}' of the carried step '{there.Id}' stays as it is ({carried}), since what is recorded is judged by it; leave it out, or make a step of your own after it."));
            }
        }
    }

    /// <summary>What is another than before, in a few words; empty where nothing is.</summary>
    private static string Told(ProcedureStep before, ProcedureStep after)
    {
        var cautions = after.Cautions.Count - before.Cautions.Count;
        var also = after.Also.Count - before.Also.Count;
        return string.Join(", ", new[]
        {
            before.Title == after.Title ? null : $"called '{after.Title}'",
            before.Text == after.Text ? null : SafetyWords.AddsTo(before.Text, after.Text) ? "more on what to do" : "what to do is reworded",
            before.Why == after.Why ? null : "why is reworded",
            before.Tools.SequenceEqual(after.Tools) ? null : before.Tools.All(after.Tools.Contains) ? "more tools" : "other tools",
            before.Stop == after.Stop ? null : before.Stop is null ? "what stops it is said" : "more on what stops it",
            cautions == 0 ? null : string.Create(CultureInfo.InvariantCulture, $"{cautions} more {(cautions == 1 ? "caution" : "cautions")}"),
            also == 0 ? null : string.Create(CultureInfo.InvariantCulture, $"{also} more {(also == 1 ? "sentence" : "sentences")}"),
            before.HoldPoint == after.HoldPoint ? null : "made a hold point",
            before.AtMachine == after.AtMachine ? null : "done at the mounting machine",
        }.OfType<string>());
    }

    private static ProcedureStep? New(Composition composition, PartStep part, List<Problem> problems, List<Problem> warnings)
    {
        if (part.After is null || composition.Find(part.After) is not { } before)
        {
            var nearest = FileObject.Nearest(part.After ?? part.Id, composition.Steps.Select(s => s.Id));
            problems.Add(part.After is null
                ? new Problem($"{part.Path}.id", "step-unknown", $"There is no step '{NumberText.Shown(part.Id)}'{(nearest is null ? "" : $"; did you mean '{nearest}'?")} A step of your own says in 'after' behind which one it stands.")
                : new Problem($"{part.Path}.after", "step-unknown", $"There is no step '{NumberText.Shown(part.After)}' to stand behind{(nearest is null ? "" : $"; did you mean '{nearest}'?")}"));
            return null;
        }

        SafetyWords.NotElsewhere(part, problems);
        SafetyWords.NotDenied(null, before.Leg, part, problems, warnings);
        Required("title", part.Title, "say the step in a few words");
        Required("text", part.Text, "say what to do");
        if (part.Leg is { } leg && leg != before.Leg)
        {
            problems.Add(new Problem($"{part.Path}.leg", "leg-of-the-step-before", $"It stands behind '{before.Id}', which is on the leg {before.Leg.Key()}; leave 'leg' out, or choose another step to stand behind."));
        }

        if (part.Entry is { } entry && !Offered.Contains(entry))
        {
            problems.Add(new Problem($"{part.Path}.enter", "entry-of-a-carried-step", $"This is entered at carried steps only; write {ChoiceText.Of(PartFileReader.EntryWords.Where(w => Offered.Contains(w.Value)).Select(w => w.Word))}."));
        }

        if (part.Choices.Count > 0 && part.Entry != StepEntry.Choice)
        {
            problems.Add(new Problem($"{part.Path}.enter", "choices-and-entry", "Words to choose from belong to a choice: write \"enter\": \"choice\"."));
        }

        if (part.Title is null || part.Text is null)
        {
            return null;
        }

        var perWheel = part.PerWheel ?? before.PerWheel;
        return Composition.Of(part with { Job = part.Job ?? (before.PerWheel == perWheel ? before.Job : null) }, before.Leg, perWheel) with { OfTheWorkshop = true };

        void Required(string key, string? text, string what)
        {
            if (text is null)
            {
                problems.Add(new Problem($"{part.Path}.{key}", "missing", $"'{key}' is missing: {what}."));
            }
        }
    }

    /// <summary>The step behind which a carried part puts a step of its own; null for one of the part on which all stand.</summary>
    private static string? CarriedAfter(string id) => BuiltInProcedure.Files.SelectMany(f => f.Steps).FirstOrDefault(s => s.Id == id)?.After;

    private static string PathOf(FileNode root, string key) => root.Path.Length == 0 ? key : $"{root.Path}.{key}";
}
