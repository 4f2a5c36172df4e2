using Trundle.Visits.Bay;
using Trundle.Visits.Paper;

namespace Trundle.Sheets;

/// <summary>What the vehicle brought and what the customer agreed to or declined, as plain sentences.</summary>
internal static class SheetPaper
{
    /// <summary>What was lit, damaged or handed over before any work, a line each.</summary>
    public static IEnumerable<string> Came(VisitState state)
    {
        var arrival = state.Entered.Arrival;
        if (arrival.Lit.Count > 0)
        {
            yield return $"Warning lamps lit before work began: {string.Join(", ", arrival.Lit)}.";
        }

        if (arrival.Dark.Count > 0)
        {
            yield return $"Looked at and not lit: {string.Join(", ", arrival.Dark)}.";
        }

        if (arrival.Damage.Count > 0)
        {
            yield return $"Damage that it came with: {string.Join("; ", arrival.Damage.Select(Damage))}.";
        }

        if (state.Work.Paper.LockingKey is { In: { } from } key)
        {
            yield return $"Key of the locking fixings: came in ({from.TrimEnd('.')}); {(key.Out is { } to ? $"now: {to.TrimEnd('.')}" : "nobody has said where it is now")}.";
        }
    }

    /// <summary>The same on a full page: what was lit, where it is damaged, and the key; the rest stands in the workshop's file.</summary>
    public static IEnumerable<string> CameShort(VisitState state)
    {
        const int most = 4;
        const int longest = 60;
        var arrival = state.Entered.Arrival;
        if (arrival.Lit.Count > 0)
        {
            yield return $"Warning lamps lit before work began: {Cut(string.Join(", ", arrival.Lit), 3 * longest)}.";
        }

        if (arrival.Damage.Count > 0)
        {
            yield return $"It came with damage at: {string.Join("; ", arrival.Damage.Take(most).Select(d => Cut(d.Place, longest)))}{(arrival.Damage.Count > most ? FormattableString.Invariant($"; and at {arrival.Damage.Count - most} more places") : "")}. What it is stands in the workshop's file.";
        }

        if (state.Work.Paper.LockingKey is { In: not null, Out: var where })
        {
            yield return $"Key of the locking fixings: {(where is null ? "nobody has said where it is now" : $"now {Cut(where.TrimEnd('.'), 2 * longest)}")}.";
        }
    }

    /// <summary>A text of at most so many characters.</summary>
    public static string Cut(string text, int longest) => text.Length <= longest ? text : $"{text[..(longest - 1)].TrimEnd()}…";

    /// <summary>A damage in words: place, what, and how many photographs.</summary>
    public static string Damage(BodyDamage damage) =>
        $"{damage.Place}{(damage.Words is { } words ? $", {words.TrimEnd('.')}" : "")}{(damage.Photos.Count == 0 ? "" : damage.Photos.Count == 1 ? " (photographed)" : FormattableString.Invariant($" ({damage.Photos.Count} photographs)"))}";

    /// <summary>What was agreed, in one line, or null.</summary>
    public static string? Agreed(VisitPaper paper) => paper.Agreed.Count == 0 ? null
        : $"Agreed: {string.Join("; ", paper.Agreed)}.{(paper.AgreementSigned is { } signed ? $" Signed: {Signature(signed, paper.AgreementAt)}." : "")}";

    /// <summary>Work that was declined, with its risk.</summary>
    public static string Declined(DeclinedWork declined) =>
        $"{declined.What.TrimEnd('.')}. If it is left: {declined.Risk.TrimEnd('.')}.{(declined.Signed is { } signed ? $" Signed: {Signature(signed, declined.At)}." : "")}";

    /// <summary>A name and when.</summary>
    public static string Signature(string name, string? at) => at is null ? name : $"{name}, {at}";
}
