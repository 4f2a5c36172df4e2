namespace Trundle.Engine.Balance.Choice;

/// <summary>How much work a search may still do. It is counted, not timed, so that a result never depends on the machine.</summary>
internal sealed class SearchBudget(long work)
{
    private long _left = work;
    private long _kept;

    /// <summary>False from the moment when the work is used up that was not kept back.</summary>
    public bool IsLeft => _left > _kept;

    /// <summary>Work done so far.</summary>
    public long Spent { get; private set; }

    /// <summary>Takes some work; false where none was left.</summary>
    public bool Spend(long work)
    {
        _left -= work;
        Spent += work;
        return _left > _kept;
    }

    /// <summary>Keeps a part of what is left for later; nothing gives all of it free.</summary>
    public void KeepBack(double part) => _kept = (long)(Math.Max(0, _left) * part);

    /// <summary>A budget of its own for one task, of no more than is left here; <see cref="Settle"/> takes what it spent.</summary>
    public SearchBudget Part(long most) => new(Math.Min(most, Math.Max(0, _left - _kept)));

    /// <summary>Takes what a part spent.</summary>
    public void Settle(SearchBudget part) => Spend(part.Spent);
}
