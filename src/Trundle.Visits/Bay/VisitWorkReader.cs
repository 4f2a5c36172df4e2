using System.Globalization;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Paper;

namespace Trundle.Visits.Bay;

/// <summary>Reads the <c>work</c> part of a visit's file.</summary>
public static class VisitWorkReader
{
    private static readonly (string, WheelJob)[] JobWords =
        [("stays on", WheelJob.StaysOn), ("off and on", WheelJob.OffAndOn), ("balance", WheelJob.Balance), ("demount", WheelJob.Demount)];

    internal static readonly (string, Role)[] RoleChoices = [.. RoleWords.All.Select(r => (r.Word(), r))];

    /// <summary>The words of the jobs at a wheel, in order.</summary>
    public static IReadOnlyList<string> JobTexts { get; } = [.. JobWords.Select(j => j.Item1)];

    /// <summary>The word of a job.</summary>
    public static string Word(this WheelJob job) => JobWords.First(j => j.Item2 == job).Item1;

    /// <summary>Reads the part; nothing recorded where there is none.</summary>
    /// <param name="file">The visit's file as read, with the procedure that it took along.</param>
    /// <param name="problems">Gathers every problem.</param>
    public static VisitWork Read(VisitFile file, List<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(file);
        var work = Read(file.Work, file.Procedure, problems);
        foreach (var (position, valve) in work.RenewedValves.Where(v => v.Value.Renewed > file.Subject.Date))
        {
            problems.Add(new Problem($"work.renewed.{position}.valve.renewed", "in-future", FormattableString.Invariant($"{valve.Renewed:yyyy-MM-dd} is after the visit's date, {file.Subject.Date:yyyy-MM-dd}: write the day on which the valve was fitted, or leave it out.")));
        }

        return work;
    }

    /// <summary>Reads the part by itself; nothing recorded where there is none.</summary>
    /// <param name="node">The part, or null.</param>
    /// <param name="procedure">The procedure whose steps it records.</param>
    /// <param name="problems">Gathers every problem.</param>
    public static VisitWork Read(FileNode? node, Procedure procedure, List<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(procedure);
        if (node is null)
        {
            return VisitWork.Empty with { Procedure = procedure };
        }

        var o = new FileObject(node, problems);
        var handBack = o.Object("handBack");
        var renewed = ByPosition<Renewal>(o, "renewed", (list, key) => list.Object(key) is { } item ? [ReadRenewed(item)] : []);
        var work = new VisitWork
        {
            Number = o.Text("number"),
            Bay = o.Text("bay"),
            Contact = o.Text("contact"),
            Promised = o.Text("promised"),
            Rotation = o.Text("rotation"),
            Watch = o.Text("watch"),
            Instruments = UsedInstrumentReader.Read(o),
            ReTorque = o.Object("reTorque") is { } again ? ReTorqueRecord.Read(again) : null,
            Jobs = ByPosition<WheelJob>(o, "jobs", (jobs, key) => jobs.Word(key, JobWords) is { } job ? [job] : []),
            Renewed = Of(renewed, r => r.Tyre is null ? null : new RenewedTyre(r.Tyre, r.Tread)),
            RenewedValves = Of(renewed, r => r.Valve),
            RenewedWheels = Of(renewed, r => r.Wheel),
            Procedure = procedure,
            Steps = ReadSteps(o, procedure),
            Repairs = ByPosition<RepairRecord>(o, "repairs", (list, key) => list.Object(key) is { } item && RepairRecord.Read(item) is { } repair ? [repair] : []),
            Licensed = ByPosition<LicensedWork>(o, "licensed", (list, key) => list.Object(key) is { } item ? [LicensedWork.Read(item)] : []),
            Tightening = ByPosition<TighteningRecord>(o, "tightening", (list, key) => list.Object(key) is { } item ? [TighteningRecord.Read(item)] : []),
            Decisions = ReadDecisions(o),
            Permissions = [.. o.Objects("permissions").Select(Permission.Read).OfType<Permission>()],
            Trainees = AtSteps(o, "trainees", procedure, TraineeStep.Read),
            SignedOff = AtSteps(o, "signedOff", procedure, SignedOff.Read),
            Incidents = [.. o.Objects("incidents").Select(Incident.Read).OfType<Incident>()],
            HandedBackBy = handBack?.Text("by"),
            HandedBackRole = handBack?.Word("role", RoleChoices),
            Paper = VisitPaperReader.Read(o),
        };
        handBack?.Done();
        o.Done();
        return work;
    }

    /// <summary>What was renewed at one wheel, each part for itself.</summary>
    private sealed record Renewal(FittedTyre? Tyre, TreadDepths? Tread, Valve? Valve, Wheel? Wheel);

    private static Renewal ReadRenewed(FileObject o)
    {
        var renewal = new Renewal(
            o.Object("tyre") is { } tyre ? VisitFileReader.ReadTyre(tyre) : null,
            o.Object("tread") is { } tread ? TreadReader.Read(tread) : null,
            o.Object("valve") is { } valve ? InspectionFileReader.ReadValve(valve) : null,
            o.Object("wheel") is { } wheel ? VisitFileReader.ReadWheel(wheel) : null);
        o.Done();
        return renewal;
    }

    /// <summary>One part of what was renewed, where it was.</summary>
    private static Dictionary<Position, T> Of<T>(Dictionary<Position, Renewal> renewed, Func<Renewal, T?> part) where T : class =>
        renewed.Where(r => part(r.Value) is not null).ToDictionary(r => r.Key, r => part(r.Value)!);

    /// <summary>An object whose keys are positions; a value that was not read leaves its position out.</summary>
    private static Dictionary<Position, T> ByPosition<T>(FileObject o, string key, Func<FileObject, string, IEnumerable<T>> read)
    {
        var result = new Dictionary<Position, T>();
        Each(o, key, (list, name, position) =>
        {
            foreach (var value in read(list, name))
            {
                result[position] = value;
            }
        });
        return result;
    }

    private static void Each(FileObject o, string key, Action<FileObject, string, Position> each)
    {
        if (o.Node(key) is not { } node || o.Object(key) is not { } list)
        {
            return;
        }

        foreach (var (name, _) in node.Members)
        {
            var position = Position.Read(name);
            if (position.IsRead)
            {
                each(list, name, position.Value);
            }
            else
            {
                list.Knows(name);
                o.Problems.Add(position.Problem!.At(list.PathOf(name)));
            }
        }

        list.Done();
    }

    private static Dictionary<string, IReadOnlyDictionary<string, StepRecord>> ReadSteps(FileObject o, Procedure procedure)
    {
        var result = new Dictionary<string, IReadOnlyDictionary<string, StepRecord>>(StringComparer.Ordinal);
        AtPlaces(o, "steps", (at, steps) => result[at] = ReadPlace(steps, procedure, at == "vehicle"));
        return result;
    }

    /// <summary>What is told of steps, by place and step; a step that the procedure does not have is a problem.</summary>
    private static Dictionary<string, IReadOnlyDictionary<string, T>> AtSteps<T>(FileObject o, string key, Procedure procedure, Func<FileObject, T?> read) where T : class
    {
        var result = new Dictionary<string, IReadOnlyDictionary<string, T>>(StringComparer.Ordinal);
        AtPlaces(o, key, (at, steps) =>
        {
            var told = new Dictionary<string, T>(StringComparer.Ordinal);
            foreach (var step in procedure.Steps.Where(s => s.PerWheel == (at != "vehicle") && steps.Has(s.Id)))
            {
                if (steps.Object(step.Id) is { } item && read(item) is { } value)
                {
                    told[step.Id] = value;
                }
            }

            steps.Done();
            result[at] = told;
        });
        return result;
    }

    /// <summary>An object whose keys are positions or <c>vehicle</c>.</summary>
    private static void AtPlaces(FileObject o, string key, Action<string, FileObject> each)
    {
        if (o.Node(key) is not { } node || o.Object(key) is not { } places)
        {
            return;
        }

        foreach (var (name, _) in node.Members)
        {
            var position = Position.Read(name);
            if (name != "vehicle" && !position.IsRead)
            {
                places.Knows(name);
                o.Problems.Add(position.Problem!.At(places.PathOf(name)));
                continue;
            }

            if (places.Object(name) is { } steps)
            {
                each(name == "vehicle" ? name : position.Value.ToString(), steps);
            }
        }

        places.Done();
    }

    private static Dictionary<string, StepRecord> ReadPlace(FileObject o, Procedure procedure, bool vehicle)
    {
        var records = new Dictionary<string, StepRecord>(StringComparer.Ordinal);
        foreach (var step in procedure.Steps.Where(s => s.PerWheel != vehicle))
        {
            if (!o.Has(step.Id))
            {
                continue;
            }

            switch (step.Entry)
            {
                case StepEntry.Repair:
                case StepEntry.Nothing:
                    o.Wrong(step.Id, "not-entered-here", step.Entry == StepEntry.Repair ? "What was found of a puncture is entered under 'repairs', by the wheel's position." : "Nothing is entered at this step: what a licensed shop did is entered under 'licensed', by the wheel's position.");
                    break;
                case StepEntry.Confirm:
                case StepEntry.Text:
                    Add(step, new StepRecord(o.Text(step.Id), null, NoTorques, null, null));
                    break;
                case StepEntry.Choice:
                    if (o.Word(step.Id, [.. step.Choices.Select((c, i) => (c, i))]) is { } chosen)
                    {
                        Add(step, new StepRecord(step.Choices[chosen], null, NoTorques, null, null));
                    }

                    break;
                case StepEntry.Pressure:
                    if (o.Quantity<GaugePressure>(step.Id, "kPa", GaugePressure.FromKilopascals(0), GaugePressure.FromKilopascals(1400)) is { } pressure)
                    {
                        Add(step, new StepRecord(null, pressure, NoTorques, null, null));
                    }

                    break;
                case StepEntry.Torques:
                    Add(step, new StepRecord(null, null, ReadTorques(o, step.Id), null, null));
                    break;
                case StepEntry.Spin:
                    if (o.Object(step.Id) is { } spin)
                    {
                        Add(step, new StepRecord(null, null, NoTorques, ReadPlane(spin, "inner"), ReadPlane(spin, "outer")));
                        spin.Done();
                    }

                    break;
            }
        }

        o.Done();
        return records;

        void Add(ProcedureStep step, StepRecord record) => records[step.Id] = record;
    }

    private static readonly Dictionary<int, Torque> NoTorques = [];

    private static Dictionary<int, Torque> ReadTorques(FileObject o, string key)
    {
        var torques = new Dictionary<int, Torque>();
        var node = o.Node(key)!;
        if (node.Kind == NodeKind.Array)
        {
            var list = o.Quantities<Torque>(key, "N·m", Torque.FromNewtonMetres(1), Torque.FromNewtonMetres(2000));
            for (var i = 0; i < list.Count; i++)
            {
                torques[i + 1] = list[i];
            }
        }
        else if (o.Object(key) is { } each)
        {
            foreach (var (name, _) in node.Members)
            {
                if (int.TryParse(name, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number is >= 1 and <= 20)
                {
                    if (each.Quantity<Torque>(name, "N·m", Torque.FromNewtonMetres(1), Torque.FromNewtonMetres(2000)) is { } torque)
                    {
                        torques[number] = torque;
                    }
                }
            }

            each.Done();
        }

        return torques;
    }

    private static PlaneDisplay? ReadPlane(FileObject o, string key)
    {
        if (o.Object(key) is not { } plane)
        {
            return null;
        }

        var mass = plane.Quantity<Mass>("mass", "g", Mass.FromGrams(0), Mass.FromGrams(2000));
        var angle = plane.Number("angle", 0, 360);
        plane.Done();
        return mass is { } m ? new PlaneDisplay(m, angle ?? 0) : null;
    }

    private static Dictionary<string, Decision> ReadDecisions(FileObject o)
    {
        var decisions = new Dictionary<string, Decision>(StringComparer.Ordinal);
        if (o.Node("decisions") is not { } node || o.Object("decisions") is not { } list)
        {
            return decisions;
        }

        foreach (var (name, _) in node.Members)
        {
            if (list.Object(name) is not { } d)
            {
                continue;
            }

            var text = d.Require("decision", "say what was decided") ? d.Text("decision") : null;
            var by = d.Text("by");
            var role = d.Word("role", RoleChoices);
            var refusal = d.Text("signedRefusal");
            d.Done();
            if (text is not null)
            {
                decisions[name] = new Decision(text, by ?? "", role, refusal);
            }
        }

        list.Done();
        return decisions;
    }
}
