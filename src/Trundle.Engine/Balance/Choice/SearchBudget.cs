namespace Trundle.Engine.Balance.Choice;

/// <summary>How much work a search may still do. It is counted, not timed, so that a result never depends on the machine.</summary>
internal sealed class SearchBudget(long steps)
{
    private long _left = steps;

    /// <summary>False from the moment when the work is used up.</summary>
    public bool IsLeft => _left > 0;

    /// <summary>Takes some work; false where none was left.</summary>
    public bool Spend(long steps)
    {
        _left -= steps;
        return _left > 0;
    }
}
