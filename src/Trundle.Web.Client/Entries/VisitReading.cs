using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Procedures;

namespace Trundle.Web.Client.Entries;

/// <summary>A visit's file as read: its values, its problems by field, and how the visit stands.</summary>
public sealed class VisitReading
{
    private readonly Inputs _inputs;
    private readonly IReadOnlyList<Problem> _ofFile;
    private readonly IReadOnlyList<Problem> _ofWork;
    private readonly Dictionary<string, string> _problems = new(StringComparer.Ordinal);

    private VisitReading(Inputs inputs, AssembledFile file, VisitFile read, IReadOnlyList<Problem> ofFile, VisitWork work, IReadOnlyList<Problem> ofWork, IReadOnlyList<JudgedVehicle> judged)
    {
        (_inputs, File, Read, _ofFile, _ofWork) = (inputs, file, read, ofFile, ofWork);
        foreach (var problem in ofFile.Concat(ofWork))
        {
            _problems.TryAdd(file.FieldOf(problem.Where), problem.Message);
        }

        Condemned = [.. CondemnedNames.Hits(inputs.Fields, inputs.Visit, inputs.Register)];
        State = VisitStanding.Of(read, work, CondemnedNames.Undecided(Condemned, inputs.Fields), judged);
    }

    /// <summary>All that a reading is made of.</summary>
    private sealed record Inputs(VisitFields Fields, Guid Visit, IReadOnlyList<CondemnedLine> Register);

    /// <summary>The file.</summary>
    public AssembledFile File { get; }

    /// <summary>The file as read.</summary>
    public VisitFile Read { get; }

    /// <summary>How the visit stands.</summary>
    public VisitState State { get; }

    /// <summary>The names of tyres and wheels on this visit that stand in the workshop's register of condemned ones.</summary>
    public IReadOnlyList<CondemnedHit> Condemned { get; }

    /// <summary>The vehicle as it came.</summary>
    public FittedVehicle Subject => Read.Subject;

    /// <summary>How many axles.</summary>
    public int Axles => Subject.Vehicle.Axles.Count;

    /// <summary>True where every field was read.</summary>
    public bool Whole => _problems.Count == 0;

    /// <summary>The fields with a problem, and the problem in words.</summary>
    public IReadOnlyDictionary<string, string> Problems => _problems;

    /// <summary>The problem of a field, or null.</summary>
    public string? ProblemOf(string field) => _problems.GetValueOrDefault(field);

    /// <summary>Reads the file that the fields make.</summary>
    public static VisitReading Of(VisitFields fields) => Of(fields, Guid.Empty, [], null);

    /// <summary>
    /// Reads the file that the fields make, and holds its names against the workshop's register. What an earlier reading of the visit read and
    /// judged is taken from it where no field that it reads has changed, so that an entry is answered at once: the answer is the same without it.
    /// </summary>
    /// <param name="fields">The visit.</param>
    /// <param name="visit">Which visit it is.</param>
    /// <param name="register">The lines of the register that stand.</param>
    /// <param name="before">An earlier reading, or null.</param>
    public static VisitReading Of(VisitFields fields, Guid visit, IReadOnlyList<CondemnedLine> register, VisitReading? before)
    {
        ArgumentNullException.ThrowIfNull(fields);
        ArgumentNullException.ThrowIfNull(register);
        var inputs = new Inputs(fields, visit, register);
        var changed = before is null ? null : fields.ChangedSince(before._inputs.Fields);
        if (before is not null && changed is { Count: 0 } && before._inputs with { Fields = fields } == inputs)
        {
            return before;
        }

        var file = fields.Assemble();
        var root = file.Root;
        var (read, ofFile) = before is not null && changed!.All(before.LeavesTheVehicle)
            ? (before.Read with { Balance = Balances(root, before.Subject), Studies = Studies(root, before.Subject), Work = root.Member("work") }, before._ofFile)
            : ReadFile(root);
        var (work, ofWork) = before is not null && changed!.All(f => !Under(f, "work") && !Under(f, WorkshopProcedure.Root))
            ? (before.State.Work, before._ofWork)
            : ReadWork(read);
        if (before is not null && changed!.All(f => !Under(f, "work.renewed")))
        {
            // What was renewed stays the same objects, by which a vehicle that was judged already is known again.
            var renewed = before.State.Work;
            work = work with { Renewed = renewed.Renewed, RenewedValves = renewed.RenewedValves, RenewedWheels = renewed.RenewedWheels };
        }

        return new VisitReading(inputs, file, read, ofFile, work, ofWork, before?.State.Judged ?? []);
    }

    /// <summary>
    /// True for a field that the vehicle and what is fitted on it are not read from: what was done, and the balance of a wheel of which something
    /// else is entered too.
    /// </summary>
    private bool LeavesTheVehicle(string field) => Under(field, "work")
        || (field.Split('.') is ["fitted", var at, var part, ..] && (part == "balance" || WheelStudies.All.Any(s => s.Key == part)) && Position.Read(at) is { IsRead: true } position
            && Subject.At(position.Value) is { } assembly && assembly is not { Tyre: null, Wheel: null, Tread: null, Pressure: null });

    private static bool Under(string field, string path) => field == path || field.StartsWith(path + ".", StringComparison.Ordinal);

    private static (VisitFile Read, IReadOnlyList<Problem> Problems) ReadFile(FileNode root)
    {
        var problems = new List<Problem>();
        return (VisitFileReader.Read(root, problems), problems);
    }

    private static (VisitWork Work, IReadOnlyList<Problem> Problems) ReadWork(VisitFile file)
    {
        var problems = new List<Problem>();
        return (VisitWorkReader.Read(file, problems), problems);
    }

    /// <summary>The balance parts of the file, wheel by wheel, where the assemblies are the same as before.</summary>
    private static Dictionary<Position, FileNode> Balances(FileNode root, FittedVehicle subject) => Parts(root, subject, "balance").ToDictionary();

    /// <summary>The parts that other operations read, likewise.</summary>
    private static Dictionary<(Position At, string Key), FileNode> Studies(FileNode root, FittedVehicle subject) =>
        WheelStudies.All.SelectMany(s => Parts(root, subject, s.Key).Select(p => ((p.At, s.Key), p.Part))).ToDictionary();

    private static IEnumerable<(Position At, FileNode Part)> Parts(FileNode root, FittedVehicle subject, string key) =>
        (root.Member("fitted")?.Items ?? [])
            .Select(item => (At: item.Member("position") is { } at && Position.Read(at.Text) is { IsRead: true } position ? position.Value : (Position?)null, Part: item.Member(key)))
            .Where(p => p.At is { } at && subject.At(at) is not null && p.Part is { Kind: not NodeKind.Null })
            .Select(p => (p.At!.Value, p.Part!))
            .DistinctBy(p => p.Item1);

    /// <summary>A position in words: front left.</summary>
    public string Name(Position position) => State.Arrived.Vehicle.InWords(position);
}
