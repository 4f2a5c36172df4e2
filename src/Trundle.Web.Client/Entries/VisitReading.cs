using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;

namespace Trundle.Web.Client.Entries;

/// <summary>A visit's file as read: its values, its problems by field, and how the visit stands.</summary>
public sealed class VisitReading
{
    private readonly Dictionary<string, string> _problems;

    private VisitReading(AssembledFile file, VisitFile read, VisitState state, Dictionary<string, string> problems) =>
        (File, Read, State, _problems) = (file, read, state, problems);

    /// <summary>The file.</summary>
    public AssembledFile File { get; }

    /// <summary>The file as read.</summary>
    public VisitFile Read { get; }

    /// <summary>How the visit stands.</summary>
    public VisitState State { get; }

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
    public static VisitReading Of(VisitFields fields)
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

        return new VisitReading(file, read, VisitStanding.Of(read, work), byField);
    }

    /// <summary>A position in words: front left.</summary>
    public string Name(Position position) => position.InWords(Axles);
}
