using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Engine.Sidewall;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Keeping;

/// <summary>A recorded tyre that a recall's range holds, or may hold.</summary>
/// <param name="Tyre">The tyre.</param>
/// <param name="Verdict">Whether it does, and why it is not certain.</param>
public sealed record RecallHit(RecordedTyre Tyre, TinVerdict Verdict)
{
    /// <summary>The verdict in words.</summary>
    public string Words => Verdict.Match == TinMatch.Yes ? "matches" : $"may match: {string.Join("; ", Verdict.Why)}";
}

/// <summary>What a recall's range says of every tyre that was recorded.</summary>
/// <param name="Range">The range.</param>
/// <param name="Hits">Tyres in it, certain ones first, each group newest first.</param>
/// <param name="Unread">Numbers that are no TIN in any way: a person looks at them.</param>
/// <param name="Looked">How many numbers were looked at.</param>
/// <param name="Without">How many fitted tyres have no number recorded.</param>
public sealed record RecallAnswer(TinRange Range, IReadOnlyList<RecallHit> Hits, IReadOnlyList<RecordedTyre> Unread, int Looked, int Without)
{
    private static readonly string[] Columns = ["match", "why", "tin", "where", "number", "vehicle", "position", "on", "superseded", "left", "fate"];

    /// <summary>Looks every recorded tyre through.</summary>
    public static RecallAnswer Of(TinRange range, RecordedTyres recorded)
    {
        ArgumentNullException.ThrowIfNull(range);
        ArgumentNullException.ThrowIfNull(recorded);
        var judged = recorded.Tyres.Select(t => (Tyre: t, Verdict: range.Verdict(t.Tin, t.On))).ToList();
        return new RecallAnswer(
            range,
            [.. judged.Where(j => j.Verdict is { Match: not TinMatch.No }).Select(j => new RecallHit(j.Tyre, j.Verdict!)).OrderByDescending(h => h.Verdict.Match).ThenByDescending(h => h.Tyre.On).ThenBy(h => h.Tyre.Number, StringComparer.Ordinal).ThenBy(h => h.Tyre.Position, StringComparer.Ordinal)],
            [.. judged.Where(j => j.Verdict is null).Select(j => j.Tyre)],
            recorded.Tyres.Count,
            recorded.Without);
    }

    /// <summary>The answer of command and interface: 'no' where any tyre matches or may match.</summary>
    public Answer Answer() => new(Hits.Count > 0, Json(), [.. Lines()]);

    /// <summary>The matches as CSV.</summary>
    public string Csv() => string.Concat(Hits.Select(h => CsvLine.Of(
        h.Verdict.Match == TinMatch.Yes ? "yes" : "may", string.Join("; ", h.Verdict.Why), h.Tyre.Tin, h.Tyre.Where, h.Tyre.Number, h.Tyre.Vehicle, h.Tyre.Position, Day(h.Tyre),
        h.Tyre.Superseded ? "yes" : "no", h.Tyre.Left ? "yes" : "not known", h.Tyre.Fate)).Prepend(CsvLine.Of(Columns)));

    /// <summary>What was not looked through, in sentences.</summary>
    public IReadOnlyList<string> Gaps =>
    [
        .. Unread.Count == 0 ? [] : new[] { $"{Number(Unread.Count)} recorded {(Unread.Count == 1 ? "number is" : "numbers are")} no TIN in any way; look at {(Unread.Count == 1 ? "it" : "them")}: {string.Join("; ", Unread.Take(12).Select(t => $"'{t.Tin}' ({t.Where} {t.Number}{At(t)})"))}{(Unread.Count > 12 ? "; …" : "")}." },
        .. Without == 0 ? [] : new[] { $"{Number(Without)} fitted {(Without == 1 ? "tyre has" : "tyres have")} no TIN recorded: this look-up cannot find {(Without == 1 ? "it" : "them")}." },
    ];

    private JsonObject Json() => new()
    {
        ["range"] = new JsonObject { ["plant"] = AnswerJson.List(Range.Plants), ["code"] = Range.Code, ["from"] = Week(Range.From), ["to"] = Week(Range.To) },
        ["matches"] = AnswerJson.List(Hits.Select(h =>
        {
            var json = Json(h.Tyre);
            json.Insert(0, "match", h.Verdict.Match == TinMatch.Yes ? "yes" : "may");
            json.Insert(1, "why", AnswerJson.List(h.Verdict.Why));
            return (JsonNode?)json;
        })),
        ["unread"] = AnswerJson.List(Unread.Select(t => (JsonNode?)Json(t))),
        ["looked"] = Looked,
        ["withoutTin"] = Without,
    };

    private IEnumerable<string> Lines()
    {
        yield return $"Recall of {Range.Text}: {Counted(TinMatch.Yes)} in it, {Counted(TinMatch.May)} that may be, of {Number(Looked)} recorded {(Looked == 1 ? "number" : "numbers")}.";
        foreach (var (tyre, _, words) in Hits.Select(h => (h.Tyre, h.Verdict, h.Words)))
        {
            yield return $"{tyre.Tin}: {words}";
            yield return $"          {tyre.Where} {tyre.Number}, {Day(tyre)}{(tyre.Vehicle is null ? "" : $", {tyre.Vehicle}")}{At(tyre)}: {tyre.Fate}";
        }

        foreach (var gap in Gaps)
        {
            yield return gap;
        }
    }

    private string Counted(TinMatch match) => Number(Hits.Count(h => h.Verdict.Match == match));

    private static string At(RecordedTyre tyre) => tyre.Position is null ? "" : $", {tyre.Position}";

    private static JsonObject Json(RecordedTyre tyre) => new()
    {
        ["tin"] = tyre.Tin,
        ["where"] = tyre.Where,
        ["number"] = tyre.Number,
        ["id"] = tyre.Id.ToString("D"),
        ["vehicle"] = tyre.Vehicle,
        ["position"] = tyre.Position,
        ["on"] = Day(tyre),
        ["superseded"] = tyre.Superseded,
        ["left"] = tyre.Left ? true : null,
        ["fate"] = tyre.Fate,
    };

    private static JsonObject? Week(TinWeek? week) => week is null ? null : new JsonObject { ["week"] = week.Week, ["year"] = week.Year };

    private static string Day(RecordedTyre tyre) => tyre.On.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Number(int n) => n.ToString(CultureInfo.InvariantCulture);
}
