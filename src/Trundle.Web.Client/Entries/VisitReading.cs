using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;

namespace Trundle.Web.Client.Entries;

/// <summary>A visit's file as read: its values, its problems by field, and how the visit stands.</summary>
public sealed class VisitReading
{
    private readonly Dictionary<string, string> _problems;

    private VisitReading(AssembledFile file, VisitFile read, VisitState state, Dictionary<string, string> problems, IReadOnlyList<CondemnedHit> condemned) =>
        (File, Read, State, _problems, Condemned) = (file, read, state, problems, condemned);

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
    public static VisitReading Of(VisitFields fields) => Of(fields, Guid.Empty, []);

    /// <summary>Reads the file that the fields make, and holds its names against the workshop's register.</summary>
    /// <param name="fields">The visit.</param>
    /// <param name="visit">Which visit it is.</param>
    /// <param name="register">The lines of the register that stand.</param>
    public static VisitReading Of(VisitFields fields, Guid visit, IReadOnlyList<CondemnedLine> register)
    {
        ArgumentNullException.ThrowIfNull(fields);
        var file = fields.Assemble();
        var root = file.Root;
        var problems = new List<Problem>();
        var read = VisitFileReader.Read(root, problems);
        var work = VisitWorkReader.Read(read.Work, problems);
        var byField = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var problem in problems)
        {
            byField.TryAdd(file.FieldOf(problem.Where), problem.Message);
        }

        var condemned = CondemnedNames.Hits(fields, visit, register).ToList();
        var known = condemned.Select(h => h.Undecided(fields)).OfType<Finding>().ToList();
        return new VisitReading(file, read, VisitStanding.Of(read, work, known), byField, condemned);
    }

    /// <summary>A position in words: front left.</summary>
    public string Name(Position position) => position.InWords(Axles);
}
