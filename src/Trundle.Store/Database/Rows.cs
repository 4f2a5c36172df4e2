namespace Trundle.Store.Database;

/// <summary>A visit: only what no entry can tell. Everything else about it is entered.</summary>
internal sealed class VisitRow
{
    public Guid Id { get; set; }

    public required string Number { get; set; }

    public DateTimeOffset OpenedAt { get; set; }

    public required string OpenedBy { get; set; }

    /// <summary>When it was handed back, or null while it is in the workshop: so that the board reads only what is there.</summary>
    public DateTimeOffset? HandedBackAt { get; set; }
}

/// <summary>One entry, as typed and as understood. Rows are added, never changed and never removed.</summary>
internal sealed class EntryRow
{
    /// <summary>The order in which the store took the entries.</summary>
    public long Sequence { get; set; }

    public Guid Id { get; set; }

    public Guid VisitId { get; set; }

    public required string Field { get; set; }

    public required string Typed { get; set; }

    /// <summary>The value in SI units where the field holds a quantity that was read.</summary>
    public double? SiValue { get; set; }

    public string? SiUnit { get; set; }

    /// <summary><c>read</c>, <c>emptied</c>, or the code of the problem.</summary>
    public required string Outcome { get; set; }

    /// <summary>The problem in words, or null.</summary>
    public string? Problem { get; set; }

    public required string EngineVersion { get; set; }

    public required string TableEdition { get; set; }

    public required string By { get; set; }

    public required string Role { get; set; }

    /// <summary>When it was entered, by the tablet's clock, never later than when it came.</summary>
    public DateTimeOffset At { get; set; }

    public DateTimeOffset ReceivedAt { get; set; }

    /// <summary>What stood in the field where it was made: identifiers parted by blanks, empty where nothing did; null where that was not told.</summary>
    public string? After { get; set; }

    /// <summary>The entry for the same field that this one follows, or null.</summary>
    public Guid? Supersedes { get; set; }
}

/// <summary>A person of the workshop.</summary>
internal sealed class PersonRow
{
    public long Id { get; set; }

    public required string Name { get; set; }

    public required string Role { get; set; }

    public required string Pressure { get; set; }

    public required string Depth { get; set; }

    public required string Torque { get; set; }

    public required string Mass { get; set; }

    /// <summary>No longer here: the name stays beside what was entered, and may enter nothing more.</summary>
    public bool Left { get; set; }
}

/// <summary>A name of a tyre or wheel that was condemned on a visit.</summary>
internal sealed class CondemnedRow
{
    public long Id { get; set; }

    /// <summary><c>tyre</c>, <c>tin</c> or <c>wheel</c>.</summary>
    public required string Kind { get; set; }

    /// <summary>The name without blanks and dashes, in capitals.</summary>
    public required string Key { get; set; }

    /// <summary>The name as typed.</summary>
    public required string Shown { get; set; }

    public Guid VisitId { get; set; }

    public required string Place { get; set; }

    /// <summary>The entry that condemned it.</summary>
    public Guid EntryId { get; set; }

    public required string By { get; set; }

    public DateTimeOffset At { get; set; }

    public DateTimeOffset? WithdrawnAt { get; set; }

    public string? WithdrawnBy { get; set; }

    public string? WithdrawnWhy { get; set; }
}

/// <summary>A key of the host that signs its forms and cookies, as XML.</summary>
internal sealed class HostKeyRow
{
    public long Id { get; set; }

    public required string Name { get; set; }

    public required string Xml { get; set; }
}
