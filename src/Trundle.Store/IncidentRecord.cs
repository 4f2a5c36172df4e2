using Microsoft.EntityFrameworkCore;
using Trundle.Store.Database;
using Trundle.Visits.Bay;

namespace Trundle.Store;

/// <summary>An incident or a near miss, with the visit on which it was recorded.</summary>
/// <param name="Visit">The visit.</param>
/// <param name="Incident">What was recorded.</param>
public sealed record IncidentLine(VisitHeading Visit, Incident Incident);

/// <summary>Incidents and near misses, told from the entries of the visits.</summary>
public sealed class IncidentRecord
{
    private readonly StoreFile _file;

    internal IncidentRecord(StoreFile file) => _file = file;

    /// <summary>Every one that stands, newest first.</summary>
    public IReadOnlyList<IncidentLine> All()
    {
        using var context = _file.Context();
        var lines = new List<IncidentLine>();
        foreach (var visit in context.Entries.AsNoTracking().Where(e => e.Field.StartsWith("work.incidents.")).AsEnumerable().GroupBy(e => e.VisitId))
        {
            var heading = VisitStore.Heading(context.Visits.AsNoTracking().Single(v => v.Id == visit.Key));
            var work = VisitWorkReader.Read(VisitFields.Of(visit.Select(e => VisitStore.Of(e).Entry)).Assemble().Root.Member("work"), Procedure.BuiltIn, []);
            lines.AddRange(work.Incidents.Select(i => new IncidentLine(heading, i)));
        }

        return [.. lines.OrderByDescending(l => l.Incident.At ?? l.Visit.OpenedAt).ThenBy(l => l.Visit.Number, StringComparer.Ordinal)];
    }
}
