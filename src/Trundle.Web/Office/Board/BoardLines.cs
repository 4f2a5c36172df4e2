using System.Collections.Concurrent;
using Trundle.Store;
using Trundle.Visits.Bay;

namespace Trundle.Web.Office.Board;

/// <summary>The board's lines, each made anew only where something was entered on its visit, in the register of condemned parts, or a new day began.</summary>
internal sealed class BoardLines(WorkshopStore store)
{
    private readonly ConcurrentDictionary<Guid, (string Tip, BoardLine Line)> _made = new();

    /// <summary>Every vehicle in the workshop by its promised time; those without one at the end, in the order in which they came.</summary>
    public IReadOnlyList<BoardLine> All(DateTimeOffset now)
    {
        var tips = store.Visits.Tips();
        var register = store.Condemned.Standing();
        var besides = FormattableString.Invariant($"{register.Count}-{(register.Count == 0 ? 0 : register.Max(r => r.At.UtcTicks))}-{now:yyyyMMdd}");
        foreach (var gone in _made.Keys.Except(tips.Select(t => t.Visit)).ToList())
        {
            _made.TryRemove(gone, out _);
        }

        var lines = new List<BoardLine>();
        foreach (var (visit, last) in tips)
        {
            var tip = FormattableString.Invariant($"{last}-{besides}");
            if (!_made.TryGetValue(visit, out var made) || made.Tip != tip)
            {
                if (store.Visits.Find(visit) is not { } stored)
                {
                    continue;
                }

                made = (tip, BoardLine.Of(stored, register, now));
                _made[visit] = made;
            }

            lines.Add(made.Line with { Late = made.Line.Promised < now.DateTime });
        }

        return [.. lines.OrderBy(l => l.Promised ?? DateTime.MaxValue).ThenBy(l => l.Visit.OpenedAt)];
    }
}
