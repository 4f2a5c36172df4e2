using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Trundle.Measures;
using Trundle.Store.Database;
using Trundle.Visits.Bay;
using Trundle.Visits.Paper;

namespace Trundle.Store;

/// <summary>What left one visit as scrap.</summary>
/// <param name="Visit">The visit.</param>
/// <param name="Day">The visit's date, else the day it was opened.</param>
/// <param name="Scrap">What went out.</param>
public sealed record ScrapLine(VisitHeading Visit, DateOnly Day, ScrapOut Scrap);

/// <summary>What went out in one month.</summary>
/// <param name="Month">Its first day.</param>
/// <param name="Lines">Visit by visit, oldest first.</param>
public sealed record ScrapMonth(DateOnly Month, IReadOnlyList<ScrapLine> Lines)
{
    /// <summary>How many tyres.</summary>
    public int Tyres => Lines.Sum(l => l.Scrap.Tyres.Count);

    /// <summary>The mass of the lead weights.</summary>
    public Mass LeadWeights => Mass.FromGrams(Lines.Sum(l => l.Scrap.LeadWeights?.Grams ?? 0));
}

/// <summary>What went out as scrap, told from the entries of the visits.</summary>
public sealed class ScrapRecord
{
    private readonly StoreFile _file;

    internal ScrapRecord(StoreFile file) => _file = file;

    /// <summary>Every month in which something went out, newest first.</summary>
    public IReadOnlyList<ScrapMonth> Months()
    {
        using var context = _file.Context();
        var visits = context.Entries.AsNoTracking().Where(e => e.Field.StartsWith("work.scrap.")).Select(e => e.VisitId).Distinct().ToList();
        var lines = new List<ScrapLine>();
        foreach (var id in visits)
        {
            var heading = VisitStore.Heading(context.Visits.AsNoTracking().Single(v => v.Id == id));
            var fields = VisitFields.Of(context.Entries.AsNoTracking().Where(e => e.VisitId == id && (e.Field.StartsWith("work.scrap.") || e.Field == "date")).AsEnumerable().Select(e => VisitStore.Of(e).Entry));
            var scrap = VisitWorkReader.Read(fields.Assemble().Root.Member("work"), Procedure.BuiltIn, []).Paper.Scrap;
            if (!scrap.Empty)
            {
                var day = DateOnly.TryParseExact(fields["date"], "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) ? date : DateOnly.FromDateTime(heading.OpenedAt.UtcDateTime);
                lines.Add(new ScrapLine(heading, day, scrap));
            }
        }

        return [.. lines.GroupBy(l => new DateOnly(l.Day.Year, l.Day.Month, 1)).OrderByDescending(m => m.Key).Select(m => new ScrapMonth(m.Key, [.. m.OrderBy(l => l.Day).ThenBy(l => l.Visit.Number, StringComparer.Ordinal)]))];
    }
}
