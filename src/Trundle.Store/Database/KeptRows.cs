namespace Trundle.Store.Database;

/// <summary>A thing that the workshop keeps account of: only what no record of it can tell.</summary>
internal sealed class KeptRow
{
    public Guid Id { get; set; }

    /// <summary><c>set</c>, <c>registration</c>, <c>seller</c> or <c>fleet</c>.</summary>
    public required string Kind { get; set; }

    public required string Number { get; set; }

    /// <summary>The visit that it came from, or null.</summary>
    public Guid? VisitId { get; set; }
}

/// <summary>One record of it, as typed. Rows are added; the one change is that a purchaser's name is taken out.</summary>
internal sealed class KeptRecordRow
{
    /// <summary>The order in which the store took the records.</summary>
    public long Sequence { get; set; }

    /// <summary>Made with the form: sent twice, it is taken once.</summary>
    public Guid Id { get; set; }

    public Guid KeptId { get; set; }

    public required string Kind { get; set; }

    /// <summary>The day it is about.</summary>
    public DateOnly On { get; set; }

    /// <summary>As typed, as JSON.</summary>
    public required string Body { get; set; }

    public required string By { get; set; }

    public required string Role { get; set; }

    public DateTimeOffset At { get; set; }
}
