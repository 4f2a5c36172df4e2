using Trundle.Visits.Bay;

namespace Trundle.Web.Client.Entries;

/// <summary>What stands behind the fields of a page: a visit's entries, or the form of one computation kept on this device.</summary>
public interface IFields
{
    /// <summary>What stands in a field, as typed; null where nothing does.</summary>
    string? this[string field] { get; }

    /// <summary>All that is entered.</summary>
    VisitFields Fields { get; }

    /// <summary>In which units the person who enters reads and types.</summary>
    UnitHabits Units { get; }

    /// <summary>The problem of a field in words, or null.</summary>
    string? ProblemOf(string field);

    /// <summary>Enters texts into fields; an empty one takes a field away.</summary>
    Task EnterAsync(params (string Field, string Typed)[] texts);
}
