using Trundle.Engine.Findings;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Bay;

/// <summary>A decision that belongs to no finding as the visit stands: the finding has gone since, or the key is a slip.</summary>
/// <param name="Key">The decision's key, as written.</param>
/// <param name="Nearest">The key of the finding still to be decided that is most like it, or the first one at the same place; null where none is.</param>
public sealed record DecisionNote(string Key, string? Nearest)
{
    /// <summary>The note for a person.</summary>
    public string Text => $"The decision '{NumberText.Shown(Key)}' belongs to no finding of this visit as it stands: it lifts nothing. "
        + (Nearest is null ? "The finding may have been put right since." : $"The finding may have been put right since; or did you mean '{Nearest}'?");
}

/// <summary>Looks for decisions that decide nothing. They are notes and no faults: a finding that is put right leaves its decision behind.</summary>
public static class DecisionNotes
{
    /// <summary>One note for each such decision, in the order of the keys.</summary>
    public static IReadOnlyList<DecisionNote> Of(VisitState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        var keys = state.Legs.SelectMany(l => l.Findings).Where(f => f.Category > Category.None).Select(VisitFindings.DecisionKey).ToHashSet(StringComparer.Ordinal);
        var open = state.Stops.Select(s => s.DecisionKey).OfType<string>().Distinct().ToList();
        return
        [
            .. state.Work.Decisions.Keys.Where(k => !keys.Contains(k)).Order(StringComparer.Ordinal)
                .Select(k => new DecisionNote(k, FileObject.Nearest(k, open) ?? open.Find(o => At(o) == At(k)))),
        ];
    }

    private static string At(string key) => key[(key.LastIndexOf('@') + 1)..];
}
