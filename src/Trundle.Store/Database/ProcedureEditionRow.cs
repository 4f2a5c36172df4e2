namespace Trundle.Store.Database;

/// <summary>One edition of the workshop's own procedure. Rows are added, never changed and never removed.</summary>
internal sealed class ProcedureEditionRow
{
    /// <summary>From 1, without a gap.</summary>
    public int Number { get; set; }

    /// <summary>Made with the form: sent twice, it is taken once.</summary>
    public Guid Id { get; set; }

    /// <summary>As written.</summary>
    public required string Text { get; set; }

    /// <summary>The edition of the carried procedure.</summary>
    public required string Of { get; set; }

    /// <summary>What it changes, a line each.</summary>
    public required string Changes { get; set; }

    /// <summary>What it leaves out and what stays, a line each.</summary>
    public required string Kept { get; set; }

    public required string By { get; set; }

    public required string Role { get; set; }

    public DateTimeOffset At { get; set; }
}
