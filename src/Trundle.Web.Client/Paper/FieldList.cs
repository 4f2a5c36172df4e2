using System.Globalization;
using Trundle.Visits.Bay;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Paper;

/// <summary>A list in a visit's fields, such as <c>work.seen.0</c>, <c>work.seen.1</c>: which places are taken, and which is free.</summary>
public static class FieldList
{
    /// <summary>The numbers at which anything stands, in order.</summary>
    public static IReadOnlyList<int> Of(OpenVisit visit, string list)
    {
        ArgumentNullException.ThrowIfNull(visit);
        return [.. visit.Fields.Under(list).Select(e => Number(e, list)).Where(n => n >= 0).Distinct().Order()];
    }

    /// <summary>A number that was never used: what was taken back stays taken back, on every device.</summary>
    public static int Free(OpenVisit visit, string list)
    {
        ArgumentNullException.ThrowIfNull(visit);
        return visit.Fields.Newest.Where(e => e.Field.StartsWith(list + ".", StringComparison.Ordinal)).Select(e => Number(e, list)).DefaultIfEmpty(-1).Max() + 1;
    }

    /// <summary>The texts that take a place of a list back.</summary>
    public static (string Field, string Typed)[] TakeBack(OpenVisit visit, string at)
    {
        ArgumentNullException.ThrowIfNull(visit);
        return [.. visit.Fields.Under(at).Select(e => (e.Field, ""))];
    }

    private static int Number(Entry entry, string list) =>
        int.TryParse(entry.Field.AsSpan(list.Length + 1) is var rest && rest.IndexOf('.') is >= 0 and var end ? rest[..end] : rest, NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : -1;
}
