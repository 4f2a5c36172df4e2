namespace Trundle.Engine.Balance.Choice;

/// <summary>One choice of weights with what it is judged by; what it leaves in both planes, as (g·mm)² together, parts what is equal in all else.</summary>
internal sealed record Chosen(PlacedPiece[] Inner, PlacedPiece[] Outer, double Score, double Squares, double MassGrams, double Left)
{
    public int Pieces => Inner.Length + Outer.Length;
}

/// <summary>Which of two choices is better, and what score a choice of given pieces and mass would have to reach to be better.</summary>
internal sealed class AimOrder
{
    private const double MassTie = 1e-7;
    private const double ScoreTie = 1e-10;
    private const double LeftTie = 1e-9;

    private readonly IReadOnlyList<BalanceAim> _aims;
    private readonly double _perGram;

    private AimOrder(IReadOnlyList<BalanceAim> aims, double perGram) => (_aims, _perGram) = (aims, perGram);

    /// <summary>
    /// The order of a problem's aims, among choices that meet the tolerance where that is an aim. Choices that are equal by aims without a score are parted by
    /// it at the end: of the same mass in the same pieces the one that leaves less is better.
    /// </summary>
    public static AimOrder Of(IReadOnlyList<BalanceAim> aims, double massPenaltyPerGram) =>
        new([.. aims.Where(a => a != BalanceAim.Tolerance).Append(BalanceAim.Score).Distinct()], massPenaltyPerGram);

    /// <summary>Where nothing meets the tolerance: the least score, then fewest pieces and least mass.</summary>
    public static AimOrder LeastScore { get; } = new([BalanceAim.Score, BalanceAim.Pieces, BalanceAim.Mass], 0);

    /// <summary>The score with the price of the mass.</summary>
    public double Priced(double score, double grams) => score + (_perGram * grams);

    /// <summary>The score at or below which a choice of so many pieces and so much mass would be as good as another or better; below nothing where it cannot.</summary>
    public double ScoreToBeat(int pieces, double grams, Chosen? best)
    {
        if (best is null)
        {
            return double.PositiveInfinity;
        }

        foreach (var aim in _aims)
        {
            switch (aim)
            {
                case BalanceAim.Pieces when pieces != best.Pieces:
                    return pieces < best.Pieces ? double.PositiveInfinity : -1;
                case BalanceAim.Mass when Math.Abs(grams - best.MassGrams) > MassTie:
                    return grams < best.MassGrams ? double.PositiveInfinity : -1;
                case BalanceAim.Score:
                    return Priced(best.Score, best.MassGrams) - Priced(0, grams);
                case BalanceAim.Tolerance:
                case BalanceAim.Pieces:
                case BalanceAim.Mass:
                    break;
            }
        }

        return -1;
    }

    /// <summary>
    /// What a choice of so many pieces has to keep to if it is to be as good as another or better: a score that falls from one at no mass by
    /// so much a gram, and a greatest mass. Below nothing where it cannot.
    /// </summary>
    public (double AtNothing, double PerGram, double MostGrams) Room(int pieces, Chosen? best)
    {
        if (best is null)
        {
            return (double.PositiveInfinity, 0, double.PositiveInfinity);
        }

        foreach (var aim in _aims)
        {
            switch (aim)
            {
                case BalanceAim.Pieces when pieces != best.Pieces:
                    return pieces < best.Pieces ? (double.PositiveInfinity, 0, double.PositiveInfinity) : (-1, 0, -1);
                case BalanceAim.Mass:
                    return (double.PositiveInfinity, 0, best.MassGrams + MassTie);
                case BalanceAim.Score:
                    var most = Priced(best.Score, best.MassGrams) + ScoreTie;
                    return (most, _perGram, _perGram > 0 ? most / _perGram : double.PositiveInfinity);
                case BalanceAim.Tolerance:
                case BalanceAim.Pieces:
                    break;
            }
        }

        return (-1, 0, -1);
    }

    /// <summary>True where one choice is better than another: by the aims; then by less mass; then by less left in both planes together.</summary>
    public bool IsBetter(Chosen candidate, Chosen? best)
    {
        if (best is null)
        {
            return true;
        }

        foreach (var aim in _aims)
        {
            var difference = aim switch
            {
                BalanceAim.Tolerance => 0,
                BalanceAim.Pieces => candidate.Pieces - best.Pieces,
                BalanceAim.Mass => Beyond(candidate.MassGrams - best.MassGrams, MassTie),
                BalanceAim.Score => Beyond(Priced(candidate.Score, candidate.MassGrams) - Priced(best.Score, best.MassGrams), ScoreTie) is var d && d != 0
                    ? d
                    : Beyond(candidate.Squares - best.Squares, ScoreTie),
            };
            if (difference != 0)
            {
                return difference < 0;
            }
        }

        return candidate.MassGrams < best.MassGrams - MassTie
            || (candidate.MassGrams <= best.MassGrams + MassTie && candidate.Left < (best.Left * (1 - LeftTie)) - LeftTie);
    }

    private static double Beyond(double difference, double tie) => Math.Abs(difference) > tie ? difference : 0;
}
