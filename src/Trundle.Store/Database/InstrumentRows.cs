namespace Trundle.Store.Database;

/// <summary>An instrument as its newest records leave it; every change stands as a record of its own beside it.</summary>
internal sealed class InstrumentRow
{
    public Guid Id { get; set; }

    public required string Kind { get; set; }

    public required string Name { get; set; }

    public string? Identification { get; set; }

    public DateOnly InUseFrom { get; set; }

    public DateOnly? OutOfUseFrom { get; set; }

    /// <summary>A balancer's profile, as JSON in the form of the key <c>balancer</c>; or null.</summary>
    public string? Profile { get; set; }
}

/// <summary>One record of an instrument, as typed and as reckoned. Rows are added, never changed and never removed.</summary>
internal sealed class InstrumentRecordRow
{
    /// <summary>The order in which the store took the records.</summary>
    public long Sequence { get; set; }

    /// <summary>Made with the form: sent twice, it is taken once.</summary>
    public Guid Id { get; set; }

    public Guid InstrumentId { get; set; }

    public required string Kind { get; set; }

    /// <summary>The day it is about.</summary>
    public DateOnly On { get; set; }

    /// <summary>When the next check is due, or null.</summary>
    public DateOnly? Due { get; set; }

    /// <summary>As typed, as JSON.</summary>
    public required string Body { get; set; }

    /// <summary>The operation that reckoned it, or null.</summary>
    public string? Operation { get; set; }

    /// <summary>That operation's answer, as JSON, or null.</summary>
    public string? Answer { get; set; }

    /// <summary>The answer in lines for a person.</summary>
    public required string Figures { get; set; }

    /// <summary>The verdict's word, or null where it is no check.</summary>
    public string? Verdict { get; set; }

    public required string EngineVersion { get; set; }

    public required string TableEdition { get; set; }

    public required string By { get; set; }

    public required string Role { get; set; }

    public DateTimeOffset At { get; set; }

    /// <summary>The record that this one stands in place of, or null.</summary>
    public Guid? Supersedes { get; set; }
}
