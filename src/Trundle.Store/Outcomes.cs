using Trundle.Measures;
using Trundle.Store.Database;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;

namespace Trundle.Store;

/// <summary>How each field of a visit was understood, by the same readers that judge the visit.</summary>
internal sealed class Outcomes
{
    private readonly VisitFields _fields;
    private readonly Dictionary<string, Problem> _problems = new(StringComparer.Ordinal);

    private Outcomes(VisitFields fields, VisitFields read)
    {
        _fields = fields;
        var assembled = read.Assemble();
        var problems = new List<Problem>();
        var file = VisitFileReader.Read(assembled.Root, problems);
        VisitWorkReader.Read(file, problems);
        foreach (var problem in problems)
        {
            _problems.TryAdd(assembled.FieldOf(problem.Where), problem);
        }
    }

    /// <summary>The outcomes of some fields: of the visit only those parts are read that a reader holds them against.</summary>
    public static Outcomes Of(VisitFields fields, IReadOnlyCollection<string> changed) => changed.Any(HeldAgainstAll) ? Whole(fields) : new(fields, Around(fields, changed));

    /// <summary>The outcomes of every field.</summary>
    public static Outcomes Whole(VisitFields fields) => new(fields, fields);

    public (double? Si, string? Unit, string Outcome, string? Problem) Of(EntryRow row)
    {
        if (row.Typed.Length == 0)
        {
            return (null, null, "emptied", null);
        }

        // Only the newest entry of a field is part of the visit that was read.
        if (_fields.EntryOf(row.Field)?.Id == row.Id && _problems.TryGetValue(row.Field, out var problem))
        {
            return (null, null, problem.Code, problem.Message);
        }

        var amount = FieldQuantity.Read(row.Field, row.Typed);
        return (amount?.Value, amount?.Unit, "read", null);
    }

    /// <summary>The name of a tyre or a wheel is held against those at every other place.</summary>
    private static bool HeldAgainstAll(string field) => field.EndsWith(".id", StringComparison.Ordinal);

    private static VisitFields Around(VisitFields fields, IReadOnlyCollection<string> changed)
    {
        var parts = new HashSet<string>(StringComparer.Ordinal);
        foreach (var field in changed)
        {
            parts.Add(PartOf(field));
            if (field.StartsWith("fitted.", StringComparison.Ordinal))
            {
                // Tyres and wheels are read with the vehicle that they are on.
                parts.Add("vehicle");
            }
            else if (field.StartsWith("work.", StringComparison.Ordinal))
            {
                // Steps are those of the workshop's procedure.
                parts.Add("procedure");
            }
        }

        return VisitFields.Of(parts.SelectMany(fields.Under));
    }

    /// <summary>The part of a visit in which a field is read: one wheel, one kind of work, one place's steps, or all under its first name.</summary>
    private static string PartOf(string field)
    {
        var names = field.Split('.');
        var take = names[0] is "fitted" ? 2 : names[0] is not "work" ? 1 : names.Length > 2 && names[1] is "steps" ? 3 : 2;
        return string.Join('.', names.Take(take));
    }
}
