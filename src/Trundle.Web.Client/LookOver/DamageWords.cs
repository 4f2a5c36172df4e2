using System.Globalization;
using Trundle.Engine.Condition;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.LookOver;

/// <summary>What the lists of damages and repairs on the look over share.</summary>
public static class DamageWords
{
    /// <summary>Where on a tyre.</summary>
    public static IReadOnlyList<(string Word, string Text)> Places { get; } = [("tread", "tread"), ("shoulder", "shoulder"), ("sidewall", "sidewall"), ("bead", "bead")];

    /// <summary>Yes or no, where nothing entered means that nobody looked.</summary>
    public static IReadOnlyList<(string Word, string Text)> YesOrNo { get; } = [("true", "yes"), ("false", "no")];

    /// <summary>How many items of a list have something entered, the gaps before the last counted.</summary>
    public static int Entered(OpenVisit visit, string field)
    {
        ArgumentNullException.ThrowIfNull(visit);
        ArgumentNullException.ThrowIfNull(field);
        return visit.Fields.Under(field)
            .Select(e => e.Field[(field.Length + 1)..].Split('.')[0])
            .Select(n => int.TryParse(n, NumberStyles.None, CultureInfo.InvariantCulture, out var i) ? i + 1 : 0)
            .DefaultIfEmpty(0).Max();
    }

    /// <summary>What a verdict means, in a short sentence.</summary>
    public static string Says(Verdict verdict) => verdict switch
    {
        Verdict.MayRun => "may run, by what was entered",
        Verdict.Repair => "may be repaired from inside, by what was entered",
        Verdict.Refer => "look, measure or ask before anything else",
        Verdict.PutRight => "not to run as it stands: the finding that holds it is put right first",
        Verdict.Renew => "another one takes its place",
        Verdict.Discard => "not to be used again",
    };
}
