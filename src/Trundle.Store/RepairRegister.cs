using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Trundle.Store.Database;
using Trundle.Visits.Bay;

namespace Trundle.Store;

/// <summary>
/// Repairs that were done to a tyre on earlier visits, by the workshop's own name of the tyre, so that whoever opens it next knows of them. A TIN alone
/// names every tyre of one mould and week and tells nothing of this one. It is made of the entries of those visits.
/// </summary>
internal static class RepairRegister
{
    /// <summary>The name beside the entries that the register itself makes.</summary>
    public const string Name = "repair register";

    /// <summary>The fields that must tell of earlier repairs and do not yet, each with what they are to say.</summary>
    public static IReadOnlyList<(string Field, string Typed)> Missing(StoreContext context, Guid visit, VisitFields fields)
    {
        var named = Tyres(fields).ToList();
        if (named.Count == 0)
        {
            return [];
        }

        var missing = new List<(string, string)>();
        foreach (var known in Done(context, visit).SelectMany(d => named.Where(n => n.Key == d.Key).Select(n => (n.Place, Repair: d))).GroupBy(d => d.Place, StringComparer.Ordinal))
        {
            // What a person entered of this tyre's repairs stays; the register fills an empty place only.
            if (fields.Under($"{known.Key}.tyre.repairs").Any())
            {
                continue;
            }

            missing.Add(($"{known.Key}.tyre.repaired", "true"));
            foreach (var (repair, i) in known.Select(k => k.Repair).OrderBy(r => r.At).Select((r, i) => (r, i)))
            {
                var at = string.Create(CultureInfo.InvariantCulture, $"{known.Key}.tyre.repairs.{i}");
                missing.Add(($"{at}.place", repair.Place));
                missing.Add(($"{at}.method", "stem and patch"));
                if (repair.Size is { } size)
                {
                    missing.Add(($"{at}.size", size));
                }
            }
        }

        return missing;
    }

    /// <summary>Every repair that is marked as done on another visit, with the name of its tyre.</summary>
    private static IEnumerable<(string Key, string Place, string? Size, DateTimeOffset At)> Done(StoreContext context, Guid but)
    {
        var visits = context.Entries.AsNoTracking().Where(e => e.VisitId != but && e.Field.StartsWith("work.repairs.")).Select(e => e.VisitId).Distinct().ToList();
        foreach (var id in visits)
        {
            var fields = VisitFields.Of(VisitStore.EntriesOf(context, id).Select(e => e.Entry));
            foreach (var at in fields.Under("work.repairs").Select(e => e.Field.Split('.')[2]).Distinct(StringComparer.Ordinal))
            {
                if (fields.EntryOf($"work.steps.{at}.repair-marked") is not { } marked)
                {
                    continue;
                }

                var record = RepairRecord.FieldAt(at);
                var place = fields.Under($"work.renewed.{at}.tyre").Any() ? $"work.renewed.{at}" : $"fitted.{at}";
                foreach (var tyre in Tyres(fields).Where(t => t.Place == place))
                {
                    yield return (tyre.Key, fields[$"{record}.place"] ?? "tread", fields[$"{record}.size"], marked.At);
                }
            }
        }
    }

    private static IEnumerable<NamedPart> Tyres(VisitFields fields) => CondemnedNames.Of(fields).Where(n => n.Kind == CondemnedKind.Tyre);
}
