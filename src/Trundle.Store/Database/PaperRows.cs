namespace Trundle.Store.Database;

/// <summary>A photograph of a visit.</summary>
internal sealed class PhotoRow
{
    public Guid Id { get; set; }

    public Guid VisitId { get; set; }

    public required string Type { get; set; }

    public int Width { get; set; }

    public int Height { get; set; }

    public required byte[] Bytes { get; set; }

    public required string By { get; set; }

    public DateTimeOffset At { get; set; }
}

/// <summary>A thing of the shop's stock.</summary>
internal sealed class StockItemRow
{
    public Guid Id { get; set; }

    public required string Kind { get; set; }

    /// <summary>What two writings of one thing share.</summary>
    public required string Key { get; set; }

    public string? Name { get; set; }

    /// <summary>The mass of one weight in grams, or null.</summary>
    public double? MassGrams { get; set; }

    public required string Unit { get; set; }

    /// <summary>At how many it is ordered, or null where nobody said.</summary>
    public int? ReorderLevel { get; set; }

    public bool OutOfUse { get; set; }
}

/// <summary>One change of the stock: counted, received, or used on a visit.</summary>
internal sealed class StockMoveRow
{
    public long Sequence { get; set; }

    public Guid Id { get; set; }

    public Guid ItemId { get; set; }

    /// <summary><c>counted</c>, <c>received</c> or <c>used</c>.</summary>
    public required string Kind { get; set; }

    /// <summary>How many there were, came, or were used.</summary>
    public int Count { get; set; }

    /// <summary>On which visit, where it was used.</summary>
    public Guid? VisitId { get; set; }

    /// <summary>The place of the use on the visit, such as <c>work.stock.0</c>.</summary>
    public string? Place { get; set; }

    public required string By { get; set; }

    public DateTimeOffset At { get; set; }
}
