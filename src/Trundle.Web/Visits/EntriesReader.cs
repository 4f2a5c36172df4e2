using System.Globalization;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;

namespace Trundle.Web.Visits;

/// <summary>Reads <c>{"entries":[{"id","field","typed","by","at"}]}</c> strictly; what was typed is kept to the letter.</summary>
internal static class EntriesReader
{
    private static readonly string[] TimeForms = ["yyyy-MM-dd'T'HH:mm:ss.FFFFFFFK", "yyyy-MM-dd'T'HH:mm:ssK"];

    public static IReadOnlyList<Entry> Read(FileObject o)
    {
        o.Require("entries", "give a list, empty where there is nothing to send");
        return [.. o.Objects("entries").Select(Entry).OfType<Entry>()];
    }

    private static Entry? Entry(FileObject o)
    {
        var id = o.Require("id", "each entry has an identifier made where it was typed") ? Id(o, "id") : null;
        var field = o.Require("field", "say which field") ? o.Text("field") : null;
        var typed = o.Node("typed");
        if (typed is null || typed.Kind != NodeKind.Text)
        {
            o.Wrong("typed", "not-a-text", "Here should stand what was typed, in quotes; empty quotes take the field's value away.");
        }

        var by = o.Require("by", "say who entered it") ? o.Text("by") : null;
        var at = o.Require("at", "say when") ? o.Value("at", Time) : null;
        var after = After(o);
        // The role that counts is the one the workshop knows of the person.
        o.Knows("role");
        o.Done();
        return id is { } guid && field is not null && typed is { Kind: NodeKind.Text } && by is not null && at is { } time
            ? new Entry(guid, field, typed.Text, by, Role.Trainee, time) { After = after }
            : null;
    }

    /// <summary>What stood in the field where the entry was made; null where it is not told.</summary>
    private static List<Guid>? After(FileObject o)
    {
        if (!o.Has("after"))
        {
            return null;
        }

        var ids = new List<Guid>();
        foreach (var text in o.Texts("after"))
        {
            if (Guid.TryParseExact(text, "D", out var id) && ids.Count < Trundle.Visits.Bay.Entry.MostAfter)
            {
                ids.Add(id);
                continue;
            }

            o.Wrong("after", "id-unreadable", $"'{NumberText.Shown(text)}' is not one of at most {Trundle.Visits.Bay.Entry.MostAfter} identifiers of entries of this field.");
            break;
        }

        return ids;
    }

    /// <summary>An identifier, or null.</summary>
    public static Guid? Id(FileObject o, string key) => o.Value(key, text => Guid.TryParseExact(text, "D", out var id) && id != Guid.Empty
        ? Reading<Guid>.Of(id)
        : Reading<Guid>.Failed("id-unreadable", $"'{NumberText.Shown(text)}' is not an identifier; write 8-4-4-4-12 hexadecimal digits."));

    private static Reading<DateTimeOffset> Time(string text) =>
        DateTimeOffset.TryParseExact(text, TimeForms, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var time)
        && time.Year is >= 2000 and <= 9000
            ? Reading<DateTimeOffset>.Of(time)
            : Reading<DateTimeOffset>.Failed("time-unreadable", $"'{NumberText.Shown(text)}' is not a time; write it as 2026-03-14T08:52:00.000Z.");
}
