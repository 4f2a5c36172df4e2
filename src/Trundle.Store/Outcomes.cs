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

    public Outcomes(VisitFields fields)
    {
        _fields = fields;
        var assembled = fields.Assemble();
        var problems = new List<Problem>();
        var file = VisitFileReader.Read(assembled.Root, problems);
        VisitWorkReader.Read(file, problems);
        foreach (var problem in problems)
        {
            _problems.TryAdd(assembled.FieldOf(problem.Where), problem);
        }
    }

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
}
