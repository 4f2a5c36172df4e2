using Trundle.Engine.Practice;
using Trundle.Measures;
using Trundle.Visits.Roll;

namespace Trundle.Web.Office.Roll;

/// <summary>What the roll's pages say of rows.</summary>
internal static class RollWords
{
    /// <summary>How an attempt was seen.</summary>
    public static string Word(this AttemptMode mode) => mode switch
    {
        AttemptMode.Observed => "observed",
        AttemptMode.Simulated => "in practice",
        AttemptMode.ThirdParty => "told",
    };

    /// <summary>What was decided.</summary>
    public static string Word(this AttemptDecision decision) => decision switch
    {
        AttemptDecision.Open => "open",
        AttemptDecision.Satisfactory => "satisfactory",
        AttemptDecision.NotYet => "not yet",
    };

    /// <summary>The attempts themselves, with the last decision of each.</summary>
    public static IReadOnlyList<(AttemptRow Row, AttemptDecision Decision)> Attempts(RollBook book) =>
        [.. book.Rows.Where(r => r.Decides is null).Select(r => (r, book.Rows.LastOrDefault(d => d.Decides == r.Id)?.Decision ?? r.Decision))];

    /// <summary>Each kind of practice that was tried three times or more, with its criteria as items, the hardest first.</summary>
    public static IReadOnlyList<(string Kind, IReadOnlyList<ItemStatistic> Items)> Items(RollBook book) =>
    [
        .. book.Rows.Where(r => r is { Mode: AttemptMode.Simulated, Decides: null, SafetyStop: null }).GroupBy(r => r.On.Split(", number ")[0])
            .Where(g => g.Count() >= 3)
            .Select(g => (g.Key, Items: ItemStatistics.Of([.. g.Where(r => r.Criteria.Count == g.First().Criteria.Count).Select(r => (IReadOnlyDictionary<string, bool>)r.Criteria.ToDictionary(c => c.Words, c => c.Met))])))
            .Select(k => (k.Key, (IReadOnlyList<ItemStatistic>)[.. k.Items.OrderBy(i => i.Difficulty)])),
    ];

    /// <summary>A number that may not be there.</summary>
    public static string Text(double? value) => value is { } v ? Quantity.Number(v, 2) : "–";
}
