namespace Trundle.Visits.Bay;

/// <summary>
/// One thing that a person entered: a field and what was typed. Entries are never changed: a newer one for the same field supersedes the older.
/// </summary>
/// <param name="Id">Made on the tablet, so that the same entry sent twice is taken once.</param>
/// <param name="Field">The field's path, such as <c>fitted.1L.tread.inner.0</c>, <c>vehicle.axles.0.placard.size</c>, <c>work.steps.1L.bead-broken</c>.</param>
/// <param name="Typed">As typed; empty takes the field's value away (and is kept as an entry).</param>
/// <param name="By">The name of who entered.</param>
/// <param name="Role">What that person was then.</param>
/// <param name="At">When, in UTC.</param>
public sealed record Entry(Guid Id, string Field, string Typed, string By, Role Role, DateTimeOffset At)
{
    /// <summary>
    /// The entries of the field that nobody had entered over yet where and when this one was made: one as a rule, none where nothing had been entered,
    /// several where it chooses between them. Null where that is not told.
    /// </summary>
    public IReadOnlyList<Guid>? After { get; init; }

    /// <summary>The most entries that one entry may be made after.</summary>
    public const int MostAfter = 20;

    /// <summary>The most characters that one entry may hold.</summary>
    public const int MostCharacters = 2000;

    /// <summary>True where a field path has the form that entries use: dot-separated names of letters, digits, '-', '@' and '_'; at most 12 deep.</summary>
    public static bool IsField(string? field)
    {
        if (string.IsNullOrEmpty(field) || field.Length > 160)
        {
            return false;
        }

        var parts = field.Split('.');
        return parts.Length <= 12 && parts.All(p => p.Length is > 0 and <= 60 && p.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '@' or '_'))
            && parts[0] is "rules" or "country" or "shopRules" or "procedure" or "date" or "vehicle" or "fitted" or "conditions" or "arrival" or "work";
    }
}
