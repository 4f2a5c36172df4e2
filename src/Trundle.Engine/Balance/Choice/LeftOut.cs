namespace Trundle.Engine.Balance.Choice;

/// <summary>What a choice did not look at: of so many pieces, this mass or more, coming no nearer than a score; and why not.</summary>
internal sealed class LeftOut
{
    private readonly List<(int Pieces, double Grams, double Score, ProofGap Why)> _all = [];

    public void Add(int pieces, double grams, double score, ProofGap why) => _all.Add((pieces, grams, score, why));

    /// <summary>Sets from a mass on were left out: of strips heavier than those listed, or of all from nothing on where the list came to no end. None where it is infinite.</summary>
    public void AddFrom(int pieces, double grams)
    {
        if (double.IsFinite(grams))
        {
            Add(pieces, grams, 0, grams > 0 ? ProofGap.HeavierStrips : ProofGap.WorkUsedUp);
        }
    }

    public void Clear() => _all.Clear();

    /// <summary>True where strips of less than a mass were left out of the sets of so many pieces.</summary>
    public bool HasStrips(int pieces, double belowGrams) => _all.Exists(m => m.Pieces == pieces && m.Why == ProofGap.HeavierStrips && m.Grams < belowGrams);

    /// <summary>Forgets the sets of so many pieces: they are looked at once more.</summary>
    public void Forget(int pieces) => _all.RemoveAll(m => m.Pieces == pieces);

    /// <summary>Why a choice is not proven: the first of what was left out that could be better than it; nothing where it is proven.</summary>
    public ProofGap Gap(AimOrder order, Chosen? best, double floor)
    {
        foreach (var (pieces, grams, score, why) in _all)
        {
            if (order.ScoreToBeat(pieces, grams, best) > Math.Max(score, floor) + PairMinimum.Gap)
            {
                return why;
            }
        }

        return ProofGap.None;
    }
}
